#include "thermal/curve.h"

#include "thermal/range.h"

#include <algorithm>
#include <cmath>

namespace piewright::thermal {

namespace {

constexpr std::size_t kMostPoints = 1'000'000;

double crossing(const CurvePoint& a, const CurvePoint& b, double degC) {
    return a.seconds + (b.seconds - a.seconds) * (degC - a.degC) / (b.degC - a.degC);
}

} // namespace

Result<Curve> Curve::of(std::vector<CurvePoint> points) {
    if (points.empty())
        return Problems::one(Fault::Input, "a curve without a point", "at least one time and temperature");
    if (points.size() > kMostPoints)
        return Problems::one(Fault::Input, std::to_string(points.size()) + " points", "at most a million");
    for (std::size_t i = 0; i < points.size(); ++i) {
        const CurvePoint& point = points[i];
        const std::string which = "point " + std::to_string(i + 1);
        if (!within(point.degC, -100, 600))
            return Problems::one(Fault::Input, which + " has " + std::to_string(point.degC) + " degC",
                                 "-100 to 600 degC");
        if (!std::isfinite(point.seconds) || (i > 0 && !(point.seconds > points[i - 1].seconds)))
            return Problems::one(Fault::Input, which + " is at " + std::to_string(point.seconds) + " s",
                                 "a time after the point before it");
    }
    return Curve(std::move(points));
}

Curve Curve::steady(double degC) { return Curve({{0, degC}}); }

double Curve::at(double seconds) const {
    const auto after = std::upper_bound(points_.begin(), points_.end(), seconds,
                                        [](double s, const CurvePoint& point) { return s < point.seconds; });
    if (after == points_.begin()) return points_.front().degC;
    if (after == points_.end()) return points_.back().degC;
    const CurvePoint& a = *(after - 1);
    return a.degC + (after->degC - a.degC) * (seconds - a.seconds) / (after->seconds - a.seconds);
}

std::optional<double> Curve::firstAtOrAbove(double degC) const {
    if (points_.front().degC >= degC) return points_.front().seconds;
    for (std::size_t i = 1; i < points_.size(); ++i)
        if (points_[i].degC >= degC) return crossing(points_[i - 1], points_[i], degC);
    return std::nullopt;
}

std::optional<double> Curve::firstAtOrBelow(double degC) const {
    if (points_.front().degC <= degC) return points_.front().seconds;
    for (std::size_t i = 1; i < points_.size(); ++i)
        if (points_[i].degC <= degC) return crossing(points_[i - 1], points_[i], degC);
    return std::nullopt;
}

std::optional<double> Curve::staysAtOrBelowFrom(double degC) const {
    std::size_t first = points_.size();
    while (first > 0 && points_[first - 1].degC <= degC) --first;
    if (first == points_.size()) return std::nullopt;
    return first == 0 ? points_.front().seconds : crossing(points_[first - 1], points_[first], degC);
}

} // namespace piewright::thermal
