// Lethality: sums by hand, a fine numerical integral as the oracle, and the tables' own lines.
#include "thermal/bake_loss.h"
#include "thermal/hold_table.h"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

namespace piewright::thermal {
namespace {

double bySmallSteps(const Lethality& by, const Curve& curve) {
    const double from = curve.points().front().seconds;
    const double to = curve.points().back().seconds;
    constexpr int kSteps = 200'000;
    const double step = (to - from) / kSteps;
    double sum = 0;
    for (int i = 0; i < kSteps; ++i) sum += lethalRate(by, curve.at(from + (i + 0.5) * step)) * step;
    return sum;
}

TEST(Lethality, OfAHoldAtTheReferenceIsItsTime) {
    EXPECT_DOUBLE_EQ(accumulated({70, 7.5, {}, {}}, *Curve::of({{0, 70}, {120, 70}})), 120);
}

TEST(Lethality, OneZHigherCountsTenfold) {
    EXPECT_NEAR(accumulated({70, 7.5, {}, {}}, *Curve::of({{0, 77.5}, {12, 77.5}})), 120, 1e-9);
    EXPECT_NEAR(equivalentTime({70, 7.5, {}, {}}, 77.5, 120), 12, 1e-9);
}

TEST(Lethality, OfARampIsItsClosedIntegral) {
    // 20 to 80 in 2400 s: z / (ln 10 x slope) x (rate at 80 - rate at 20)
    const double expected = 7.5 / (std::log(10.0) * 60 / 2400) * (std::pow(10, 10 / 7.5) - std::pow(10, -50 / 7.5));
    EXPECT_NEAR(accumulated({70, 7.5, {}, {}}, *Curve::of({{0, 20}, {2400, 80}})), expected, 1e-9 * expected);
}

TEST(Lethality, OfAnyCurveAgreesWithSmallSteps) {
    std::mt19937_64 engine(17);
    const auto draw = [&](double least, double most) {
        return least + (most - least) * static_cast<double>(engine() >> 11) * 0x1p-53;
    };
    for (int round = 0; round < 6; ++round) {
        std::vector<CurvePoint> points{{0, draw(5, 95)}};
        for (int i = 0; i < 8; ++i) points.push_back({points.back().seconds + draw(10, 400), draw(5, 95)});
        const Curve curve = *Curve::of(points);
        for (const Lethality& by :
             {Lethality{70, 7.5, {}, {}}, Lethality{70, 9, 10.0, {}}, Lethality{70, 9, 10.0, 60.0}})
            EXPECT_NEAR(accumulated(by, curve) / bySmallSteps(by, curve), 1, 1e-4);
    }
}

TEST(Lethality, IsReachedWhenTheCurveUpToThereCountsIt) {
    const Curve curve = *Curve::of({{0, 20}, {1800, 76}, {2400, 74}, {3000, 40}});
    const Lethality by{70, 7.5, {}, 60.0};
    const double all = accumulated(by, curve);
    for (const double share : {0.01, 0.3, 0.7, 0.999}) {
        const double at = *timeToReach(by, curve, share * all);
        std::vector<CurvePoint> before;
        for (const CurvePoint& point : curve.points())
            if (point.seconds < at) before.push_back(point);
        before.push_back({at, curve.at(at)});
        EXPECT_NEAR(accumulated(by, *Curve::of(before)), share * all, 1e-6 * all);
    }
    EXPECT_FALSE(timeToReach(by, curve, all * 1.001));
}

TEST(Lethality, WantsAZThatMeansSomething) {
    EXPECT_FALSE(checked({70, 0, {}, {}}));
    EXPECT_FALSE(checked({70, 7.5, -1.0, {}}));
    EXPECT_FALSE(checked({500, 7.5, {}, {}}));
    EXPECT_TRUE(checked({70, 7.5, {}, {}}));
}

TEST(HoldTable, TakesTheLongerTimeBetweenItsLines) {
    const HoldTable& fsa = *holdTable("fsa-combinations");
    EXPECT_EQ(holdFor(fsa, 70), 120);
    EXPECT_EQ(holdFor(fsa, 74.9), 120);
    EXPECT_EQ(holdFor(fsa, 95), 6);
    EXPECT_FALSE(holdFor(fsa, 59.9));
}

TEST(HoldTable, BelowSeventyTheBurgerTimesAreLonger) {
    for (const double degC : {60.0, 65.0})
        EXPECT_GT(*holdFor(*holdTable("ecoli-low-temperature"), degC), *holdFor(*holdTable("fsa-combinations"), degC));
}

TEST(HoldTable, LinesRiseInTemperatureAndFallInTime) {
    for (const HoldTable& table : holdTables())
        for (std::size_t i = 1; i < table.pairs.size(); ++i) {
            EXPECT_LT(table.pairs[i - 1].degC, table.pairs[i].degC) << table.id;
            EXPECT_GE(table.pairs[i - 1].seconds, table.pairs[i].seconds) << table.id;
        }
}

TEST(HoldTable, IsMetByTheFirstLineThatIsHeldLongEnough) {
    const HoldTable& fsa = *holdTable("fsa-combinations");
    // Through 70 at 60 s, through 75 at 65 s and falling again: 70 is held from 60 s to 130 s only, 75 from 65 to 66.
    EXPECT_FALSE(
        firstMeeting(fsa, *Curve::of({{0, 10}, {60, 70}, {65, 75}, {66, 74}, {130, 70}, {131, 60}, {132, 20}})));
    // 71 for ever from 600 s on (2 K a second around 70): met 120 s after 70 was passed.
    EXPECT_NEAR(*firstMeeting(fsa, *Curve::of({{0, 50}, {600, 69}, {601, 71}, {900, 71}})), 600.5 + 120, 1e-9);
    // 80 for 6 s comes before 70 for 120.
    EXPECT_NEAR(*firstMeeting(fsa, *Curve::of({{0, 20}, {60, 80}, {100, 80}})), 66, 1e-9);
    // Already hot at the start, one point only: not held at all.
    EXPECT_FALSE(firstMeeting(fsa, Curve::steady(90)));
}

TEST(HoldTable, OfNonProteolyticBotulinumIsItsPublishedTable) {
    // FSA vacuum-packing training: 80 degC 129 min, 90 degC 10 min, 95 degC 3.2 min (printed to two figures)
    EXPECT_NEAR(equivalentTime(kNonProteolytic, 80, 600) / 60, 129, 129 * 0.035);
    EXPECT_NEAR(equivalentTime(kNonProteolytic, 90, 600) / 60, 10, 1e-9);
    EXPECT_NEAR(equivalentTime(kNonProteolytic, 95, 600) / 60, 3.2, 3.2 * 0.035);
    EXPECT_TRUE(std::isinf(equivalentTime(kNonProteolytic, 79, 600))); // the table begins at 80
}

TEST(DecimalTimes, AreNotInterpolated) {
    EXPECT_NEAR(*decimalTime("Listeria monocytogenes", "milk", 71.7), 0.9, 1e-12);
    EXPECT_FALSE(decimalTime("Listeria monocytogenes", "milk", 70));
}

TEST(Curve, RefusesWhatIsNone) {
    EXPECT_FALSE(Curve::of({}));
    EXPECT_FALSE(Curve::of({{0, 10}, {0, 20}}));
    EXPECT_FALSE(Curve::of({{0, 1e9}}));
    EXPECT_FALSE(Curve::of({{std::numeric_limits<double>::infinity(), 10}}));
}

TEST(Curve, IsCooledOnlyWhenItStaysSo) {
    const Curve curve = *Curve::of({{0, 70}, {100, 8}, {150, 20}, {200, 4}});
    EXPECT_DOUBLE_EQ(*curve.firstAtOrBelow(8), 100);
    EXPECT_DOUBLE_EQ(*curve.staysAtOrBelowFrom(8), 150 + 50 * 12.0 / 16);
    EXPECT_FALSE(curve.staysAtOrBelowFrom(3));
}

TEST(BrowningGuide, RisesWithHeatAndStaysBelowOne) {
    const double light = browningGuide(*Curve::of({{0, 20}, {600, 140}, {1500, 150}}));
    const double dark = browningGuide(*Curve::of({{0, 20}, {600, 170}, {1500, 190}}));
    EXPECT_GT(light, 0);
    EXPECT_LT(light, dark);
    EXPECT_LT(dark, 1);
}

} // namespace
} // namespace piewright::thermal
