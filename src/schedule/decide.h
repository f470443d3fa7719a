// Whether a problem has a schedule: all the engine's means, one after the other, the cheap ones first.
#pragma once

#include "schedule/solve.h"

namespace piewright::schedule {

struct Decision {
    Status status = Status::OutOfTime;
    std::optional<Schedule> schedule;
    /// With Infeasible, when the rules on time alone say so: their reasons, in order.
    std::optional<std::vector<std::string>> loop;
    std::vector<std::uint64_t> failures; ///< with OutOfTime: how often each activity found no place
    std::uint64_t work = 0;
};

[[nodiscard]] Decision decide(const Problem& problem, const Options& options);

} // namespace piewright::schedule
