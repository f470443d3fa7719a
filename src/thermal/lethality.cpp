#include "thermal/lethality.h"

#include "thermal/range.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

namespace piewright::thermal {

namespace {

struct Piece {
    double seconds; ///< its start
    double lasts;
    double from; ///< degC
    double to;
};

double zAt(const Lethality& by, double degC) { return degC > by.referenceDegC && by.zAbove ? *by.zAbove : by.z; }

/// (e^x - 1) / x, which is 1 at 0.
double growth(double x) { return std::abs(x) < 1e-12 ? 1 + x / 2 : std::expm1(x) / x; }

/// A piece that crosses neither the reference nor the least temperature that counts.
double exponentOver(const Lethality& by, const Piece& piece) {
    return (piece.to - piece.from) / zAt(by, (piece.from + piece.to) / 2) * std::numbers::ln10;
}

double startRate(const Lethality& by, const Piece& piece) {
    const double middle = (piece.from + piece.to) / 2;
    if (by.countsFrom && middle < *by.countsFrom) return 0;
    return std::pow(10, (piece.from - by.referenceDegC) / zAt(by, middle));
}

double counted(const Lethality& by, const Piece& piece) {
    const double rate = startRate(by, piece);
    return rate == 0 ? 0 : rate * piece.lasts * growth(exponentOver(by, piece));
}

/// Calls `take(piece)` for each stretch of a line that has one law, in order, until it says no.
template <class Take> void eachPiece(const Lethality& by, const Curve& curve, Take take) {
    const auto points = curve.points();
    for (std::size_t i = 1; i < points.size(); ++i) {
        const CurvePoint& a = points[i - 1];
        const CurvePoint& b = points[i];
        std::array<double, 4> shares{0, 1, 1, 1}; // of the line, where it is cut
        std::size_t cuts = 1;
        const auto cutAt = [&](double degC) {
            const double share = (degC - a.degC) / (b.degC - a.degC);
            if (share > 0 && share < 1) shares[cuts++] = share;
        };
        if (a.degC != b.degC) {
            if (by.zAbove) cutAt(by.referenceDegC);
            if (by.countsFrom) cutAt(*by.countsFrom);
            std::sort(shares.begin() + 1, shares.begin() + static_cast<std::ptrdiff_t>(cuts));
        }
        const double lasts = b.seconds - a.seconds;
        const double rise = b.degC - a.degC;
        for (std::size_t piece = 0; piece < cuts; ++piece) {
            const double s0 = shares[piece];
            const double s1 = piece + 1 == cuts ? 1 : shares[piece + 1];
            if (!take(Piece{a.seconds + s0 * lasts, (s1 - s0) * lasts, a.degC + s0 * rise, a.degC + s1 * rise})) return;
        }
    }
}

} // namespace

Result<Lethality> checked(const Lethality& asked) {
    if (!within(asked.referenceDegC, 0, 150))
        return Problems::one(Fault::Input, "a reference of " + std::to_string(asked.referenceDegC) + " degC",
                             "0 to 150 degC");
    for (const double z : {asked.z, asked.zAbove.value_or(asked.z)})
        if (!within(z, 1, 50)) return Problems::one(Fault::Input, "a z of " + std::to_string(z) + " K", "1 to 50 K");
    if (asked.countsFrom && !std::isfinite(*asked.countsFrom))
        return Problems::one(Fault::Input, "a least temperature that is no number", "degC");
    return asked;
}

double lethalRate(const Lethality& by, double degC) {
    if (by.countsFrom && degC < *by.countsFrom) return 0;
    return std::pow(10, (degC - by.referenceDegC) / zAt(by, degC));
}

double equivalentTime(const Lethality& by, double degC, double seconds) {
    const double rate = lethalRate(by, degC);
    return rate > 0 ? seconds / rate : std::numeric_limits<double>::infinity();
}

double accumulated(const Lethality& by, const Curve& curve) {
    double sum = 0;
    eachPiece(by, curve, [&](const Piece& piece) {
        sum += counted(by, piece);
        return true;
    });
    return sum;
}

std::optional<double> timeToReach(const Lethality& by, const Curve& curve, double seconds) {
    if (seconds <= 0) return curve.points().front().seconds;
    std::optional<double> reached;
    double sum = 0;
    eachPiece(by, curve, [&](const Piece& piece) {
        const double adds = counted(by, piece);
        if (sum + adds < seconds) return sum += adds, true;
        // rate (e^(c t) - 1) / c = wanted, with c the exponent over one second
        const double wanted = (seconds - sum) / startRate(by, piece);
        const double c = exponentOver(by, piece) / piece.lasts;
        const double after = std::abs(c * wanted) < 1e-12 ? wanted : std::log1p(c * wanted) / c;
        reached = piece.seconds + std::min(after, piece.lasts);
        return false;
    });
    return reached;
}

double zBetween(double degC1, double time1, double degC2, double time2) {
    return (degC2 - degC1) / std::log10(time1 / time2);
}

} // namespace piewright::thermal
