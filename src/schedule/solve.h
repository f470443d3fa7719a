// Finds a schedule.
#pragma once

#include "schedule/problem.h"

#include <cstdint>
#include <functional>
#include <optional>

namespace piewright::schedule {

enum class Status {
    Feasible,   ///< a schedule was found; it keeps every limit
    Infeasible, ///< proved: there is none, and `clash` names limits that cannot be kept together
    OutOfWork   ///< none was found within the work allowed; `clash` names the limits that stood in the way most
};

struct Clash {
    std::vector<std::string> limits; ///< in the user's words, a small set
    bool proved = false;             ///< these limits alone admit no schedule
};

struct Options {
    std::uint64_t seed = 1;
    std::uint64_t work = 2'000'000; ///< placements tried; a count, so that the answer does not depend on the machine
};

struct Answer {
    Status status = Status::OutOfWork;
    std::optional<Schedule> schedule; ///< with Feasible
    Clash clash;                      ///< otherwise
    std::uint64_t work = 0;           ///< placements tried
};

/// Same problem and options, same answer. `problem` must have no faultsIn.
[[nodiscard]] Answer solve(const Problem& problem, const Options& options);

} // namespace piewright::schedule
