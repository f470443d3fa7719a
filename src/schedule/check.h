// The independent checker: does a schedule keep every limit of its problem? It shares nothing with the search but the
// problem's own types, and looks at each limit in the most literal way.
#pragma once

#include "schedule/problem.h"

#include <string>
#include <vector>

namespace piewright::schedule {

enum class Limit {
    Shape,
    Release,
    Due,
    Horizon,
    Lag,
    Capacity, ///< of a cumulative, a machine or a load
    Setup,
    Away,
    Presence,
    Skill,
    DoubleBooked,
    Pause, ///< starts within one
    Level, ///< of a reservoir
    Stay,
    Implication
};

struct Violation {
    Limit limit{};
    std::vector<ActivityIndex> activities;
    std::string what; ///< one sentence for people, with both numbers
};

/// Every breach. Empty: the schedule keeps all limits. Where the shape is wrong (a missing activity, a mode or person
/// that is not there, an end that is not start + duration and pauses) only that is told. `problem` must have no
/// faultsIn. O(n^2) at worst.
[[nodiscard]] std::vector<Violation> check(const Problem& problem, const Schedule& schedule);

} // namespace piewright::schedule
