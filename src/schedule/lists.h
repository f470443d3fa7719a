// Heuristic search for problems that are like a project: fast, never a proof.
#pragma once

#include "schedule/member.h"

#include <memory>

namespace piewright::schedule {

/// Nothing where asProject (project.h) does not take the problem. The value of its schedules is what costOf says, where
/// the costs are those of makespan(); with no costs at all, the latest end. `problem` must outlive it.
[[nodiscard]] std::unique_ptr<Member> listSearch(const Problem& problem, std::uint64_t seed);

} // namespace piewright::schedule
