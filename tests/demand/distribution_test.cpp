#include "demand/distribution.h"

#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <numeric>

namespace piewright::demand {
namespace {

TEST(Distribution, PoissonAgreesWithTheFormula) {
    // R 4.2.2: dpois(4, 7.3), ppois(4, 7.3), qpois(c(.1, .5, .95), 7.3)
    const CountDistribution d = poisson(7.3);
    EXPECT_NEAR(d.chance(4), 0.0799338039283, 1e-12);
    EXPECT_NEAR(d.atMost(4), 0.147339851046, 1e-12);
    EXPECT_EQ(d.quantile(0.1), 4);
    EXPECT_EQ(d.quantile(0.5), 7);
    EXPECT_EQ(d.quantile(0.95), 12);
}

TEST(Distribution, NegativeBinomialAgreesWithTheFormula) {
    // R 4.2.2: dnbinom(20, mu = 12.5, size = 4) and so on; variance = 12.5 + 12.5^2 / 4 = 51.5625
    const CountDistribution d = negativeBinomial(12.5, 4);
    EXPECT_NEAR(d.chance(20), 0.0237161465608, 1e-12);
    EXPECT_NEAR(d.atMost(20), 0.86812025647, 1e-11);
    EXPECT_EQ(d.quantile(0.1), 4);
    EXPECT_EQ(d.quantile(0.5), 11);
    EXPECT_EQ(d.quantile(0.95), 26);
    EXPECT_NEAR(d.mean(), 12.5, 1e-9);
    EXPECT_NEAR(d.variance(), 51.5625, 1e-7);
}

TEST(Distribution, ALargeNegativeBinomialNeitherUnderNorOverflows) {
    // R 4.2.2: pnbinom(600, mu = 480, size = 55), qnbinom(c(.025, .975), ...)
    const CountDistribution d = negativeBinomial(480, 55);
    EXPECT_NEAR(d.atMost(600), 0.953950121153, 1e-11);
    EXPECT_NEAR(std::log(d.chance(600)), -6.69235184758, 1e-9);
    EXPECT_EQ(d.quantile(0.025), 355);
    EXPECT_EQ(d.quantile(0.975), 622);
    EXPECT_NEAR(poisson(100'000).mean(), 100'000, 1e-4);
}

TEST(Distribution, NegativeBinomialTendsToPoissonWithoutCancellation) {
    // By the formula: dnbinom(5, mu = 3, size = 1e7) = 0.100818808399, dpois(5, 3) = 0.100818813445
    EXPECT_NEAR(negativeBinomial(3, 1e7).chance(5), 0.100818808399, 1e-11);
    EXPECT_NEAR(negativeBinomial(3, 1e15).chance(5), 0.100818813445, 1e-11);
}

TEST(Distribution, NothingWantedIsAllOnZero) {
    EXPECT_EQ(poisson(0).most(), 0);
    EXPECT_EQ(negativeBinomial(0, 2).most(), 0);
    EXPECT_EQ(poisson(0).quantile(0.99), 0);
    EXPECT_EQ(poisson(0).expectedSold(5), 0);
}

TEST(Distribution, GivenThatASellOutHappenedTheMeanIsTheTails) {
    // Poisson of 14, sold out at 15: P = 0.429563287173, E[D | D >= 15] = 17.4543177114 by summing the formula
    EXPECT_NEAR(1 - poisson(14).atMost(14), 0.429563287173, 1e-11);
    EXPECT_NEAR(givenAtLeast(poisson(14), 15).mean(), 17.4543177114, 1e-8);
    // Negative binomial of 14 and size 5: E[D | D >= 15] = 20.9145193203
    EXPECT_NEAR(givenAtLeast(negativeBinomial(14, 5), 15).mean(), 20.9145193203, 1e-7);
}

TEST(Distribution, BeyondAllReachTheLeastItselfIsMeant) {
    EXPECT_EQ(givenAtLeast(poisson(1), 5000).quantile(0.5), 5000);
}

TEST(Distribution, AMixturesQuantileIsNotTheMixtureOfQuantiles) {
    // 0.7 Poisson(8) + 0.3 Poisson(22): the 2.5/3.5 quantile is 15 by summing the formula; 0.7 x 10 + 0.3 x 25 is not
    const std::array parts{poisson(8), poisson(22)};
    const std::array shares{0.7, 0.3};
    const CountDistribution d = mixture(parts, shares);
    EXPECT_EQ(d.quantile(2.5 / 3.5), 15);
    EXPECT_NEAR(d.expectedSold(15), 10.0585480822, 1e-9);
    EXPECT_NEAR(d.mean(), 0.7 * 8 + 0.3 * 22, 1e-9);
}

std::vector<double> someWeights() {
    return *rc::gen::suchThat(
        rc::gen::container<std::vector<double>>(rc::gen::map(rc::gen::inRange(0, 1000), [](int n) { return n / 7.0; })),
        [](const std::vector<double>& w) { return std::accumulate(w.begin(), w.end(), 0.0) > 0; });
}

RC_GTEST_PROP(DistributionProperty, SumsToOneAndQuantilesClimb, ()) {
    const CountDistribution d(someWeights());
    double sum = 0;
    for (int k = 0; k <= d.most(); ++k) {
        RC_ASSERT(d.chance(k) >= -1e-15);
        sum += d.chance(k);
    }
    RC_ASSERT(std::abs(sum - 1) < 1e-9);
    int last = 0;
    for (int i = 1; i < 200; ++i) {
        const double p = i / 200.0;
        const int q = d.quantile(p);
        RC_ASSERT(q >= last);
        RC_ASSERT(d.atMost(q) >= p - 1e-9);
        RC_ASSERT(q == 0 || d.atMost(q - 1) < p);
        last = q;
    }
}

RC_GTEST_PROP(DistributionProperty, ExpectedSoldIsConcaveAndEndsAtTheMean, ()) {
    const CountDistribution d(someWeights());
    double last = 1;
    for (int n = 0; n <= d.most() + 2; ++n) {
        const double more = d.expectedSold(n + 1) - d.expectedSold(n);
        RC_ASSERT(more >= -1e-12);
        RC_ASSERT(more <= last + 1e-12); // one more sells with no greater chance than the one before
        last = more;
    }
    RC_ASSERT(std::abs(d.expectedSold(d.most() + 5) - d.mean()) < 1e-9);
}

} // namespace
} // namespace piewright::demand
