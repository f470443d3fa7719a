#include "demand/censored.h"

#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

namespace piewright::demand {
namespace {

double above(const std::vector<Seen>& seen, const Redistributed& r, double value) {
    double mass = r.beyond;
    for (std::size_t i = 0; i < seen.size(); ++i)
        if (seen[i].value > value) mass += r.mass[i];
    return mass;
}

/// The product-limit estimate as Kaplan and Meier wrote it: over the exact values up to `value`, (at risk - here) / at
/// risk.
double productLimit(const std::vector<Seen>& seen, double value) {
    std::vector<double> exact;
    for (const Seen& s : seen)
        if (!s.atLeast && s.value <= value) exact.push_back(s.value);
    std::sort(exact.begin(), exact.end());
    exact.erase(std::unique(exact.begin(), exact.end()), exact.end());
    double product = 1;
    for (const double at : exact) {
        double risk = 0;
        double here = 0;
        for (const Seen& s : seen) {
            if (s.value >= at) risk += s.weight;
            if (!s.atLeast && s.value == at) here += s.weight;
        }
        product *= (risk - here) / risk;
    }
    return product;
}

TEST(Censored, ThePublishedRemissionTimesGiveThePublishedCurve) {
    // Weeks of remission under 6-MP, * still in remission: 6 6 6 6* 7 9* 10 10* 11* 13 16 17* 19* 20* 22 23 25* 32* 32*
    // 34* 35*. Freireich et al., Blood 21 (1963); the curve is printed in many texts, such as Cox & Oakes, Analysis of
    // Survival Data.
    std::vector<Seen> seen;
    for (const double t : {6, 6, 6, 7, 10, 13, 16, 22, 23}) seen.push_back({t, 1, false});
    for (const double t : {6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35}) seen.push_back({t, 1, true});
    const Redistributed r = redistributeToRight(seen);
    EXPECT_NEAR(above(seen, r, 6), 0.857, 0.0005);
    EXPECT_NEAR(above(seen, r, 7), 0.807, 0.0005);
    EXPECT_NEAR(above(seen, r, 10), 0.753, 0.0005);
    EXPECT_NEAR(above(seen, r, 13), 0.690, 0.0005);
    EXPECT_NEAR(above(seen, r, 16), 0.627, 0.0005);
    EXPECT_NEAR(above(seen, r, 22), 0.538, 0.0005);
    EXPECT_NEAR(above(seen, r, 23), 0.448, 0.0005);
    EXPECT_NEAR(r.beyond, 0.448, 0.0005); // nothing exact lies to the right of 23
    EXPECT_EQ(r.beyondValue, 35);
}

TEST(Censored, ByHandASoldOutDayHandsItsWeightToTheRight) {
    // 10, 12+, 15, 20, weights 1: the 12+ gives 1/4 to 15 and 20 alike: 1/4, 0, 3/8, 3/8
    const std::vector<Seen> seen{{10, 1, false}, {12, 1, true}, {15, 1, false}, {20, 1, false}};
    const Redistributed r = redistributeToRight(seen);
    EXPECT_DOUBLE_EQ(r.mass[0], 0.25);
    EXPECT_DOUBLE_EQ(r.mass[1], 0);
    EXPECT_DOUBLE_EQ(r.mass[2], 0.375);
    EXPECT_DOUBLE_EQ(r.mass[3], 0.375);
    EXPECT_EQ(r.beyond, 0);
}

TEST(Censored, WhenEveryDaySoldOutAllIsBeyond) {
    const Redistributed r = redistributeToRight(std::vector<Seen>{{10, 2, true}, {9, 1, true}});
    EXPECT_DOUBLE_EQ(r.beyond, 1);
    EXPECT_EQ(r.beyondValue, 10);
}

RC_GTEST_PROP(CensoredProperty, RedistributionEqualsTheProductLimit, ()) {
    // Efron 1967, section 7: the two are the same.
    const auto raw = *rc::gen::nonEmpty(rc::gen::container<std::vector<std::tuple<int, int, bool>>>(
        rc::gen::tuple(rc::gen::inRange(0, 12), rc::gen::inRange(1, 9), rc::gen::arbitrary<bool>())));
    std::vector<Seen> seen;
    for (const auto& [value, weight, atLeast] : raw) seen.push_back({value * 1.0, weight * 0.5, atLeast});
    const Redistributed r = redistributeToRight(seen);
    double sum = r.beyond;
    for (const double m : r.mass) sum += m;
    RC_ASSERT(std::abs(sum - 1) < 1e-9);
    for (int value = 0; value < 12; ++value)
        RC_ASSERT(std::abs(above(seen, r, value) - productLimit(seen, value)) < 1e-9);
}

} // namespace
} // namespace piewright::demand
