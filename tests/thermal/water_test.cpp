// Steam, against printed steam tables (IAPWS-95; values from memory of the usual tables).
#include "thermal/heat_transfer.h"
#include "thermal/water.h"

#include <gtest/gtest.h>

namespace piewright::thermal {
namespace {

TEST(Water, HasThePressureOfTheSteamTables) {
    struct Line {
        double degC;
        double kilopascal;
    };
    for (const Line& line : {Line{0.01, 0.6117}, {20, 2.3393}, {40, 7.3849}, {60, 19.947}, {80, 47.414}, {100, 101.42}})
        EXPECT_NEAR(saturationPressure(line.degC) / line.kilopascal, 1, 1e-3) << line.degC;
}

TEST(Water, HasTheLatentHeatOfTheSteamTables) {
    // kJ/kg; 40 and 80 degC are not among the values the cubic goes through.
    EXPECT_NEAR(latentHeat(40) / 1e3, 2406.0, 0.2);
    EXPECT_NEAR(latentHeat(80) / 1e3, 2308.0, 0.2);
}

TEST(Water, LossFromWaterKeepsTheSolids) {
    // 100 g with 40 % water have 60 g of solids; with 25 % water left they weigh 60 / 0.75 = 80 g.
    EXPECT_NEAR(lossFromWater(0.40, 0.25), 0.20, 1e-12);
    EXPECT_LT(lossFromWater(0.1, 0.2), 0);
}

TEST(HeatTransfer, GrowsWithAirAndDifference) {
    EXPECT_LT(forcedConvection(200, 1, 0.1), forcedConvection(200, 2, 0.1));
    EXPECT_LT(naturalConvection(10, 0.1), naturalConvection(100, 0.1));
    // Nu = 0.664 sqrt(Re) Pr^(1/3) at 300 K, 1 m/s, 0.1 m: Re = 0.1 / 1.589e-5 = 6293, Nu = 0.664 x 79.3 x 0.888
    // = 46.8, h = 46.8 x 0.0263 / 0.1 = 12.3.
    EXPECT_NEAR(forcedConvection(26.85, 1, 0.1), 12.3, 0.05);
}

} // namespace
} // namespace piewright::thermal
