// Transient conduction: how the temperature of a body runs on in its surroundings.
//
// CAUTION: an estimate to plan with. It never replaces a probe reading and never makes food safe: follow the local food
// authority, the house's own food-safety plan and a competent person.
#pragma once

#include "finding/result.h"
#include "thermal/boundary.h"
#include "thermal/curve.h"
#include "thermal/grid.h"
#include "thermal/material.h"

#include <optional>
#include <vector>

namespace piewright::thermal {

struct Body {
    Grid grid;
    std::vector<Material> materials; ///< by the number its layers give
    std::vector<Boundary> sides;     ///< by the number its shape gives
};

struct Stretch {
    double seconds = 3600;    ///< how long
    double tolerance = 0.005; ///< K, of each step, root mean square over the volume; 0.0001 to 1
    double every = 15;        ///< s between the points of the curves
    std::vector<Probe> probes;
    std::optional<double> untilColdest; ///< degC: stop once the coldest cell is at or above it
    std::optional<double> untilHottest; ///< degC: stop once the hottest cell is at or below it
    int mostSteps = 200'000;
};

struct History {
    Curve coldest = Curve::steady(0); ///< of all cells, at each time
    Curve hottest = Curve::steady(0);
    std::vector<Curve> probes;
    std::vector<Curve> surfaces; ///< of each side, the mean over its area
    std::vector<double> heatIn;  ///< J into the whole body since the start, at each point of the curves
    double heat = 0;             ///< J that came in through all sides
    double gained = 0;           ///< J that the cells hold more, with what their steam carried; equals `heat`
    double boiled = 0;           ///< kg of steam from within, behind a drying front
    double evaporated = 0;       ///< kg from moist surfaces below boiling
    int steps = 0;
    int refusedSteps = 0;
};

/// Source: finite volumes; linearly implicit second-order Rosenbrock steps (Verwer, Spee, Blom and Hundsdorfer 1999)
/// on the heat content, factored by direction; the step follows the third derivative of what was computed. See
/// docs/heat.md and docs/decisions. O(cells) a step. Problems: a material or side that is not there or out of range, a
/// run out of range, more steps than allowed.
Result<History> conduct(const Body& body, const Stretch& run);

} // namespace piewright::thermal
