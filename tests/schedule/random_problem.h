// Random problems with every feature mixed.
#pragma once

#include "schedule/problem.h"

#include <cstdint>

namespace piewright::schedule {

/// Features beyond modes, lags, cumulatives, machines with setups and people.
enum Feature : unsigned {
    kLoads = 1,
    kReservoirs = 2,
    kPauses = 4,
    kOptional = 8,
    kStays = 16,
    kImplications = 32,
    kTimeCosts = 64,
    kExtentCosts = 128,
    kLoadCosts = 256,
    kPeopleCosts = 512, ///< work and hand-overs
    kDistanceCosts = 1024,
    kModeCosts = 2048, ///< and of absences
    kSetupCosts = 4096,
    kEveryLimit = 63,
    kEveryFeature = 8191
};

struct Size {
    int activities = 5;
    Tick horizon = 12;
    int resources = 3;
    int workers = 3;
    Tick longest = 4; ///< duration
    int lags = 4;
    int strictness = 100;  ///< percent of the usual chance of windows, absences and people wanted together
    unsigned features = 0; ///< of Feature, or'ed; what is not asked for changes nothing of the rest
};

/// The same for the same arguments on every machine. No faultsIn. Without a feature of cost: no costs.
[[nodiscard]] Problem randomProblem(std::uint64_t seed, const Size& size);

} // namespace piewright::schedule
