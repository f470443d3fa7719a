// Days that cannot be planned say why.
#include "day/houses.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace piewright {
namespace {

using test::date;
using testing::HasSubstr;

Problems problemsOf(const book::Book& book, Date on, const std::map<std::string, int>& perDay = test::usualSales()) {
    const auto forecaster = demand::sameWeekdays(test::history(book, on, perDay));
    const auto plan = day::makePlan(book, *forecaster, {on, 1, 200'000});
    if (plan) {
        ADD_FAILURE() << "a plan was made";
        return {};
    }
    return plan.problems();
}

TEST(Limits, AShutDaySaysSoAndNamesTheNextOpenOne) {
    const Problems problems = problemsOf(test::ropewalk(), date(2026, 11, 29));
    EXPECT_EQ(problems.fault, Fault::Input);
    EXPECT_THAT(toText(problems.findings), HasSubstr("shut on Sunday 29 November"));
    EXPECT_THAT(toText(problems.findings), HasSubstr("Tuesday 1 December"));
}

TEST(Limits, ChristmasIsShutByName) {
    EXPECT_THAT(toText(problemsOf(test::ropewalk(), date(2026, 12, 25)).findings), HasSubstr("Christmas Day"));
}

TEST(Limits, ADayWithNobodyAtWorkSaysSo) {
    book::Book book = test::ropewalk();
    for (auto& [id, hand] : book.hands) hand.shifts.clear();
    EXPECT_THAT(toText(problemsOf(book, date(2026, 11, 26)).findings), HasSubstr("nobody is at work"));
}

TEST(Limits, AStepThatNobodyPresentCanDoNamesTheSkill) {
    book::Book book = test::ropewalk();
    for (auto& [id, hand] : book.hands) hand.skills.erase(SkillId("oven"));
    const std::string text = toText(problemsOf(book, date(2026, 11, 26)).findings);
    EXPECT_THAT(text, HasSubstr("nobody at work on Thursday"));
    EXPECT_THAT(text, HasSubstr("Ovens"));
}

TEST(Limits, HandsWhoComeTooLateForOpeningClashWithIt) {
    book::Book book = test::ropewalk();
    // Open at 11:00, and everybody comes at 10:45: no pie can be out of the oven.
    for (auto& [id, hand] : book.hands)
        for (book::Shift& shift : hand.shifts) {
            shift.at = {ClockTime(Minutes(10 * 60 + 45)), ClockTime(std::chrono::hours(19))};
            for (book::Break& pause : shift.breaks)
                pause.between = {ClockTime(std::chrono::hours(14)), ClockTime(std::chrono::hours(17))};
        }
    const Problems problems = problemsOf(book, date(2026, 11, 26));
    EXPECT_EQ(problems.fault, Fault::Input);
    const std::string text = toText(problems.findings);
    EXPECT_THAT(text, HasSubstr("cannot all be kept"));
    EXPECT_THAT(text, HasSubstr("11:00"));
}

TEST(Limits, OneSmallDeckForASaturdayIsNamedAsTheLimit) {
    book::Book book = test::ropewalk();
    book.gear.erase(GearId("oven-b"));
    book.gear.at(GearId("oven-a")).decks = 1;
    book.gear.at(GearId("oven-a")).trays = 1;
    const std::string text = toText(problemsOf(book, date(2026, 11, 28)).findings);
    EXPECT_THAT(text, HasSubstr("Oven A"));
}

TEST(Limits, AHeadTooHeavyForTheDividerNamesBoth) {
    book::Book book = test::ropewalk();
    book.gear.at(GearId("divider")).most = grams(1000);
    const std::string text = toText(problemsOf(book, date(2026, 11, 26)).findings);
    EXPECT_THAT(text, HasSubstr("Base paste"));
    EXPECT_THAT(text, HasSubstr("1 kg"));
}

} // namespace
} // namespace piewright
