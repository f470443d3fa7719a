#include "demand/amounts.h"

#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace piewright::demand {
namespace {

Amount freely(const CountDistribution& d, Worth worth) { return amountFor(d, worth, std::nullopt, std::nullopt); }

double profit(const CountDistribution& d, Worth worth, int made) {
    const double sold = d.expectedSold(made);
    return worth.price * sold + worth.leftover * (made - sold) - worth.cost * made;
}

TEST(Amounts, TheNewsstandOrdersFifteen) {
    // S. Nahmias, Production and Operations Analysis: normal demand 11.73, sd 4.74; price 0.75, cost 0.25, returned
    // 0.10. Fractile 0.50 / 0.65 = 0.769, order 15 (remembered from the book).
    std::vector<double> weights;
    const auto phi = [](double x) { return 0.5 * std::erfc(-(x - 11.73) / 4.74 / std::sqrt(2.0)); };
    for (int k = 0; k < 60; ++k) weights.push_back(phi(k + 0.5) - (k == 0 ? 0 : phi(k - 0.5)));
    const Worth worth{0.75, 0.25, 0.10};
    EXPECT_NEAR(criticalFractile(worth), 0.769230769231, 1e-9);
    EXPECT_EQ(freely(CountDistribution(weights), worth).pieces, 15);
}

TEST(Amounts, NegativeBinomialDayByTheFractile) {
    // By summing the formula: price 1.3, cost 0.55, leftover 0.3; negative binomial of 140, size 20
    const Worth worth{1.3, 0.55, 0.3};
    const CountDistribution d = negativeBinomial(140, 20);
    const Amount a = freely(d, worth);
    EXPECT_EQ(a.pieces, 161);
    EXPECT_NEAR(a.expectedSold, 134.148900766, 1e-6);
    EXPECT_NEAR(a.expectedLeft, 26.8510992341, 1e-6);
    EXPECT_NEAR(a.expectedMissed, 5.85109923414, 1e-6);
    EXPECT_NEAR(d.atMost(161), 0.754240531642, 1e-9);
    EXPECT_NEAR(profit(d, worth, a.pieces), 93.8989007659, 1e-6);
}

TEST(Amounts, ASlowGoodIsMadeOnce) {
    // Poisson of 0.8; price 5, cost 2, nothing for what is left: fractile 0.6, P(0) = 0.449 < 0.6 <= P(0) + P(1)
    const Worth worth{5, 2, 0};
    const Amount a = freely(poisson(0.8), worth);
    EXPECT_EQ(a.pieces, 1);
    EXPECT_NEAR(a.expectedSold, 0.550671035883, 1e-9); // 1 - exp(-0.8)
    EXPECT_NEAR(profit(poisson(0.8), worth, 1), 0.753355179414, 1e-9);
}

TEST(Amounts, OverTenDaysTheSampleQuantileIsTheAnswer) {
    // 14 9 21 17 12 30 16 11 19 15; price 6, cost 2, leftover 0.5: fractile 4 / 5.5 = 0.727: the eighth of ten, 19
    std::vector<double> weights(31);
    for (const std::size_t k : {14U, 9U, 21U, 17U, 12U, 30U, 16U, 11U, 19U, 15U}) weights[k] = 1;
    const CountDistribution d(weights);
    const Worth worth{6, 2, 0.5};
    EXPECT_NEAR(criticalFractile(worth), 0.727272727273, 1e-9);
    EXPECT_EQ(freely(d, worth).pieces, 19);
    EXPECT_NEAR(profit(d, worth, 19), 54.55, 1e-9);
}

TEST(Amounts, InTheMiddleOfADayASimulationsFiguresHold) {
    // Negative binomial of 22, size 6, 25 made, by summing the formula
    const Amount a = amountFor(negativeBinomial(22, 6), {5, 2, 0}, 25, 25);
    EXPECT_NEAR(a.expectedSold, 19.1852802973, 1e-7);
    EXPECT_NEAR(a.expectedLeft, 5.81471970272, 1e-7);
    EXPECT_NEAR(a.expectedMissed, 2.81471970272, 1e-7);
}

TEST(Amounts, AtALossNothingIsMadeUnlessTheHouseSays) {
    EXPECT_EQ(criticalFractile({2, 3, 0}), 0);
    EXPECT_EQ(freely(poisson(10), {2, 3, 0}).pieces, 0);
    EXPECT_EQ(amountFor(poisson(10), {2, 3, 0}, 4, std::nullopt).pieces, 4);
}

TEST(Amounts, WhatCostsNothingToHaveLeftIsMadeForNearlyEveryDay) {
    EXPECT_EQ(criticalFractile({5, 1, 1.5}), 1);
    const CountDistribution d = poisson(10);
    EXPECT_EQ(freely(d, {5, 1, 1.5}).pieces, d.quantile(0.999));
}

TEST(Amounts, TheHousesLeastAndMostHold) {
    EXPECT_EQ(amountFor(poisson(100), {5, 2, 0}, std::nullopt, 60).pieces, 60);
    EXPECT_EQ(amountFor(poisson(100), {5, 2, 0}, 150, std::nullopt).pieces, 150);
}

RC_GTEST_PROP(AmountsProperty, NoOtherAmountEarnsMore, ()) {
    const double mean = *rc::gen::inRange(0, 60) / 2.0;
    const CountDistribution d = negativeBinomial(mean, *rc::gen::inRange(1, 20));
    const Worth worth{*rc::gen::inRange(1, 100) / 10.0, *rc::gen::inRange(1, 60) / 10.0,
                      *rc::gen::inRange(-20, 9) / 10.0};
    RC_PRE(worth.leftover < worth.cost && criticalFractile(worth) < 0.999);
    const int made = freely(d, worth).pieces;
    const double best = profit(d, worth, made);
    for (int other = 0; other <= d.quantile(0.9999) + 3; ++other) RC_ASSERT(profit(d, worth, other) <= best + 1e-9);
}

} // namespace
} // namespace piewright::demand
