#include "demand/level.h"

#include <gtest/gtest.h>

namespace piewright::demand {
namespace {

std::vector<LevelDay> flat(int days, double sold) {
    return std::vector<LevelDay>(static_cast<std::size_t>(days), LevelDay{sold, 1, false});
}

TEST(Level, ASteadyGoodStaysWhereItIs) {
    for (const double level : levels(flat(50, 20), 0.9)) EXPECT_NEAR(level, 20, 1e-9);
}

TEST(Level, FollowsTheDiscountFilterByHand) {
    // keep 0.5, sold 10 then 20, mean 15 with the weight of two days:
    // a = 10, b = 1: (10 + 2 x 15) / (1 + 2) = 13.333; a = 0.5 x 10 + 20 = 25, b = 1.5: (25 + 30) / 3.5 = 15.714
    const std::vector<LevelDay> days{{10, 1, false}, {20, 1, false}};
    const std::vector<double> level = levels(days, 0.5);
    EXPECT_NEAR(level[0], 15, 1e-12);
    EXPECT_NEAR(level[1], 40 / 3.0, 1e-12);
    EXPECT_NEAR(level[2], 55 / 3.5, 1e-12);
}

TEST(Level, TheWeekdayIsNotTakenForALevel) {
    std::vector<LevelDay> days;
    for (int week = 0; week < 10; ++week) {
        days.push_back({10, 0.5, false});
        days.push_back({30, 1.5, false});
    }
    for (const double level : levels(days, 0.8)) EXPECT_NEAR(level, 20, 1e-9);
}

TEST(Level, ASoldOutDayNeverPullsItDown) {
    std::vector<LevelDay> days = flat(30, 20);
    days.push_back({5, 1, true});
    const std::vector<double> level = levels(days, 0.8);
    EXPECT_GE(level[31], level[30] - 1e-9);
}

TEST(Level, OneCoachPartyDoesNotCarryItAway) {
    std::vector<LevelDay> days = flat(60, 20);
    days.push_back({2000, 1, false});
    // counted as at most 4 x expected + 4
    EXPECT_LT(levels(days, 0.8).back(), 2 * levels(days, 0.8)[60]);
}

TEST(Level, AMovedLevelAsksForAFasterFilterAndASteadyOneForNone) {
    std::vector<LevelDay> days = flat(120, 20);
    for (std::size_t i = 0; i < days.size(); ++i) days[i].sold += static_cast<double>(i * 7 % 5); // chance, of a sort
    EXPECT_EQ(bestKeep(days, 1), 1.0);
    for (std::size_t i = 70; i < days.size(); ++i) days[i].sold *= 2;
    EXPECT_LT(bestKeep(days, 1), 1.0);
}

} // namespace
} // namespace piewright::demand
