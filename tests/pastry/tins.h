// Tins that the tests of this room share, and shapes worked out by slicing, with no formula in common with the room's
// own.
#pragma once

#include "book/good.h"

#include <cmath>
#include <numbers>

namespace piewright::pastry {

inline book::Tin roundTin(Length mouth, Length floor, Length depth, Length overhang) {
    book::Tin tin;
    tin.shape = mouth == floor ? book::TinShape::Cylinder : book::TinShape::Frustum;
    tin.mouthLength = tin.mouthWidth = mouth;
    tin.floorLength = tin.floorWidth = floor;
    tin.depth = depth;
    tin.overhang = overhang;
    return tin;
}

/// The tin of the outside cases: mouth 120 mm, floor 100 mm, 25 mm deep, 5 mm over the edge.
inline book::Tin normalTin() { return roundTin(millimetres(120), millimetres(100), millimetres(25), millimetres(5)); }

inline book::Tin longTin(book::TinShape shape, Length length, Length width, Length inward, Length depth,
                         Length overhang, Length corner = {}) {
    book::Tin tin;
    tin.shape = shape;
    tin.mouthLength = length;
    tin.mouthWidth = width;
    tin.floorLength = length - inward * 2;
    tin.floorWidth = width - inward * 2;
    tin.depth = depth;
    tin.overhang = overhang;
    tin.corner = corner;
    return tin;
}

struct Point {
    double x = 0;
    double y = 0;
    double z = 0;
};

/// A point of the edge of an ellipse of full axes `length` and `width`.
inline Point ellipsePoint(double length, double width, double turn, double z) {
    const double angle = 2 * std::numbers::pi * turn;
    return {length / 2 * std::cos(angle), width / 2 * std::sin(angle), z};
}

inline double apart(const Point& a, const Point& b) { return std::hypot(a.x - b.x, a.y - b.y, a.z - b.z); }

inline double triangle(const Point& a, const Point& b, const Point& c) { // Heron
    const double p = apart(a, b);
    const double q = apart(b, c);
    const double r = apart(c, a);
    const double s = (p + q + r) / 2;
    return std::sqrt(std::max(0.0, s * (s - p) * (s - q) * (s - r)));
}

} // namespace piewright::pastry
