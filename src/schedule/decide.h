// One run of all the engine's means on a problem.
#pragma once

#include "schedule/member.h"
#include "schedule/model.h"
#include "schedule/solve.h"

namespace piewright::schedule {

struct Decision {
    Status status = Status::OutOfTime;
    /// With Infeasible, when the rules on time alone say so: their reasons, in order.
    std::optional<std::vector<std::string>> loop;
    std::vector<std::uint64_t> failures; ///< with OutOfTime: how often each activity found no place
    std::uint64_t work = 0;
};

/// Begins from what `standing` knows and leaves there what has been found. `broken`: see lanes.h.
[[nodiscard]] Decision decide(const Model& model, const Options& options, Standing& standing,
                              const Schedule* broken = nullptr);

} // namespace piewright::schedule
