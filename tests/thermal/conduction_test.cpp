// The conduction solver against exact series (Carslaw and Jaeger 1959; Incropera and DeWitt ch. 5), bounds and
// balances.
#include "thermal/conduction.h"
#include "thermal/heat_transfer.h"
#include "thermal/series.h"
#include "thermal/shape.h"
#include "thermal/water.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace piewright::thermal {
namespace {

constexpr double kK = 0.45;
constexpr double kRho = 1060;
constexpr double kCp = 3300;
constexpr double kAlpha = kK / kRho / kCp;

Material plain() { return *Material::constant(kK, kRho, kCp); }

double offBalance(const History& history) {
    return std::abs(history.heat - history.gained) / std::max(std::abs(history.gained), 1.0);
}

Body bodyOf(SeriesShape shape, double size, int cells, double start, const Boundary& outside) {
    const std::vector<Layer> layers{{0, size, start}};
    if (shape == SeriesShape::Slab) return {*slab(layers, cells), {plain()}, {Boundary::insulated(), outside}};
    return {
        shape == SeriesShape::Cylinder ? *longCylinder(layers, cells) : *sphere(layers, cells), {plain()}, {outside}};
}

/// Largest error in theta at middle and surface at Fo 0.1, 0.3 and 1.
double seriesError(SeriesShape shape, double biot, int cells, double tolerance) {
    constexpr double kSize = 0.02;
    Body body = bodyOf(shape, kSize, cells, 0, Boundary::convecting(biot * kK / kSize, 100));
    Stretch run;
    run.seconds = kSize * kSize / kAlpha;
    run.every = run.seconds / 10;
    run.tolerance = tolerance;
    run.probes = {body.grid.probe({0, 0, 0}), body.grid.probe({kSize, 0, 0}), body.grid.mean()};
    const History history = *conduct(body, run);
    EXPECT_LT(offBalance(history), 1e-6);
    const Series series(shape, biot);
    double worst = 0;
    for (const double fo : {0.1, 0.3, 1.0}) {
        const double seconds = fo * run.seconds;
        const auto off = [&](std::size_t probe, double exact) {
            worst = std::max(worst, std::abs((1 - history.probes[probe].at(seconds) / 100) - exact));
        };
        off(0, series.theta(fo, 0));
        off(1, series.theta(fo, 1));
        off(2, series.mean(fo));
    }
    return worst;
}

constexpr std::array<SeriesShape, 3> kShapes{SeriesShape::Slab, SeriesShape::Cylinder, SeriesShape::Sphere};

TEST(Conduction, FollowsTheExactSeriesInEveryShape) {
    for (const SeriesShape shape : kShapes)
        for (const double biot : {0.1, 1.0, 10.0, 100.0})
            EXPECT_LT(seriesError(shape, biot, 60, 0.002), 2e-4) << static_cast<int>(shape) << " Bi " << biot;
}

TEST(Conduction, IsOfSecondOrderInSpace) {
    for (const SeriesShape shape : kShapes) {
        const double coarse = seriesError(shape, 2, 8, 1e-5);
        const double fine = seriesError(shape, 2, 32, 1e-5);
        EXPECT_GE(std::log(coarse / fine) / std::log(4.0), 1.9) << static_cast<int>(shape);
    }
}

/// Slab, pie or block in a hot oven, one grid, ended after half an hour: steps and where it ends.
std::pair<double, double> stepsAndMiddle(const Body& body, double tolerance) {
    Stretch run;
    run.seconds = 1800;
    run.tolerance = tolerance;
    run.probes = {body.grid.mean()};
    const History history = *conduct(body, run);
    return {history.steps, history.probes[0].points().back().degC};
}

void secondOrderInTime(const Body& body, double loose, double tight, double least) {
    const double exact = stepsAndMiddle(body, 1e-6).second;
    const auto [steps1, end1] = stepsAndMiddle(body, loose);
    const auto [steps2, end2] = stepsAndMiddle(body, tight);
    EXPECT_GT(steps2, 1.9 * steps1);
    EXPECT_GE(std::log(std::abs(end1 - exact) / std::abs(end2 - exact)) / std::log(steps2 / steps1), least);
}

TEST(Conduction, IsOfSecondOrderInTime) {
    const Boundary oven = Boundary::convecting(30, 200);
    secondOrderInTime(bodyOf(SeriesShape::Slab, 0.02, 30, 5, oven), 0.2, 0.002, 1.8);
    secondOrderInTime({*roundTin({0.05, 0.05, {{0, 0.03, 5}}, {}}, 300), {plain()}, {3, oven}}, 0.2, 0.002, 1.8);
    secondOrderInTime({*roundTin({0.04, 0.05, {{0, 0.03, 5}}, {}}, 300), {plain()}, {3, oven}}, 0.2, 0.002, 1.8);
}

TEST(Conduction, OfABlockIsTheProductOfThreeSlabs) {
    // Incropera and DeWitt, 5.8: theta of a rectangular bar is the product of its slabs'.
    constexpr double kLength = 0.12;
    constexpr double kWidth = 0.08;
    constexpr double kHeight = 0.05;
    constexpr double kH = 25;
    Body body{*block(kLength, kWidth, {{0, kHeight, 5}}, 12'000), {plain()}, {3, Boundary::convecting(kH, 200)}};
    Stretch run;
    run.seconds = 2400;
    run.probes = {body.grid.probe({0, 0, kHeight / 2}), body.grid.mean()};
    const History history = *conduct(body, run);
    EXPECT_LT(offBalance(history), 1e-6);
    double theta = 1;
    double mean = 1;
    for (const double size : {kLength, kWidth, kHeight}) {
        const Series series(SeriesShape::Slab, kH * size / 2 / kK);
        const double fo = kAlpha * run.seconds / (size * size / 4);
        theta *= series.theta(fo, 0);
        mean *= series.mean(fo);
    }
    EXPECT_NEAR(history.probes[0].points().back().degC, 200 - 195 * theta, 0.05);
    EXPECT_NEAR(history.probes[1].points().back().degC, 200 - 195 * mean, 0.1);
    // All that came in, for the whole block and not its quarter.
    EXPECT_NEAR(history.heat, kRho * kCp * kLength * kWidth * kHeight * 195 * (1 - mean), 1e-3 * history.heat);
}

TEST(Conduction, OfASlantedTinConductsWithinTheTwoBounds) {
    // Mouth and floor held, wall insulated, steady. Level isotherms give the upper bound k pi r R / h of the
    // conductance; heat led along the fanning lines of the grid gives the lower one, less by ln(1 + s^2) / s^2, where s
    // is the slope of the wall (Carslaw and Jaeger 1959, ch. 16: bounds by isotherms and by tubes).
    constexpr double kFloor = 0.04;
    constexpr double kMouth = 0.055;
    constexpr double kHeight = 0.03;
    constexpr double kSlope = (kMouth - kFloor) / kHeight;
    Body body{*roundTin({kFloor, kMouth, {{0, kHeight, 50}}, {}}, 1500),
              {plain()},
              {Boundary::held(0), Boundary::convecting(1e7, 100), Boundary::insulated()}};
    Stretch run;
    run.seconds = 40'000;
    run.every = 400;
    run.probes = {body.grid.probe({0, 1e-9, 0}), body.grid.probe({0, kHeight, 0})};
    const History history = *conduct(body, run);
    EXPECT_LT(offBalance(history), 1e-6);
    // What goes through the floor when steady: heat passes from mouth to floor, nothing is gained any more.
    const double upper = kK * std::numbers::pi * kFloor * kMouth / kHeight;
    const double lower = upper * std::log(1 + kSlope * kSlope) / (kSlope * kSlope);
    // Watts by the temperature halfway up on the axis cannot be had; so close the mouth with a known resistance.
    Body resisted = body;
    const double area = std::numbers::pi * kMouth * kMouth;
    const double h = 2 * upper / area;
    resisted.sides[1] = Boundary::convecting(h, 100);
    const History steady = *conduct(resisted, run);
    const double watts = h * area * (100 - steady.surfaces[1].points().back().degC);
    const double conductance = watts / steady.surfaces[1].points().back().degC; // over the mouth's mean temperature
    EXPECT_LT(conductance, upper * 1.02);
    EXPECT_GT(conductance, lower * 0.98);
    EXPECT_NEAR(steady.surfaces[0].points().back().degC, 0, 1e-9);
}

double slantedMean(int cells) {
    Body body{*roundTin({0.04, 0.055, {{0, 0.035, 5}}, {}}, cells), {plain()}, {3, Boundary::convecting(25, 200)}};
    Stretch run;
    run.seconds = 1500;
    run.tolerance = 1e-4;
    run.probes = {body.grid.mean()};
    return conduct(body, run)->probes[0].points().back().degC;
}

TEST(Conduction, OfASlantedTinConvergesInSecondOrder) {
    // Against itself, sixteen times as many cells; steps of two in each direction.
    const double best = slantedMean(16 * 1600);
    const double coarse = std::abs(slantedMean(100) - best);
    const double fine = std::abs(slantedMean(1600) - best);
    EXPECT_GE(std::log(coarse / fine) / std::log(4.0), 1.7);
    EXPECT_LT(fine, 0.05);
}

TEST(Conduction, OfASlantedTinIsTheSameUpsideDown) {
    const auto middle = [](double floor, double mouth) {
        Body body{*roundTin({floor, mouth, {{0, 0.035, 5}}, {}}, 600), {plain()}, {3, Boundary::convecting(25, 200)}};
        Stretch run;
        run.seconds = 1500;
        return conduct(body, run)->coldest.points().back().degC;
    };
    EXPECT_NEAR(middle(0.04, 0.055), middle(0.055, 0.04), 1e-6);
}

TEST(Conduction, ThroughLayersIsTheirResistancesInSeries) {
    // 200 degC, h 25 | 3 mm paste 0.3 | 30 mm filling 0.45 | h 10, 70 degC: at the joint the flux is
    // 130 / (1/25 + 0.01 + 0.0667 + 0.1) = 600 W/m2, so 200 - 600 x 0.05 = 170 degC.
    Body body{*slab({{0, 0.003, 20}, {1, 0.03, 20}}, 40),
              {*Material::constant(0.3, 1200, 2500), *Material::constant(0.45, 1060, 3300)},
              {Boundary::convecting(25, 200), Boundary::convecting(10, 70)}};
    Stretch run;
    run.seconds = 60'000;
    run.every = 600;
    run.probes = {body.grid.probe({0.003, 0, 0}), body.grid.probe({0.0029999, 0, 0})};
    const History history = *conduct(body, run);
    EXPECT_NEAR(history.probes[0].points().back().degC, 170, 0.01);
    EXPECT_NEAR(history.probes[1].points().back().degC, 170, 0.01);
    EXPECT_LT(offBalance(history), 1e-6);
}

TEST(Conduction, RadiatesUntilItIsAsHotAsTheWalls) {
    Boundary side;
    side.emissivity = 0.9;
    side.walls = Curve::steady(200);
    Body body = bodyOf(SeriesShape::Slab, 0.002, 6, 5, side);
    Stretch run;
    run.seconds = 20;
    run.every = 1;
    run.probes = {body.grid.mean()};
    const History warm = *conduct(body, run);
    // The mean rises by what the surface takes, h_r (200 - T surface) / (rho cp L).
    const double surface = warm.surfaces[1].at(10);
    const double rate = (warm.probes[0].at(11) - warm.probes[0].at(9)) / 2;
    EXPECT_NEAR(rate, radiationCoefficient(200, surface, 0.9) * (200 - surface) / (kRho * kCp * 0.002), 0.01 * rate);
    run.seconds = 7200;
    run.every = 60;
    EXPECT_NEAR(conduct(body, run)->coldest.points().back().degC, 200, 0.5);
    EXPECT_LT(offBalance(warm), 1e-6);
}

TEST(Conduction, TakesContactAndAirTogether) {
    // A stone at 220 below, insulated above, in the end 220 throughout; air at 20 on top: between, by resistances.
    Boundary stone;
    stone.contact = 100;
    stone.body = Curve::steady(220);
    Body body{*slab({{0, 0.02, 5}}, 20), {plain()}, {stone, Boundary::convecting(10, 20)}};
    Stretch run;
    run.seconds = 40'000;
    run.every = 400;
    const History history = *conduct(body, run);
    const double flux = 200 / (1.0 / 100 + 0.02 / kK + 1.0 / 10);
    EXPECT_NEAR(history.surfaces[0].points().back().degC, 220 - flux / 100, 0.01);
    EXPECT_NEAR(history.surfaces[1].points().back().degC, 20 + flux / 10, 0.01);
}

TEST(Conduction, FollowsSurroundingsThatChange) {
    // On a ramp of 0.1 K/s the far side lags by rho cp L (1/h + L/2k) = 3498 (0.01 + 0.00111) = 38.87 s, so by 3.887 K
    // (Carslaw and Jaeger 1959, 3.11).
    Boundary side = Boundary::convecting(100, 20);
    side.air = *Curve::of({{0, 20}, {1000, 120}, {2000, 120}});
    Body body = bodyOf(SeriesShape::Slab, 0.001, 5, 20, side);
    Stretch run;
    run.seconds = 2000;
    const History history = *conduct(body, run);
    EXPECT_NEAR(history.coldest.at(990), 119 - 3.887, 0.02);
    EXPECT_NEAR(history.coldest.at(2000), 120, 0.02);
}

TEST(Conduction, StopsWhenTheColdestIsHotEnough) {
    Body body = bodyOf(SeriesShape::Slab, 0.02, 20, 5, Boundary::convecting(30, 200));
    Stretch run;
    run.seconds = 36'000;
    run.every = 10;
    run.untilColdest = 75;
    const History history = *conduct(body, run);
    EXPECT_GE(history.coldest.points().back().degC, 75);
    EXPECT_LT(history.coldest.points().back().seconds, 7200);
}

TEST(Conduction, GivesTheSameEveryTime) {
    Body body{*roundTin({0.04, 0.055, {{0, 0.003, 5}, {0, 0.03, 5}, {0, 0.003, 5}}, Layer{0, 0.003, 5}}, 400),
              {plain()},
              {3, Boundary::convecting(25, 200)}};
    const History a = *conduct(body, {});
    const History b = *conduct(body, {});
    EXPECT_EQ(a.heat, b.heat);
    EXPECT_EQ(a.coldest.points().back().degC, b.coldest.points().back().degC);
}

TEST(Conduction, RefusesWhatItCannotSolve) {
    Body body = bodyOf(SeriesShape::Slab, 0.02, 20, 5, Boundary::convecting(30, 200));
    Stretch run;
    run.seconds = -1;
    EXPECT_FALSE(conduct(body, run));
    run.seconds = 3600;
    run.mostSteps = 5;
    EXPECT_FALSE(conduct(body, run));
    run = {};
    body.sides[1].convection = std::numeric_limits<double>::quiet_NaN();
    EXPECT_FALSE(conduct(body, run));
    body.sides.pop_back();
    EXPECT_FALSE(conduct(body, run));
    EXPECT_FALSE(slab({}, 10));
    EXPECT_FALSE(slab({{0, -1, 5}}, 10));
    EXPECT_FALSE(roundTin({0.01, 0.5, {{0, 0.01, 5}}, {}}, 100));
    EXPECT_FALSE(roundTin({0.01, 0.01, {{0, 0.01, 5}}, Layer{0, 0.02, 5}}, 100));
}

} // namespace
} // namespace piewright::thermal
