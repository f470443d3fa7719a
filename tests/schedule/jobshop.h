// The job shops of Fisher and Thompson, "Probabilistic learning combinations of local job-shop scheduling rules", in:
// Muth and Thompson (eds.), Industrial Scheduling, Prentice-Hall 1963: 6x6 (optimum 55) and 10x10 (optimum 930, proved
// by Carlier and Pinson 1989, Management Science 35).
#pragma once

#include "schedule/problem.h"

#include <utility>
#include <vector>

namespace piewright::schedule {

/// By job: machine and duration of each operation in order.
using JobShop = std::vector<std::vector<std::pair<int, Tick>>>;

[[nodiscard]] const JobShop& ft06();
[[nodiscard]] const JobShop& ft10();

[[nodiscard]] Problem asProblem(const JobShop& shop, Tick horizon);
/// The larger of the longest job and the busiest machine: no schedule can be shorter.
[[nodiscard]] Tick simpleBound(const JobShop& shop);

} // namespace piewright::schedule
