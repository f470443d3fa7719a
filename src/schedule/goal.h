// What kind of best a problem asks for.
#pragma once

#include "schedule/problem.h"

namespace piewright::schedule {

/// No cost anywhere: any schedule will do.
[[nodiscard]] bool isWithoutCosts(const Problem& problem);
/// The same limits, and any schedule will do.
[[nodiscard]] Problem withoutCosts(Problem problem);
/// The only cost is makespan().
[[nodiscard]] bool isMakespan(const Problem& problem);

} // namespace piewright::schedule
