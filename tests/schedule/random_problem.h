// Random problems with every feature mixed.
#pragma once

#include "schedule/problem.h"

#include <cstdint>

namespace piewright::schedule {

struct Size {
    int activities = 5;
    Tick horizon = 12;
    int resources = 3;
    int workers = 3;
    Tick longest = 4; ///< duration
    int lags = 4;
    int strictness = 100; ///< percent of the usual chance of windows, absences and people wanted together
};

/// The same for the same arguments on every machine. No faultsIn.
[[nodiscard]] Problem randomProblem(std::uint64_t seed, const Size& size);

} // namespace piewright::schedule
