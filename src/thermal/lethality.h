// What a temperature curve at the slowest point counts for, as time at a reference temperature.
//
// CAUTION: an estimate to plan with. It never replaces a probe reading and never makes food safe: follow the local food
// authority, the house's own food-safety plan and a competent person. Which reference temperature, z and target apply
// is the rule book's to say; figures of different rule books must not be mixed.
#pragma once

#include "thermal/curve.h"

#include <optional>

namespace piewright::thermal {

/// Every z kelvin more count ten times as much: rate = 10^((T - reference) / z).
struct Lethality {
    double referenceDegC = 70;
    double z = 7.5; ///< K, above 0
    /// Another z above the reference, as for non-proteolytic C. botulinum (9 below 90 degC, 10 above).
    std::optional<double> zAbove;
    /// Below this nothing counts.
    std::optional<double> countsFrom;
};

/// Problems: a reference outside 0 to 150 degC, a z outside 1 to 50 K.
Result<Lethality> checked(const Lethality& asked);

/// Seconds at the reference that one second at `degC` counts for.
[[nodiscard]] double lethalRate(const Lethality& by, double degC);

/// Seconds at `degC` that count as `seconds` at the reference: infinite where nothing counts.
[[nodiscard]] double equivalentTime(const Lethality& by, double degC, double seconds);

/// Seconds at the reference that the whole curve counts for: exact for a piecewise-linear temperature, as each piece
/// has a closed integral, dt (rate1 - rate0) / ln(rate1 / rate0). O(points).
[[nodiscard]] double accumulated(const Lethality& by, const Curve& curve);

/// When the curve has counted `seconds`: exact as above; nothing if it never does.
[[nodiscard]] std::optional<double> timeToReach(const Lethality& by, const Curve& curve, double seconds);

/// z in K through two times of equal effect; the two temperatures and the two times differ. From two points only:
/// never carry it past them.
[[nodiscard]] double zBetween(double degC1, double time1, double degC2, double time2);

} // namespace piewright::thermal
