// Fish that comes in twice a week, made two ways. Common practice, no source.
#include "day/houses.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace piewright {
namespace {

using test::date;

const day::WeighCard* cardOf(const day::Plan& plan, const std::string& formula) {
    const auto found = std::find_if(plan.cards.begin(), plan.cards.end(),
                                    [&](const day::WeighCard& card) { return card.formula == formula; });
    return found == plan.cards.end() ? nullptr : &*found;
}

const day::PlannedAmount* setAsideIn(const day::Plan& plan) {
    const auto found = std::find_if(plan.amounts.begin(), plan.amounts.end(),
                                    [](const day::PlannedAmount& amount) { return amount.setAside > 0; });
    return found == plan.amounts.end() ? nullptr : &*found;
}

TEST(MarketFish, OnAMarketDayIsStewedForTodayAndSetForTheDaysUntilTheNext) {
    // Tuesday: set for Wednesday, Thursday and Friday; Friday's own is set for Saturday and Tuesday.
    const day::Plan tuesday = test::planFor(test::ropewalk(), date(2026, 11, 24));
    ASSERT_NE(cardOf(tuesday, "Stewed hake"), nullptr);
    const day::WeighCard* set = cardOf(tuesday, "Hake in its jelly");
    ASSERT_NE(set, nullptr);
    EXPECT_EQ(set->forWhen, "Wednesday 25 November, Thursday 26 November, Friday 27 November");
    const day::PlannedAmount* aside = setAsideIn(tuesday);
    ASSERT_NE(aside, nullptr);
    // Three days of about 26: the sum's quantile, not three times a day's.
    EXPECT_GT(aside->setAside, 70);
    EXPECT_LT(aside->setAside, 100);
}

TEST(MarketFish, OnFridayIsSetForSaturdayAndTuesdayAsTheHouseIsShutBetween) {
    const day::Plan friday = test::planFor(test::ropewalk(), date(2026, 11, 27));
    const day::WeighCard* set = cardOf(friday, "Hake in its jelly");
    ASSERT_NE(set, nullptr);
    EXPECT_EQ(set->forWhen, "Saturday 28 November, Tuesday 1 December");
}

TEST(MarketFish, IsNotBegunBeforeItComesIn) {
    const day::Plan tuesday = test::planFor(test::ropewalk(), date(2026, 11, 24));
    const book::Book book = test::ropewalk();
    const Instant arrives = book.house.zone.at(date(2026, 11, 24), ClockTime(std::chrono::hours(6)));
    int cuts = 0;
    for (const day::Task& task : tuesday.tasks)
        if (task.what == "Fillet and cut") {
            ++cuts;
            EXPECT_GE(task.start, arrives);
        }
    EXPECT_GT(cuts, 0);
}

TEST(MarketFish, OnTheDayAfterTheMarketIsStewedAndNoneIsSet) {
    const day::Plan wednesday = test::planFor(test::ropewalk(), date(2026, 11, 25));
    EXPECT_NE(cardOf(wednesday, "Stewed hake"), nullptr);
    EXPECT_EQ(cardOf(wednesday, "Hake in its jelly"), nullptr);
    EXPECT_TRUE(std::any_of(wednesday.before.begin(), wednesday.before.end(),
                            [](const day::FromBefore& before) { return before.what == "Hake in its jelly"; }));
}

TEST(MarketFish, OnThursdayIsOnlySoldSet) {
    const day::Plan thursday = test::planFor(test::ropewalk(), date(2026, 11, 26));
    EXPECT_EQ(cardOf(thursday, "Stewed hake"), nullptr);
}

TEST(DayBefore, SaturdayCooksTuesdaysFillingWhenItKeepsThatLong) {
    // The next open day after Saturday is Tuesday.
    const day::Plan saturday = test::planFor(test::ropewalk(), date(2026, 11, 28));
    const day::WeighCard* filling = cardOf(saturday, "Beef and onion filling");
    ASSERT_NE(filling, nullptr);
    EXPECT_EQ(filling->forWhen, "Tuesday 1 December");
}

} // namespace
} // namespace piewright
