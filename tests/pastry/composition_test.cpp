#include "pastry/composition.h"

#include <array>
#include <gtest/gtest.h>

namespace piewright::pastry {
namespace {

Composition pure(double Composition::* part) {
    Composition food;
    food.*part = 100;
    return food;
}

TEST(VoidFreeDensity, OfWaterIsWaters) {
    // CRC Handbook of Chemistry and Physics [from memory]: 998.2 kg/m3 at 20 degC, 971.8 at 80. The polynomial, printed
    // to 150 degC, is within 0.3 %.
    EXPECT_NEAR(inKilogramsPerCubicMetre(voidFreeDensity(pure(&Composition::water), celsius(20))), 998.2, 3.0);
    EXPECT_NEAR(inKilogramsPerCubicMetre(voidFreeDensity(pure(&Composition::water), celsius(80))), 971.8, 3.0);
}

TEST(VoidFreeDensity, OfPureComponentsAtZeroIsThePrintedConstant) {
    // Choi and Okos as printed in ASHRAE Refrigeration 2006, ch. 9.
    EXPECT_EQ(voidFreeDensity(pure(&Composition::fat), celsius(0)), Density::ofRaw(925'590));
    EXPECT_EQ(voidFreeDensity(pure(&Composition::fibre), celsius(0)), Density::ofRaw(1'311'500));
    EXPECT_EQ(voidFreeDensity(pure(&Composition::ash), celsius(0)), Density::ofRaw(2'423'800));
}

TEST(VoidFreeDensity, AddsVolumesNotDensities) {
    // 50 g fat and 50 g water at 0 degC: 100 / (50 / 925.59 + 50 / 997.18) = 960.05 kg/m3, the harmonic mean.
    Composition half;
    half.fat = half.water = 50;
    EXPECT_NEAR(inKilogramsPerCubicMetre(voidFreeDensity(half, celsius(0))), 960.05, 0.01);
}

TEST(Mixed, WeighsEachPart) {
    // 1 kg fat and 3 kg water: 25 and 75 in 100.
    const std::array parts{CompositionPart{pure(&Composition::fat), kilograms(1)},
                           CompositionPart{pure(&Composition::water), kilograms(3)}};
    const Composition mix = mixed(parts);
    EXPECT_DOUBLE_EQ(mix.fat, 25);
    EXPECT_DOUBLE_EQ(mix.water, 75);
    EXPECT_EQ(mix.ash, 0);
}

} // namespace
} // namespace piewright::pastry
