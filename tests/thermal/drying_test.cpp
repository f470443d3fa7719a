// Water that boils off behind a front, that evaporates from a moist surface, and that freezes.
#include "thermal/conduction.h"
#include "thermal/shape.h"
#include "thermal/water.h"

#include <cmath>
#include <gtest/gtest.h>

namespace piewright::thermal {
namespace {

Food filling() { return *Food::of({72, 12, 8, 6, 1, 1}, -1.5); }

double offBalance(const History& history) {
    return std::abs(history.heat - history.gained) / std::max(std::abs(history.gained), 1.0);
}

History baked(int cells, double seconds) {
    Body body{*slab({{0, 0.02, 10}}, cells),
              {*Material::of(filling(), 0, Drying{})},
              {Boundary::insulated(), Boundary::convecting(40, 220)}};
    Stretch run;
    run.seconds = seconds;
    auto history = conduct(body, run);
    EXPECT_TRUE(history);
    return *history;
}

TEST(Drying, KeepsWhatIsMoistNearBoilingWhileTheCrustGetsHot) {
    const History history = baked(60, 3600);
    EXPECT_LT(history.coldest.points().back().degC, 103);
    EXPECT_GT(history.hottest.points().back().degC, 130);
    EXPECT_LT(offBalance(history), 1e-6);
}

TEST(Drying, LosesAsMuchAsTheHeatThatIsNotFoundAsWarmth) {
    const History history = baked(60, 3600);
    EXPECT_GT(history.boiled, 0.5); // kg of a square metre's 20
    EXPECT_LT(history.boiled, 8);
    // Bounds: sensible heat of the whole is at least that of 20 kg (density about 1,060) from 10 to its coldest.
    const double sensible = 0.02 * 1055 * 3500 * (history.coldest.points().back().degC - 10);
    EXPECT_NEAR(history.heat, sensible + history.boiled * latentHeat(100), 0.15 * history.heat);
}

TEST(Drying, HardlyDependsOnTheGrid) {
    const History coarse = baked(30, 3600);
    const History fine = baked(120, 3600);
    EXPECT_NEAR(coarse.boiled / fine.boiled, 1, 0.03);
    EXPECT_NEAR(coarse.coldest.at(1200), fine.coldest.at(1200), 0.5);
}

TEST(Drying, DoesNotTakeItsSteamBackWhenItCools) {
    Boundary side = Boundary::convecting(40, 220);
    side.air = *Curve::of({{0, 220}, {2400, 220}, {2401, 20}, {9000, 20}});
    Body body{*slab({{0, 0.02, 10}}, 40), {*Material::of(filling(), 0, Drying{})}, {Boundary::insulated(), side}};
    Stretch run;
    run.seconds = 2400;
    const History hot = *conduct(body, run);
    run.seconds = 9000;
    const History cooled = *conduct(body, run);
    EXPECT_GE(cooled.boiled, hot.boiled - 1e-9);
    EXPECT_LT(cooled.hottest.points().back().degC, 40);
    EXPECT_LT(offBalance(cooled), 1e-6);
}

TEST(Drying, OfAMoistSurfaceStaysNearTheWetBulb) {
    // Air of 20 degC with 1.0 kPa of vapour: a ventilated wet bulb reads 12.8 degC by Sprung's formula
    // e = es(Tw) - 0.000662 P (T - Tw): 1.48 - 0.0671 x 7.2 = 1.0. Lewis's relation alone stays a little below.
    Boundary side = Boundary::convecting(30, 20);
    side.moist = true;
    Body body{*slab({{0, 0.004, 15}}, 10), {*Material::constant(0.5, 1000, 4000)}, {Boundary::insulated(), side}};
    Stretch run;
    run.seconds = 4 * 3600;
    run.every = 60;
    const History history = *conduct(body, run);
    EXPECT_NEAR(history.surfaces[1].points().back().degC, 12.8, 0.7);
    EXPECT_GT(history.evaporated, 0);
    EXPECT_LT(offBalance(history), 1e-6);
    // In the end all the heat of the air goes into vapour: m = h (20 - Tw) / latent.
    const double flux = 30 * (20 - history.surfaces[1].points().back().degC);
    EXPECT_NEAR(history.evaporated / run.seconds, flux / latentHeat(12.5), 0.1 * flux / latentHeat(12.5));
}

TEST(Drying, DrawsBackFromASurfaceThatHasNoMoreWater) {
    // Two millimetres hold about 1.4 kg of removable water each square metre; in dry air at 60 degC it goes in hours,
    // ever slower.
    Boundary side = Boundary::convecting(30, 60);
    side.moist = true;
    Body body{*slab({{0, 0.002, 20}}, 8), {*Material::of(filling(), 0, Drying{})}, {Boundary::insulated(), side}};
    Stretch run;
    run.seconds = 1800;
    const double early = conduct(body, run)->evaporated;
    run.seconds = 10 * 3600;
    run.every = 60;
    const History history = *conduct(body, run);
    const double water = 0.9 * filling().parts().water * filling().density(20) * 0.002;
    EXPECT_LT(history.evaporated, water * 1.02);
    EXPECT_GT(history.evaporated, 0.6 * water);
    EXPECT_GT(early / 1800, history.evaporated / (10 * 3600));
    EXPECT_LT(offBalance(history), 1e-6);
    EXPECT_LE(history.hottest.points().back().degC, 60.01);
}

TEST(Freezing, TakesTheHeatThatItsEnthalpySays) {
    const Food food = filling();
    const Material material = *Material::of(food);
    Body body{*slab({{0, 0.02, 10}}, 40), {material}, {Boundary::insulated(), Boundary::convecting(50, -25)}};
    Stretch run;
    run.seconds = 12 * 3600;
    run.every = 60;
    const History history = *conduct(body, run);
    EXPECT_NEAR(history.hottest.points().back().degC, -25, 0.2);
    const double per = 0.02 * food.density(20) * (food.enthalpy(10) - food.enthalpy(-25));
    EXPECT_NEAR(-history.heat / per, 1, 2e-3);
    EXPECT_LT(offBalance(history), 1e-6);
    // It rests where ice forms: more than half an hour between 0 and -4 in the middle.
    EXPECT_GT(*history.hottest.firstAtOrBelow(-4) - *history.hottest.firstAtOrBelow(0), 1800);
}

} // namespace
} // namespace piewright::thermal
