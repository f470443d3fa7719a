#include "demand/joint.h"

#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace piewright::demand {
namespace {

TEST(Joint, DrawsAreTheSameOnEveryMachine) {
    // The 10,000th draw of a default mt19937_64 is 9981545732273789042 (ISO C++ 2017, 29.6.5, paragraph 4)
    Generator generator;
    for (int i = 1; i < 10'000; ++i) generator();
    Generator same = generator;
    EXPECT_EQ(same(), 9981545732273789042ULL);
    EXPECT_DOUBLE_EQ(uniform(generator), static_cast<double>(9981545732273789042ULL) / 18446744073709551616.0);
}

TEST(Joint, TheBusierDayAlwaysRanksHigher) {
    const Ranks ranks(std::vector<Seen>{{30, 1, false}, {10, 1, false}, {20, 2, false}});
    Generator generator(1);
    for (int i = 0; i < 200; ++i) {
        const double low = ranks.draw(1, generator);
        const double middle = ranks.draw(2, generator);
        const double high = ranks.draw(0, generator);
        EXPECT_LT(low, 0.25);
        EXPECT_GE(middle, 0.25);
        EXPECT_LT(middle, 0.75);
        EXPECT_GE(high, 0.75);
    }
}

TEST(Joint, ASoldOutDayRanksAboveWhatItSold) {
    // 10, 12+, 15, 20: the sold-out day is one of 15 or 20
    const Ranks ranks(std::vector<Seen>{{10, 1, false}, {12, 1, true}, {15, 1, false}, {20, 1, false}});
    Generator generator(1);
    for (int i = 0; i < 200; ++i) EXPECT_GE(ranks.draw(1, generator), 0.25);
}

/// Largest distance of the drawn ranks' distribution from the uniform one (Kolmogorov's statistic).
double distanceFromUniform(std::vector<double> drawn) {
    std::sort(drawn.begin(), drawn.end());
    double worst = 0;
    const auto n = static_cast<double>(drawn.size());
    for (std::size_t i = 0; i < drawn.size(); ++i)
        worst = std::max({worst, std::abs(drawn[i] - static_cast<double>(i) / n),
                          std::abs(drawn[i] - static_cast<double>(i + 1) / n)});
    return worst;
}

TEST(Joint, OverDaysByWeightRanksAreUniformSoldOutOrTiedOrNot) {
    const std::vector<Seen> days{{10, 1, false}, {12, 2, true},  {15, 0.5, false}, {15, 1, false}, {15, 1.5, true},
                                 {20, 1, false}, {20, 1, false}, {25, 1, true},    {22, 0.7, true}};
    const Ranks ranks(days);
    Generator generator(7);
    double weights = 0;
    for (const Seen& day : days) weights += day.weight;
    std::vector<double> drawn;
    for (int i = 0; i < 40'000; ++i) {
        double left = uniform(generator) * weights;
        std::size_t day = 0;
        while (day + 1 < days.size() && left >= days[day].weight) left -= days[day++].weight;
        drawn.push_back(ranks.draw(day, generator));
    }
    // Kolmogorov: 1.95 / sqrt(n) is passed by chance once in a thousand; the seed is fixed
    EXPECT_LT(distanceFromUniform(drawn), 1.95 / std::sqrt(40'000.0));
}

RC_GTEST_PROP(JointProperty, EveryRankIsInsideTheUnit, ()) {
    const auto raw = *rc::gen::nonEmpty(rc::gen::container<std::vector<std::tuple<int, int, bool>>>(
        rc::gen::tuple(rc::gen::inRange(0, 9), rc::gen::inRange(0, 4), rc::gen::arbitrary<bool>())));
    std::vector<Seen> days;
    for (const auto& [value, weight, atLeast] : raw) days.push_back({value * 1.0, weight * 1.0, atLeast});
    const Ranks ranks(days);
    Generator generator(3);
    for (std::size_t day = 0; day < days.size(); ++day)
        for (int i = 0; i < 20; ++i) {
            const double rank = ranks.draw(day, generator);
            RC_ASSERT(rank > 0 && rank < 1);
        }
}

} // namespace
} // namespace piewright::demand
