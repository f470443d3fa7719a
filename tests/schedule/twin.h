// The naive twin of the engine: tries every mode, every start and every crew of every activity. For tiny problems only.
// Shares no code with the engine nor with the checker.
#pragma once

#include "schedule/problem.h"

#include <cstdint>
#include <optional>

namespace piewright::schedule {

struct TwinAnswer {
    bool finished = false; ///< false: gave up after `limit` trials
    std::optional<Schedule> schedule;
    Cost value = 0; ///< of the schedule, with twinBest
};

/// Problem without faults. Trials are counted, not timed.
[[nodiscard]] TwinAnswer twinSolve(const Problem& problem, std::uint64_t limit);

/// Whether a schedule of the right shape (its ends apart) keeps every limit.
[[nodiscard]] bool twinKeeps(const Problem& problem, const Schedule& schedule);

/// One that costs least, of all there are.
[[nodiscard]] TwinAnswer twinBest(const Problem& problem, std::uint64_t limit);

} // namespace piewright::schedule
