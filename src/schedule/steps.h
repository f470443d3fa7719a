// The kernel's work in the steps that members count, each of the order of a microsecond.
#pragma once

#include "schedule/problem.h"

#include <cstdint>
#include <limits>

namespace piewright::schedule {

constexpr std::uint64_t kWorkInStep = 5; ///< measured

[[nodiscard]] constexpr std::uint64_t stepsIn(std::uint64_t work) { return work / kWorkInStep; }
[[nodiscard]] constexpr std::uint64_t workOf(std::uint64_t steps) {
    return steps < std::numeric_limits<std::uint64_t>::max() / kWorkInStep ? steps * kWorkInStep
                                                                           : std::numeric_limits<std::uint64_t>::max();
}
/// What it takes to state a problem to the kernel: distances and pairs.
[[nodiscard]] inline std::uint64_t stepsToState(const Problem& problem) {
    const std::uint64_t n = problem.activities.size();
    return 500 + n * n * n / 2000;
}

} // namespace piewright::schedule
