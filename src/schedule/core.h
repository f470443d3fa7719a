// Which limits of a problem without a schedule cannot be kept together.
#pragma once

#include "schedule/prover.h"
#include "schedule/solve.h"

namespace piewright::schedule {

/// A small set of named limits that admit no schedule: the final conflict of a refutation with every limit assumed
/// (Junker 2004, AAAI, on the use of such cores), then each let go in turn for as long as the work lasts, so that with
/// enough of it none can be spared. `proved` false, and no limits, when the problem could not be refuted within
/// `limits`. What has no name is taken as given. `problem` must have no faultsIn.
[[nodiscard]] Clash findClash(const Problem& problem, const ProverLimits& limits);

} // namespace piewright::schedule
