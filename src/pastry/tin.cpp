#include "pastry/tin.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace piewright::pastry {

namespace {

using std::numbers::pi;

/// A level cut through the tin, in metres.
struct Outline {
    book::TinShape shape;
    double length;
    double width;
    double corner;
};

bool round(book::TinShape shape) { return shape == book::TinShape::Frustum || shape == book::TinShape::Cylinder; }

Outline cut(const book::Tin& tin, double length, double width) {
    if (round(tin.shape)) return {tin.shape, length, length, 0};
    return {tin.shape, length, width, std::min(inMetres(tin.corner), std::min(length, width) / 2)};
}

Outline mouth(const book::Tin& tin) { return cut(tin, inMetres(tin.mouthLength), inMetres(tin.mouthWidth)); }
// A cylinder is its mouth all the way down, whatever the book says of its floor.
Outline floorOf(const book::Tin& tin) {
    if (tin.shape == book::TinShape::Cylinder) return mouth(tin);
    return cut(tin, inMetres(tin.floorLength), inMetres(tin.floorWidth));
}
Outline between(const book::Tin& tin, const Outline& a, const Outline& b) {
    return cut(tin, (a.length + b.length) / 2, (a.width + b.width) / 2);
}

double area(const Outline& o) {
    if (o.shape == book::TinShape::Rectangle) return o.length * o.width - (4 - pi) * o.corner * o.corner;
    return pi / 4 * o.length * o.width;
}

double perimeter(const Outline& o) {
    if (o.shape == book::TinShape::Rectangle) return 2 * (o.length + o.width) - (8 - 2 * pi) * o.corner;
    const double a = o.length / 2;
    const double b = o.width / 2;
    if (a + b <= 0) return 0;
    // Ramanujan 1914, second formula; exact for a circle, within 0.05 % for any ellipse, 1e-6 for a tin's.
    const double h = (a - b) * (a - b) / ((a + b) * (a + b));
    return pi * (a + b) * (1 + 3 * h / (10 + std::sqrt(4 - 3 * h)));
}

/// Band of even width around a convex outline (Steiner's formula): perimeter x width + pi width^2.
double band(const Outline& o, double width) { return perimeter(o) * width + pi * width * width; }

double wall(const Outline& top, const Outline& bottom, double depth) {
    const double inward = ((top.length - bottom.length) + (top.width - bottom.width)) / 4;
    return (perimeter(top) + perimeter(bottom)) / 2 * std::hypot(inward, depth);
}

Length lengthOf(double metres) { return Length::nearest(metres * 1e6); }

/// The blank has the outline of mouth and overhang, grown or shrunk to hold the piece.
Piece pieceOf(const book::Tin& tin, const book::Sheet& sheet, Density density, SquareMetres area) {
    assert(sheet.trim >= Share{} && sheet.trim < kWhole);
    Piece piece;
    piece.onPie = sheetWeight(area, sheet.thickness, density);
    const double kept = 1.0 - asFraction(sheet.trim);
    piece.divided = Mass::nearest(static_cast<double>(piece.onPie.raw()) / kept);
    piece.trim = piece.divided - piece.onPie;
    const double growth = std::sqrt(area / kept / lidArea(tin));
    const Outline top = mouth(tin);
    const double edges = 2 * inMetres(tin.overhang);
    piece.blankLength = lengthOf(growth * (top.length + edges));
    piece.blankWidth = lengthOf(growth * (top.width + edges));
    return piece;
}

} // namespace

SquareMetres baseArea(const book::Tin& tin) {
    const Outline top = mouth(tin);
    const Outline bottom = floorOf(tin);
    return area(bottom) + wall(top, bottom, inMetres(tin.depth)) + band(top, inMetres(tin.overhang));
}

SquareMetres lidArea(const book::Tin& tin) {
    const Outline top = mouth(tin);
    return area(top) + band(top, inMetres(tin.overhang));
}

Volume fillVolume(const book::Tin& tin) {
    const Outline top = mouth(tin);
    const Outline bottom = floorOf(tin);
    const double middle = area(between(tin, top, bottom));
    const double cubicMetres = inMetres(tin.depth) / 6 * (area(top) + 4 * middle + area(bottom));
    return Volume::nearest(cubicMetres * 1e9);
}

Mass sheetWeight(SquareMetres area, Length thickness, Density density) {
    return Mass::nearest(area * inMetres(thickness) * inKilogramsPerCubicMetre(density) * 1e6);
}

Piece basePiece(const book::Tin& tin, const book::Sheet& sheet, Density density) {
    return pieceOf(tin, sheet, density, baseArea(tin));
}

Piece lidPiece(const book::Tin& tin, const book::Sheet& sheet, Density density) {
    return pieceOf(tin, sheet, density, lidArea(tin));
}

Share springbackAfter(Share atOnce, Seconds relaxation, Seconds rest) {
    if (rest <= Seconds{0}) return atOnce;
    if (relaxation <= Seconds{0}) return Share{};
    return scaled(atOnce, std::exp(-static_cast<double>(rest.count()) / static_cast<double>(relaxation.count())));
}

Length gaugeFor(Length finished, Share springback) {
    assert(springback >= Share{});
    return scaled(finished, 1.0 / (1.0 + asFraction(springback)));
}

} // namespace piewright::pastry
