// A part of faultsIn.
#pragma once

#include "schedule/problem.h"

#include <string>
#include <vector>

namespace piewright::schedule {

/// What is wrong with `problem.costs`, and with all costs together; the rest of the problem has no faults.
[[nodiscard]] std::vector<std::string> faultsInCosts(const Problem& problem);

} // namespace piewright::schedule
