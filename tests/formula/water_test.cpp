#include "formula/water.h"

#include <array>
#include <gmock/gmock.h>

namespace piewright::formula {
namespace {

using testing::HasSubstr;

TEST(Water, FollowsTheBakersRule) {
    // 4 x 20 - (18 + 22 + 8) - 6 = 26 [common textbook rule; the numbers are our own arithmetic].
    const std::array others{celsius(18), celsius(22), celsius(8)};
    EXPECT_EQ(waterTemperature(celsius(20), others, kelvins(6)), celsius(26));
    // 3 x 24 - (22 + 25) - 3 = 22.
    const std::array two{celsius(22), celsius(25)};
    EXPECT_EQ(waterTemperature(celsius(24), two, kelvins(3)), celsius(22));
}

TEST(Water, MayHaveToBeColderThanIce) {
    // 3 x 10 - (20 + 25) - 8 = -23.
    const std::array others{celsius(20), celsius(25)};
    EXPECT_EQ(waterTemperature(celsius(10), others, kelvins(8)), celsius(-23));
}

TEST(Ice, BalancesTheHeat) {
    // Ice melts and warms to 2 degC, the rest cools from 12 to 2.
    const auto split = iceFor(kilograms(5), celsius(12), celsius(2));
    ASSERT_TRUE(split.ok());
    EXPECT_EQ(split->ice + split->water, kilograms(5));
    const double taken = inKilograms(split->ice) * (334 + 4.19 * 2);
    const double given = inKilograms(split->water) * 4.19 * 10;
    EXPECT_NEAR(taken, given, 1e-3);
}

TEST(Ice, ColdIceIsNeededLess) {
    const auto melting = iceFor(kilograms(5), celsius(12), celsius(2));
    const auto frozen = iceFor(kilograms(5), celsius(12), celsius(2), celsius(-18));
    ASSERT_TRUE(melting.ok() && frozen.ok());
    EXPECT_LT(frozen->ice, melting->ice);
    const double taken = inKilograms(frozen->ice) * (2.1 * 18 + 334 + 4.19 * 2);
    const double given = inKilograms(frozen->water) * 4.19 * 10;
    EXPECT_NEAR(taken, given, 1e-3);
}

TEST(Ice, UsesHeatsThatHandbooksGive) {
    // CRC Handbook of Chemistry and Physics [from memory]: 333.55 kJ/kg to melt, 4.184 kJ/(kg K) at 10 degC to 4.19,
    // 2.1 kJ/(kg K) for ice at 0 degC. The rounded ones differ from the trade's 80 kcal by less than half a per cent.
    const WaterHeats heats;
    EXPECT_NEAR(heats.melting, 333.55, 0.5);
    EXPECT_NEAR(heats.water, 4.19, 0.01);
    EXPECT_NEAR(heats.ice, 2.1, 0.03);
    const auto exact = iceFor(kilograms(5), celsius(12), celsius(0));
    const auto rule = iceFor(kilograms(5), celsius(12), celsius(0), celsius(0), {80, 1, 0.5});
    ASSERT_TRUE(exact.ok() && rule.ok());
    EXPECT_NEAR(ratio(exact->ice, rule->ice), 1, 0.005);
}

TEST(Ice, IsNotWantedWhenTheTapIsColdEnough) {
    const auto split = iceFor(kilograms(5), celsius(12), celsius(26));
    ASSERT_TRUE(split.ok());
    EXPECT_EQ(split->ice, Mass{});
    EXPECT_EQ(split->water, kilograms(5));
}

TEST(Ice, GoesBelowZeroInTheSenseOfTheBalance) {
    const auto split = iceFor(kilograms(5), celsius(12), celsius(-10));
    ASSERT_TRUE(split.ok());
    // ice (334 - 41.9) = (5 - ice) 4.19 x 22
    EXPECT_NEAR(inKilograms(split->ice) * (334 - 41.9), inKilograms(split->water) * 4.19 * 22, 1e-3);
}

TEST(Ice, CannotMakeWaterColderThanAllIce) {
    // 334 / 4.19 = 79.714: all ice acts as water at -79.714.
    EXPECT_TRUE(iceFor(kilograms(5), celsius(12), Celsius::ofMilli(-79'700)).ok());
    const auto split = iceFor(kilograms(5), celsius(12), celsius(-80));
    ASSERT_FALSE(split.ok());
    EXPECT_EQ(split.problems().fault, Fault::Input);
    EXPECT_THAT(toText(split.problems().findings), HasSubstr("chilled flour"));
}

} // namespace
} // namespace piewright::formula
