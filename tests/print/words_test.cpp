// Times on the house's clock, and the other words of the sheets.
#include "print/cautions.h"
#include "print/columns.h"
#include "print/words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

namespace piewright::print {
namespace {

using ::testing::ElementsAre;

day::Plan on(const char* date) {
    day::Plan plan;
    plan.zone = "Europe/London";
    plan.date = *parseDate(date);
    return plan;
}

Instant utc(const char* date, int hours, int minutes) {
    return Instant(parseDate(date)->days().time_since_epoch()) + std::chrono::hours(hours) + Minutes(minutes);
}

TEST(ClockTimes, AreTheHousesAndNotGreenwichs) {
    // British Summer Time is an hour ahead of UTC (Summer Time Act 1972; IANA time zone database).
    EXPECT_EQ(Times(on("2026-07-01")).clock(utc("2026-07-01", 4, 30)), "05:30");
    EXPECT_EQ(Times(on("2026-11-27")).span(utc("2026-11-27", 4, 30), utc("2026-11-27", 5, 10)), "04:30–05:10");
}

TEST(ClockTimes, OfAnotherDateNameTheDay) {
    const Times times(on("2026-11-27"));
    EXPECT_EQ(times.clock(utc("2026-11-28", 0, 30)), "Sat 00:30");
    EXPECT_EQ(times.clock(utc("2026-11-26", 22, 0)), "Thu 22:00");
    EXPECT_EQ(times.day(), "Friday 27 November 2026");
}

TEST(ClockTimes, ThatTheClockShowsTwiceAreToldApart) {
    // On 25 October 2026 the clocks go back at 01:00 UTC (02:00 summer time): 01:30 comes at 00:30 and at 01:30 UTC.
    const Times times(on("2026-10-25"));
    EXPECT_EQ(times.clock(utc("2026-10-25", 0, 30)), "01:30a");
    EXPECT_EQ(times.clock(utc("2026-10-25", 1, 30)), "01:30b");
    EXPECT_EQ(times.clock(utc("2026-10-25", 2, 0)), "02:00");
    EXPECT_EQ(times.changeBetween(utc("2026-10-25", 0, 0), utc("2026-10-25", 9, 0)),
              "The clocks go back by 1 h in this day: a time marked a is the first of the two, b the second.");
}

TEST(ClockTimes, OnTheDayWithoutAnHourGoOn) {
    // On 29 March 2026 the clocks go from 01:00 to 02:00 at 01:00 UTC.
    const Times times(on("2026-03-29"));
    EXPECT_EQ(times.clock(utc("2026-03-29", 0, 59)), "00:59");
    EXPECT_EQ(times.clock(utc("2026-03-29", 1, 0)), "02:00");
    EXPECT_EQ(times.changeBetween(utc("2026-03-29", 0, 0), utc("2026-03-29", 9, 0)),
              "The clocks go forward by 1 h in this day.");
    EXPECT_EQ(times.changeBetween(utc("2026-03-29", 4, 0), utc("2026-03-29", 9, 0)), "");
}

TEST(ClockTimes, OfAZoneOffTheHourHaveTheirOwnHours) {
    day::Plan plan = on("2026-11-27");
    plan.zone = "Asia/Kolkata"; // UTC + 5:30
    EXPECT_EQ(Times(plan).clock(utc("2026-11-27", 1, 0)), "06:30");
    EXPECT_EQ(Times(plan).pastTheHour(utc("2026-11-27", 1, 0)), Seconds(1800));
}

TEST(Opening, IsToldInWords) {
    day::Plan plan = on("2026-11-27");
    EXPECT_EQ(openingOf(plan, Times(plan)), "shut");
    plan.open = {{utc("2026-11-27", 11, 0), utc("2026-11-27", 14, 0)},
                 {utc("2026-11-27", 17, 0), utc("2026-11-27", 20, 0)}};
    EXPECT_EQ(openingOf(plan, Times(plan)), "open 11:00–14:00 and 17:00–20:00");
}

TEST(Counts, HaveTheirSingular) {
    EXPECT_EQ(countOf(1, "pieces"), "1 piece");
    EXPECT_EQ(countOf(96, "pieces"), "96 pieces");
    EXPECT_EQ(countOf(0, "portions"), "0 portions");
}

TEST(Blanks, AreGivenBothWaysUnlessSquare) {
    day::PiecesLine line;
    EXPECT_EQ(blankOf(line), "");
    line.blankLength = line.blankWidth = millimetres(175);
    EXPECT_EQ(blankOf(line), "175 mm");
    line.blankWidth = millimetres(120);
    EXPECT_EQ(blankOf(line), "175 × 120 mm");
}

TEST(CardSums, TellLossesAndRounding) {
    day::WeighCard card;
    card.in = grams(21'215);
    card.out = grams(21'003);
    card.lost = {{"bowl", grams(212)}};
    card.scaleStep = grams(5);
    card.roundingError = -grams(2);
    EXPECT_EQ(sumsOf(card),
              "In 21.215 kg, less 212 g (bowl), out 21.003 kg. Weighed in steps of 5 g, which takes off 2 g.");
}

TEST(Allergens, ThatTheBookDoesNotNameAreNotDenied) {
    EXPECT_EQ(allergensOf({}), "Allergens: the book names none; check the labels.");
    day::WeighCard card;
    card.allergens = {"milk", "eggs"};
    EXPECT_EQ(allergensOf(card), "Contains: milk, eggs");
}

TEST(Cautions, HaveEachAWordAndASentenceOfTheirOwn) {
    std::set<std::string> words, sentences;
    for (int i = 0; i <= static_cast<int>(book::Caution::Holding); ++i) {
        const CautionText& text = textOf(static_cast<book::Caution>(i));
        EXPECT_NE(std::string(text.word), "Caution") << i; // the word for what has none
        EXPECT_GT(std::string(text.sentence).size(), 30U) << i;
        words.insert(text.word);
        sentences.insert(text.sentence);
    }
    EXPECT_EQ(words.size(), 10U);
    EXPECT_EQ(sentences.size(), 10U);
}

TEST(Cautions, AreToldOnceInTheirOrder) {
    EXPECT_EQ(wordsOf({book::Caution::Knife, book::Caution::Burns, book::Caution::Knife}), "Burns, knife");
    EXPECT_EQ(wordsOf({}), "");
}

TEST(Columns, CountWideLettersTwiceAndCombiningMarksNot) {
    EXPECT_EQ(columnsOf("pie"), 3U);
    EXPECT_EQ(columnsOf("pâté"), 4U);
    EXPECT_EQ(columnsOf("pa\u0302te\u0301"), 4U); // the same with combining accents
    EXPECT_EQ(columnsOf("派"), 2U);               // East Asian wide, Unicode annex 11
}

TEST(Columns, WrapAtSpacesAndInsideWordsThatAreTooLong) {
    EXPECT_THAT(wrapped("Beef and onion pie", 8), ElementsAre("Beef and", "onion", "pie"));
    EXPECT_THAT(wrapped("abcdefgh ij", 3), ElementsAre("abc", "def", "gh", "ij"));
    EXPECT_THAT(wrapped("派派派", 4), ElementsAre("派派", "派"));
    EXPECT_THAT(wrapped("", 4), ElementsAre(""));
    EXPECT_THAT(wrapped("  a   b ", 9), ElementsAre("a b"));
}

TEST(Columns, OfATableGiveWayWhenItIsTooWide) {
    TextTable table({{"good", Side::Left, true}, {"make", Side::Right}});
    table.add({"Cheese, onion and potato pie", "144"});
    EXPECT_EQ(table.print(40), "good                          make\nCheese, onion and potato pie   144\n");
    EXPECT_EQ(table.print(22), "good              make\nCheese, onion      144\nand potato pie\n");
    EXPECT_EQ(table.print(10), "good:\nCheese,\nonion and\npotato pie\nmake: 144\n\n"); // no longer side by side
}

TEST(CleanText, IsValidAndInOneLine) {
    EXPECT_EQ(clean("a\nb\tc"), "a b c");
    EXPECT_EQ(clean("pie\xFF"), "pie\uFFFD");
    EXPECT_EQ(clean("a\u202Eb"), "a b"); // right-to-left override
    EXPECT_EQ(clean(std::string("a\0b", 3)), "a\uFFFDb");
}

} // namespace
} // namespace piewright::print
