// What a schedule costs, looked at in the most literal way. Shares nothing with the search.
#pragma once

#include "schedule/problem.h"

namespace piewright::schedule {

[[nodiscard]] Cost valueOf(const Curve& curve, Tick t);

/// The sum of everything that `problem.costs`, its modes, absences and setups ask for. `schedule` keeps the problem's
/// limits. O(n log n) and the spans looked at.
[[nodiscard]] Cost costOf(const Problem& problem, const Schedule& schedule);

} // namespace piewright::schedule
