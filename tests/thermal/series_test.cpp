// The series themselves. Incropera and DeWitt, table 5.1 (as the exact values it was rounded from); roots to ten digits
// from the transcendental equations by another program.
#include "thermal/series.h"

#include <cmath>
#include <gtest/gtest.h>

namespace piewright::thermal {
namespace {

TEST(Series, HasTheRootsOfTheTextbookTable) {
    // Bi = 1: slab 0.8603 and 1.1191, cylinder 1.2558 and 1.2071, sphere 1.5708 and 1.2732
    EXPECT_NEAR(Series(SeriesShape::Slab, 1).root(1), 0.8603, 5e-5);
    EXPECT_NEAR(Series(SeriesShape::Slab, 1).coefficient(1), 1.1191, 5e-5);
    EXPECT_NEAR(Series(SeriesShape::Cylinder, 1).root(1), 1.2558, 5e-5);
    EXPECT_NEAR(Series(SeriesShape::Cylinder, 1).coefficient(1), 1.2071, 5e-5);
    EXPECT_NEAR(Series(SeriesShape::Sphere, 1).root(1), 1.5708, 5e-5);
    EXPECT_NEAR(Series(SeriesShape::Sphere, 1).coefficient(1), 1.2732, 5e-5);
}

TEST(Series, BeginsAtOneEverywhere) {
    for (const SeriesShape shape : {SeriesShape::Slab, SeriesShape::Cylinder, SeriesShape::Sphere})
        for (const double biot : {0.01, 1.0, 100.0}) {
            EXPECT_NEAR(Series(shape, biot).theta(0.002, 0), 1, 1e-6);
            EXPECT_NEAR(Series(shape, biot).mean(1e-3), 1, 0.12);
        }
}

TEST(Series, OfASmallBiotIsLumped) {
    // theta = e^(-Bi Fo x area L / volume): 1, 2, 3
    EXPECT_NEAR(Series(SeriesShape::Slab, 1e-4).mean(100), std::exp(-1e-2), 1e-6);
    EXPECT_NEAR(Series(SeriesShape::Cylinder, 1e-4).mean(100), std::exp(-2e-2), 1e-6);
    EXPECT_NEAR(Series(SeriesShape::Sphere, 1e-4).mean(100), std::exp(-3e-2), 1e-6);
}

TEST(Series, FindsTheTimeOfATheta) {
    const Series series(SeriesShape::Slab, 2);
    EXPECT_NEAR(series.theta(series.fourierAt(0.25), 0), 0.25, 1e-9);
}

} // namespace
} // namespace piewright::thermal
