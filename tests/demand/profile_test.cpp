#include "demand/profile.h"

#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <numeric>

namespace piewright::demand {
namespace {

ClockTime clock(int hours, int minutes = 0) { return ClockTime(Minutes(60 * hours + minutes)); }
double sumOf(const Profile& p) { return std::accumulate(p.begin(), p.end(), 0.0); }

TEST(Profile, OpenPartsCountTheMinutes) {
    const QuarterWeights parts =
        openParts(std::vector<ClockSpan>{{clock(10, 20), clock(11)}, {clock(23, 30), clock(25)}});
    EXPECT_NEAR(parts[41], 10 / 15.0, 1e-12); // 10:15 to 10:30 is open from 10:20
    EXPECT_EQ(parts[42], 1);
    EXPECT_EQ(parts[44], 0);
    EXPECT_EQ(parts[95], 1); // 23:45; what is past midnight is the next date's
    EXPECT_EQ(std::accumulate(parts.begin(), parts.end(), 0.0), 10 / 15.0 + 2 + 2);
}

TEST(Profile, DrawsTowardThePriorAsDirichletDoes) {
    // counts 3 9 14 11 6 2, prior 0.1 0.2 0.25 0.2 0.15 0.1 with the weight of 20: (n + 20 p) / (45 + 20)
    const std::array<double, 6> counts{3, 9, 14, 11, 6, 2};
    const std::array<double, 6> prior{0.1, 0.2, 0.25, 0.2, 0.15, 0.1};
    const std::array<double, 6> want{0.0769230769231, 0.2, 0.292307692308, 0.230769230769, 0.138461538462,
                                     0.0615384615385};
    QuarterWeights seen{};
    Profile from{};
    QuarterWeights open{};
    for (std::size_t i = 0; i < 6; ++i) {
        seen[40 + i] = counts.at(i);
        from[40 + i] = prior.at(i);
        open[40 + i] = 1;
    }
    seen[10] = 500; // sold while shut: not of this day
    const Profile p = towards(from, 20, seen, open);
    for (std::size_t i = 0; i < 6; ++i) EXPECT_NEAR(p[40 + i], want.at(i), 1e-12);
    EXPECT_EQ(p[10], 0);
}

TEST(Profile, SmoothingKeepsTheSumInsideTheHours) {
    QuarterWeights open{};
    open[40] = open[41] = open[42] = 1;
    Profile p{};
    p[40] = 1;
    // 40 hands 3 : 2 : 1 to 40, 41, 42
    const Profile s = smoothed(p, open);
    EXPECT_NEAR(s[40], 0.5, 1e-12);
    EXPECT_NEAR(s[41], 2 / 6.0, 1e-12);
    EXPECT_NEAR(s[42], 1 / 6.0, 1e-12);
    EXPECT_NEAR(sumOf(s), 1, 1e-12);
}

TEST(Profile, NoOpenHourMeansNoProfile) { EXPECT_EQ(sumOf(even(QuarterWeights{})), 0); }

RC_GTEST_PROP(ProfileProperty, IsAPartitionOfTheOpenHours, ()) {
    const int from = *rc::gen::inRange(0, 1300);
    const int to = from + *rc::gen::inRange(1, 139);
    const QuarterWeights open = openParts(std::vector<ClockSpan>{{ClockTime(Minutes(from)), ClockTime(Minutes(to))}});
    QuarterWeights seen{};
    for (double& s : seen) s = *rc::gen::inRange(0, 20);
    const Profile p = smoothed(towards(even(open), 20, seen, open), open);
    RC_ASSERT(std::abs(sumOf(p) - 1) < 1e-9);
    for (std::size_t q = 0; q < kQuarters; ++q) {
        RC_ASSERT(p[q] >= 0);
        RC_ASSERT(open[q] > 0 || p[q] == 0);
    }
}

} // namespace
} // namespace piewright::demand
