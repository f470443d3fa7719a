#include "pastry/tin.h"

#include "pastry/tins.h"

#include <gtest/gtest.h>
#include <numbers>

namespace piewright::pastry {
namespace {

using book::TinShape;
using std::numbers::pi;

constexpr int kSlices = 20'000;

TEST(BaseArea, OfARoundTaperedTinIsFloorWallAndRing) {
    // Floor pi 50^2 = 7853.98; wall pi (60 + 50) sqrt(10^2 + 25^2) = 9304.89; ring pi (65^2 - 60^2) = 1963.50 mm2.
    EXPECT_NEAR(baseArea(normalTin()) * 1e6, 7853.98 + 9304.89 + 1963.50, 0.02);
}

TEST(BaseArea, OfACylinderIsFloorAndUprightWall) {
    // pi 40^2 + 2 pi 40 x 30 = 5026.55 + 7539.82 mm2, no overhang.
    const book::Tin tin = roundTin(millimetres(80), millimetres(80), millimetres(30), {});
    EXPECT_NEAR(baseArea(tin) * 1e6, 5026.55 + 7539.82, 0.02);
}

TEST(BaseArea, OfACylinderIgnoresItsFloorMeasures) {
    book::Tin tin = roundTin(millimetres(80), millimetres(80), millimetres(30), {});
    tin.floorLength = tin.floorWidth = Length{};
    EXPECT_NEAR(baseArea(tin) * 1e6, 5026.55 + 7539.82, 0.02);
}

TEST(LidArea, OfARoundTinIsADiscToTheEndOfTheOverhang) {
    EXPECT_NEAR(lidArea(normalTin()) * 1e6, pi * 65 * 65, 1e-6); // pi 65^2
}

TEST(BaseArea, OfAnOvalWithEqualWaysIsThatOfARoundTin) {
    book::Tin tin = normalTin();
    tin.shape = TinShape::Oval;
    EXPECT_NEAR(baseArea(tin), baseArea(normalTin()), 1e-12);
    EXPECT_NEAR(lidArea(tin), lidArea(normalTin()), 1e-12);
    EXPECT_EQ(fillVolume(tin), fillVolume(normalTin()));
}

TEST(BaseArea, OfARectangleWhoseCornersMeetIsThatOfACylinder) {
    const book::Tin tin = longTin(TinShape::Rectangle, millimetres(80), millimetres(80), {}, millimetres(30),
                                  millimetres(6), millimetres(40));
    const book::Tin round = roundTin(millimetres(80), millimetres(80), millimetres(30), millimetres(6));
    EXPECT_NEAR(baseArea(tin), baseArea(round), 1e-12);
    EXPECT_NEAR(lidArea(tin), lidArea(round), 1e-12);
    EXPECT_EQ(fillVolume(tin), fillVolume(round));
}

TEST(BaseArea, OfAStraightRectangleWithSharpCorners) {
    // 200 x 100, 40 deep: floor 20000, walls 600 x 40 = 24000, overhang 600 x 5 + pi 5^2 = 3078.54 mm2.
    const book::Tin tin =
        longTin(TinShape::Rectangle, millimetres(200), millimetres(100), {}, millimetres(40), millimetres(5));
    EXPECT_NEAR(baseArea(tin) * 1e6, 20000 + 24000 + 3078.54, 0.01);
    EXPECT_NEAR(lidArea(tin) * 1e6, 20000 + 3078.54, 0.01);
}

TEST(LidArea, OfARectangleLosesItsRoundedCorners) {
    // 200 x 100 less (4 - pi) 20^2 = 343.36: 19656.64; edge 600 - (8 - 2 pi) 20 = 565.66; + 5 x 565.66 + 78.54.
    const book::Tin tin = longTin(TinShape::Rectangle, millimetres(200), millimetres(100), {}, millimetres(40),
                                  millimetres(5), millimetres(20));
    EXPECT_NEAR(lidArea(tin) * 1e6, 19656.64 + 5 * 565.664 + 78.54, 0.02);
}

TEST(LidArea, OfAnOvalWithOverhangMatchesSlicing) {
    // Area inside the curve that runs 6 mm outside an ellipse of 180 x 120, by the shoelace sum over its points.
    const double a = 0.090;
    const double b = 0.060;
    const double over = 0.006;
    double twice = 0;
    Point before;
    for (int i = 0; i <= kSlices; ++i) {
        const double angle = 2 * pi * i / kSlices;
        const double nx = std::cos(angle) / a; // outward normal of the ellipse
        const double ny = std::sin(angle) / b;
        const double size = std::hypot(nx, ny);
        const Point now{a * std::cos(angle) + over * nx / size, b * std::sin(angle) + over * ny / size, 0};
        if (i > 0) twice += before.x * now.y - now.x * before.y;
        before = now;
    }
    const book::Tin tin =
        longTin(TinShape::Oval, millimetres(180), millimetres(120), {}, millimetres(40), millimetres(6));
    EXPECT_NEAR(lidArea(tin) / (twice / 2), 1, 1e-6);
}

TEST(BaseArea, OfATaperedOvalIsNearTheSlopingWallCutIntoTriangles) {
    // The wall between the two ellipses in 40,000 flat triangles; the room's mean-perimeter wall is close, not exact.
    const book::Tin tin =
        longTin(TinShape::Oval, millimetres(180), millimetres(120), millimetres(8), millimetres(45), Length{});
    double wall = 0;
    for (int i = 0; i < kSlices; ++i) {
        const double from = static_cast<double>(i) / kSlices;
        const double to = static_cast<double>(i + 1) / kSlices;
        const Point topA = ellipsePoint(0.180, 0.120, from, 0.045);
        const Point topB = ellipsePoint(0.180, 0.120, to, 0.045);
        const Point lowA = ellipsePoint(0.164, 0.104, from, 0);
        const Point lowB = ellipsePoint(0.164, 0.104, to, 0);
        wall += triangle(topA, topB, lowA) + triangle(topB, lowA, lowB);
    }
    const double floor = pi / 4 * 0.164 * 0.104;
    EXPECT_NEAR(baseArea(tin) / (floor + wall), 1, 0.001);
}

TEST(FillVolume, OfARoundTaperedTinIsTheFrustums) {
    // pi h / 3 (R^2 + R r + r^2) = pi 25 / 3 (3600 + 3000 + 2500) = 238237 mm3.
    EXPECT_NEAR(inLitres(fillVolume(normalTin())), 0.238237, 1e-6);
}

TEST(FillVolume, OfACylinder) {
    // pi 40^2 x 30 = 150796 mm3.
    EXPECT_EQ(fillVolume(roundTin(millimetres(80), millimetres(80), millimetres(30), {})), microlitres(150'796));
}

TEST(FillVolume, OfTaperedLongTinsMatchesSlicing) {
    for (const TinShape shape : {TinShape::Oval, TinShape::Rectangle}) {
        const book::Tin tin = longTin(shape, millimetres(180), millimetres(120), millimetres(8), millimetres(45),
                                      millimetres(6), millimetres(15));
        double cubicMetres = 0;
        for (int i = 0; i < kSlices; ++i) {
            const double up = (i + 0.5) / kSlices;
            const double length = 0.164 + 0.016 * up;
            const double width = 0.104 + 0.016 * up;
            const double corners = (4 - pi) * 0.015 * 0.015;
            const double level = shape == TinShape::Oval ? pi / 4 * length * width : length * width - corners;
            cubicMetres += level * 0.045 / kSlices;
        }
        EXPECT_NEAR(inLitres(fillVolume(tin)) / (cubicMetres * 1e3), 1, 1e-5);
    }
}

} // namespace
} // namespace piewright::pastry
