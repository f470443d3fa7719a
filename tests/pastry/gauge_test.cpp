#include "pastry/layers.h"
#include "pastry/tin.h"

#include <gtest/gtest.h>

namespace piewright::pastry {
namespace {

TEST(Springback, DecaysExponentially) {
    // 20 % x exp(-15 / 20) = 9.4473 % [our own arithmetic; the model's constants are the house's to find].
    EXPECT_NEAR(asFraction(springbackAfter(percent(20), Minutes(20), Minutes(15))), 0.094473, 1e-6);
}

TEST(Springback, IsAllThereBeforeAnyRest) {
    EXPECT_EQ(springbackAfter(percent(20), Minutes(20), Seconds(0)), percent(20));
    EXPECT_EQ(springbackAfter(percent(20), Seconds(0), Seconds(0)), percent(20));
}

TEST(Springback, IsGoneAfterAnyRestWithoutATimeConstant) {
    EXPECT_EQ(springbackAfter(percent(20), Seconds(0), Seconds(1)), Share{});
}

TEST(Gauge, IsThinnerThanThePasteEndsUp) {
    // 3.5 mm that springs back by 20 %: 3.5 / 1.2 = 2.917 mm.
    EXPECT_EQ(gaugeFor(micrometres(3'500), percent(20)), micrometres(2'917));
    EXPECT_EQ(gaugeFor(micrometres(3'500), Share{}), micrometres(3'500));
}

TEST(Layers, TripleWithEachFoldInThree) {
    // 3, 9, 27, 81, 243, 729, 2187 [Party Catering, "Paste"].
    EXPECT_EQ(layersAfter(0, 3), 3);
    EXPECT_EQ(layersAfter(1, 3), 9);
    EXPECT_EQ(layersAfter(6, 3), 2187);
    EXPECT_EQ(layersAfter(2, 3, 4), 48);
}

TEST(Layers, PastCountingAreNone) {
    EXPECT_TRUE(layersAfter(38, 3).has_value()); // 3^39 < 2^63
    EXPECT_FALSE(layersAfter(39, 3).has_value());
    EXPECT_FALSE(layersAfter(-1, 3).has_value());
    EXPECT_FALSE(layersAfter(2'000'000'000, 0).has_value());
    EXPECT_EQ(layersAfter(2'000'000'000, 5, 1), 5);
}

} // namespace
} // namespace piewright::pastry
