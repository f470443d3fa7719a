// Who fills which place of an activity: a small bipartite matching.
#pragma once

#include "schedule/problem.h"

#include <optional>
#include <span>
#include <vector>

namespace piewright::schedule {

/// Workers for the needs in order (count each), or nothing when there is no way. `candidates` come in order of
/// preference: of all sets that fill every place, the first in that order is taken (greedy in a transversal matroid,
/// each step an augmenting path; Kuhn 1955). Assumes needs of count >= 1.
[[nodiscard]] std::optional<std::vector<WorkerIndex>> crewFor(const Problem& problem, std::span<const SkillNeed> needs,
                                                              std::span<const WorkerIndex> candidates);

} // namespace piewright::schedule
