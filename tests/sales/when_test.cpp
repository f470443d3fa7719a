#include "sales/when.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace piewright::sales {
namespace {

std::string read(std::string_view text, bool dayFirst = true) {
    const auto parsed = parseDateText(text);
    if (!parsed) return "none";
    const auto date = dateOf(*parsed, dayFirst);
    return date ? toText(*date) : "no day";
}

TEST(When, EveryFormOfTheSameDate) {
    for (const char* text : {"2026-11-27",
                             "2026/11/27",
                             "2026.11.27",
                             "20261127",
                             "27/11/2026",
                             "27-11-2026",
                             "27.11.2026",
                             "27.11.26",
                             "27/11/26",
                             "27-Nov-2026",
                             "27 Nov 2026",
                             "27-NOV-26",
                             "27 November 2026",
                             "27. November 2026",
                             "Nov 27, 2026",
                             "November 27 2026",
                             "27th November 2026",
                             "27th of November 2026",
                             "Fri 27/11/2026",
                             "Friday, 27 November 2026",
                             "27 novembre 2026",
                             "vendredi 27 novembre 2026",
                             "27 de noviembre de 2026",
                             "Freitag, den 27.11.2026",
                             "Freitag, 27. November 2026"})
        EXPECT_EQ(read(text), "2026-11-27") << text;
    EXPECT_EQ(read("11/27/2026", false), "2026-11-27");
}

TEST(When, MonthNamesOfFourLanguages) {
    const char* const names[12][4] = {{"January", "Januar", "janvier", "enero"},
                                      {"February", "Februar", "février", "febrero"},
                                      {"March", "März", "mars", "marzo"},
                                      {"April", "April", "avril", "abril"},
                                      {"May", "Mai", "mai", "mayo"},
                                      {"June", "Juni", "juin", "junio"},
                                      {"July", "Juli", "juillet", "julio"},
                                      {"August", "August", "août", "agosto"},
                                      {"September", "September", "septembre", "septiembre"},
                                      {"October", "Oktober", "octobre", "octubre"},
                                      {"November", "November", "novembre", "noviembre"},
                                      {"December", "Dezember", "décembre", "diciembre"}};
    for (int month = 0; month < 12; ++month)
        for (const char* const name : names[month]) {
            const auto parsed = parseDateText("5 " + std::string(name) + " 2026");
            ASSERT_TRUE(parsed) << name;
            EXPECT_EQ(parsed->first, month + 1) << name;
        }
}

TEST(When, AFrenchTuesdayIsNotMarch) {
    EXPECT_EQ(read("mar 24/11/2026"), "2026-11-24");
    EXPECT_EQ(read("5 mar 2026"), "2026-03-05");
}

TEST(When, ThereIsNoSuchDay) {
    for (const char* text : {"2026-02-29", "31/06/2026", "2026-13-01", "00/01/2026", "20261301"})
        EXPECT_TRUE(read(text) == "no day") << text;
    EXPECT_EQ(read("29/02/2024"), "2024-02-29");
    EXPECT_EQ(read("1899-12-30"), "no day");
    for (const char* text : {"", "x", "46353", "2026-11", "27/11", "1/2/3", "27-Nov", "Nov 2026", "27/11-2026",
                             "2026-11-27x", "99999999999999999999", "-", "//", "27 Foo 2026", "27 jui 2026"})
        EXPECT_EQ(read(text), "none") << text;
}

std::optional<bool> order(const std::vector<std::string>& dates) {
    std::vector<DateText> texts;
    for (const std::string& date : dates) texts.push_back(*parseDateText(date));
    return dayFirstOf(texts);
}

TEST(When, ANumberAboveTwelveSettlesTheOrder) {
    EXPECT_EQ(order({"05/11/2026", "13/11/2026"}), true);
    EXPECT_EQ(order({"05/11/2026", "11/13/2026"}), false);
    EXPECT_EQ(order({"13/11/2026", "14/11/2026", "11/13/2026"}), true); // one slip
    EXPECT_EQ(order({"13/11/2026", "11/13/2026"}), std::nullopt);
}

TEST(When, DatesThatRunForwardSettleTheOrder) {
    // 12 November, 1 and 2 December; with the month first: 11 December, then 12 January and 12 February of the same
    // year
    EXPECT_EQ(order({"12/11/2026", "01/12/2026", "02/12/2026"}), true);
    EXPECT_EQ(order({"02/12/2026", "01/12/2026", "12/11/2026"}), true); // newest first
    EXPECT_EQ(order({"11/12/2026", "12/01/2026", "12/02/2026"}), false);
}

TEST(When, DatesThatLieTogetherSettleTheOrder) {
    // 1 to 4 December, or the 12th of four months
    EXPECT_EQ(order({"01/12/2026", "02/12/2026", "03/12/2026", "04/12/2026"}), true);
    EXPECT_EQ(order({"12/01/2026", "12/02/2026", "12/03/2026", "12/04/2026"}), false);
}

TEST(When, OneDateLeavesItOpen) {
    EXPECT_EQ(order({"03/04/2026"}), std::nullopt);
    EXPECT_EQ(order({"03/04/2026", "04/04/2026"}), std::nullopt);
    EXPECT_EQ(order({"2026-11-27"}), std::nullopt);
}

TEST(When, EveryFormOfTheSameTime) {
    for (const char* text : {"13:05", "13:05:59", "13:05:59.123", "13:05:59,5", "1:05 pm", "1:05PM", "01:05 p.m.",
                             "1.05 pm", "13.05", "13.05 Uhr", "13h05", "1305", "130559", " 13:05 ", "13:05 Uhr"}) {
        const auto time = parseTimeText(text);
        ASSERT_TRUE(time) << text;
        EXPECT_EQ(time->minute, 13 * 60 + 5) << text;
        EXPECT_FALSE(time->offsetMinutes);
    }
    EXPECT_EQ(parseTimeText("12:00 am")->minute, 0);
    EXPECT_EQ(parseTimeText("12 pm")->minute, 720);
    EXPECT_EQ(parseTimeText("9:07")->minute, 547);
    EXPECT_EQ(parseTimeText("12h")->minute, 720);
    EXPECT_EQ(parseTimeText("23:59:60")->minute, 1439); // a leap second
}

TEST(When, OffsetsAreRead) {
    EXPECT_EQ(parseTimeText("12:00Z")->offsetMinutes, 0);
    EXPECT_EQ(parseTimeText("12:00:00+01:00")->offsetMinutes, 60);
    EXPECT_EQ(parseTimeText("12:00:00.000-0330")->offsetMinutes, -210);
    EXPECT_EQ(parseTimeText("12:00+01")->offsetMinutes, 60);
    EXPECT_EQ(parseTimeText("120000Z")->offsetMinutes, 0);
}

TEST(When, NoTimeOfADay) {
    for (const char* text : {"", "24:00", "25:10", "12:60", "12:5", "13:00 pm", "0:30 am", "noon", "12", "1234567",
                             "12:30x", "12:30+99", "-1:00", "12:", ":30", "12:30:", "12:30:4"})
        EXPECT_FALSE(parseTimeText(text)) << text;
}

TEST(When, DateAndTimeArePartedHoweverTheyAreJoined) {
    const auto parts = [](std::string_view text) {
        const WhenText when = splitWhen(text);
        return std::string(when.date) + "|" + std::string(when.time);
    };
    EXPECT_EQ(parts("2026-11-27T12:30:00+01:00"), "2026-11-27|12:30:00+01:00");
    EXPECT_EQ(parts(" 27.11.2026  9:30 "), "27.11.2026|9:30");
    EXPECT_EQ(parts("Nov 27, 2026, 1:05 PM"), "Nov 27, 2026|1:05 PM");
    EXPECT_EQ(parts("202611271230"), "20261127|1230");
    EXPECT_EQ(parts("20261127T123059Z"), "20261127|123059Z");
    EXPECT_EQ(parts("27.11.2026 12.30"), "27.11.2026|12.30");
    EXPECT_EQ(parts("27/11/2026 12h30"), "27/11/2026|12h30");
    EXPECT_EQ(parts("27 November 2026"), "27 November 2026|");
    EXPECT_EQ(parts("2026-11-27"), "2026-11-27|");
    EXPECT_EQ(parts(""), "|");
}

RC_GTEST_PROP(WhenProperty, NoTextBringsItDown, ()) {
    const auto text = *rc::gen::container<std::string>(rc::gen::weightedOneOf<char>(
        {{4, rc::gen::elementOf(std::string("0123456789:/-. TZamph+Nov,\xC3"))}, {1, rc::gen::arbitrary<char>()}}));
    const WhenText when = splitWhen(text);
    if (const auto date = parseDateText(when.date)) {
        for (const bool dayFirst : {true, false}) {
            const auto day = dateOf(*date, dayFirst);
            RC_ASSERT(!day || (day->ymd().ok() && toText(*day).size() == 10));
        }
    }
    const auto time = parseTimeText(text);
    RC_ASSERT(!time || (time->minute >= 0 && time->minute < 1440));
}

} // namespace
} // namespace piewright::sales
