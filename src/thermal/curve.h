// A temperature over time as straight lines between points: what a probe wrote, or what a prediction gives.
#pragma once

#include "finding/result.h"

#include <optional>
#include <span>
#include <vector>

namespace piewright::thermal {

struct CurvePoint {
    double seconds = 0;
    double degC = 0;
};

class Curve {
  public:
    /// Problems: no point, a time that does not follow the one before, no number, a temperature outside -100 to 600
    /// degC, more than a million points.
    static Result<Curve> of(std::vector<CurvePoint> points);
    /// The same temperature for ever.
    static Curve steady(double degC);

    [[nodiscard]] std::span<const CurvePoint> points() const { return points_; }
    /// degC; before the first point its temperature, after the last point its.
    [[nodiscard]] double at(double seconds) const;
    /// The first time at or above (below) a temperature; nothing if it never is.
    [[nodiscard]] std::optional<double> firstAtOrAbove(double degC) const;
    [[nodiscard]] std::optional<double> firstAtOrBelow(double degC) const;
    /// The time from which it stays at or below to its end; nothing if it ends above. So a curve that warms again is
    /// not taken for cooled.
    [[nodiscard]] std::optional<double> staysAtOrBelowFrom(double degC) const;

  private:
    explicit Curve(std::vector<CurvePoint> points) : points_(std::move(points)) {}
    std::vector<CurvePoint> points_;
};

} // namespace piewright::thermal
