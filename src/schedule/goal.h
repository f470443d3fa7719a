// What kind of best a problem asks for.
#pragma once

#include "schedule/model.h"
#include "schedule/problem.h"

namespace piewright::schedule {

/// No cost anywhere: any schedule will do.
[[nodiscard]] bool isWithoutCosts(const Problem& problem);
/// The same limits, and any schedule will do.
[[nodiscard]] Problem withoutCosts(Problem problem);
/// The only cost is makespan().
[[nodiscard]] bool isMakespan(const Problem& problem);

/// What every schedule costs at least, as far as the rules on time alone tell: the longest path, where the makespan is
/// asked for. `model` is not hopeless. O(arcs).
[[nodiscard]] Cost leastCost(const Model& model);

} // namespace piewright::schedule
