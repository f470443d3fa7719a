#include "units/quantity.h"

#include "units/id.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace piewright {
namespace {

TEST(Quantity, AddsSubtractsAndMultipliesByCounts) {
    EXPECT_EQ(kilograms(2) + grams(500) - milligrams(1), milligrams(2'499'999));
    EXPECT_EQ(grams(82) * 72, grams(5'904));
    EXPECT_EQ(72 * grams(82), grams(5'904));
    EXPECT_EQ(-grams(5), grams(-5));
    Mass mass = grams(5);
    mass += grams(2);
    mass -= grams(10);
    EXPECT_EQ(mass, grams(-3));
    EXPECT_LT(grams(999), kilograms(1));
    EXPECT_EQ(Mass{}, grams(0));
}

TEST(Quantity, SmallUnitsAreWhatTheySay) {
    EXPECT_EQ(kilograms(1).raw(), 1'000'000);          // mg
    EXPECT_EQ(litres(1).raw(), 1'000'000);             // microlitres
    EXPECT_EQ(millimetres(1).raw(), 1'000);            // micrometres
    EXPECT_EQ(kelvins(1).raw(), 1'000);                // mK
    EXPECT_EQ(gramsPerMillilitre(1).raw(), 1'000'000); // microgram per ml
    EXPECT_EQ(percent(1).raw(), 10'000);               // ppm
    EXPECT_EQ(ofFlour(100), kAllFlour);
    EXPECT_EQ(inMetres(millimetres(120)), 0.12);
    EXPECT_EQ(inKilogramsPerCubicMetre(Density::ofRaw(1'220'000)), 1220.0);
    EXPECT_EQ(asFraction(percent(7)), 0.07);
    EXPECT_EQ(asFraction(ofFlour(50)), 0.5);
    EXPECT_EQ(inLitres(millilitres(1'500)), 1.5);
    EXPECT_EQ(inKelvins(Kelvin::ofRaw(-1'500)), -1.5);
    EXPECT_EQ(inGrams(milligrams(1'500)), 1.5);
    EXPECT_EQ(inKilograms(grams(1'500)), 1.5);
    EXPECT_EQ(inMillimetres(micrometres(3'500)), 3.5);
}

TEST(Quantity, NearestRoundsHalvesAwayFromZero) {
    EXPECT_EQ(Mass::nearest(2.5).raw(), 3);
    EXPECT_EQ(Mass::nearest(-2.5).raw(), -3);
    EXPECT_EQ(Mass::nearest(2.499).raw(), 2);
    EXPECT_EQ(scaled(grams(10), 0.33333), milligrams(3'333));
}

TEST(Quantity, RatioIsAPlainNumber) {
    EXPECT_EQ(ratio(kilograms(3), kilograms(2)), 1.5);
    EXPECT_EQ(ratio(grams(-3), kilograms(2)), -0.0015);
}

TEST(Quantity, WholeLotsRoundUp) {
    EXPECT_EQ(wholeLots(kilograms(375), kilograms(25)), 15);
    EXPECT_EQ(wholeLots(milligrams(375'000'001), kilograms(25)), 16);
    EXPECT_EQ(wholeLots(Mass{}, kilograms(25)), 0);
    EXPECT_EQ(wholeLots(grams(-1), kilograms(25)), 0);
    EXPECT_EQ(wholeLots(milligrams(1), kilograms(25)), 1);
}

TEST(Quantity, RoundsToAStepHalvesUp) {
    EXPECT_EQ(roundedTo(milligrams(12'499), grams(5)), grams(10));
    EXPECT_EQ(roundedTo(milligrams(12'500), grams(5)), grams(15));
    EXPECT_EQ(roundedTo(Mass{}, grams(5)), Mass{});
    EXPECT_EQ(roundedTo(milligrams(7), milligrams(3)), milligrams(6)); // 7 is nearer 6 than 9
    EXPECT_EQ(roundedTo(milligrams(8), milligrams(3)), milligrams(9));
}

TEST(Quantity, VolumeAndDensityGiveMassAndBack) {
    EXPECT_EQ(millilitres(150) * Density::ofRaw(1'030'000), milligrams(154'500)); // 150 ml x 1.03
    EXPECT_EQ(milligrams(154'500) / Density::ofRaw(1'030'000), millilitres(150));
}

TEST(Temperature, PointsSubtractToADifference) {
    EXPECT_EQ(celsius(20) - celsius(26), kelvins(-6));
    EXPECT_EQ(celsius(20) + kelvins(6), celsius(26));
    EXPECT_EQ(celsius(20) - kelvins(26), celsius(-6));
    EXPECT_EQ(Celsius::nearest(-0.0005), Celsius::ofMilli(-1));
    EXPECT_EQ(Celsius::ofMilli(21'500).degC(), 21.5);
    EXPECT_LT(celsius(-18), celsius(0));
}

TEST(Id, IsItsName) {
    EXPECT_EQ(GoodId("beef-pie").name(), "beef-pie");
    EXPECT_TRUE(GoodId().empty());
    EXPECT_LT(GoodId("a"), GoodId("b"));
    EXPECT_EQ(std::hash<GoodId>{}(GoodId("a")), std::hash<GoodId>{}(GoodId("a")));
}

RC_GTEST_PROP(DrawnQuantity, WholeLotsHoldItAllAndNotOneMore, ()) {
    const Mass mass = Mass::ofRaw(*rc::gen::inRange<std::int64_t>(1, 1'000'000'000'000));
    const Mass lot = Mass::ofRaw(*rc::gen::inRange<std::int64_t>(1, 1'000'000'000));
    const std::int64_t lots = wholeLots(mass, lot);
    RC_ASSERT(lot * lots >= mass);
    RC_ASSERT(lot * (lots - 1) < mass);
}

RC_GTEST_PROP(DrawnQuantity, ARoundedOneIsAMultipleAtMostHalfAStepAway, ()) {
    const Mass mass = Mass::ofRaw(*rc::gen::inRange<std::int64_t>(0, 1'000'000'000'000));
    const Mass step = Mass::ofRaw(*rc::gen::inRange<std::int64_t>(1, 1'000'000));
    const Mass rounded = roundedTo(mass, step);
    RC_ASSERT(rounded.raw() % step.raw() == 0);
    RC_ASSERT((rounded - mass) * 2 <= step);
    RC_ASSERT((mass - rounded) * 2 <= step);
}

} // namespace
} // namespace piewright
