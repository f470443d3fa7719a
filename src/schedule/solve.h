// Finds a schedule, a better one, and how good it can be.
#pragma once

#include "schedule/problem.h"

#include <atomic>
#include <cstdint>
#include <functional>
#include <optional>

namespace piewright::schedule {

enum class Status {
    Proven,     ///< the schedule keeps every limit, and none costs less
    Feasible,   ///< the schedule keeps every limit; the best one costs `bound` at least
    Infeasible, ///< proved: there is none, and `clash` names limits that cannot be kept together
    OutOfTime   ///< none was found before the end; `clash` names the limits that stood in the way most
};

struct Clash {
    std::vector<std::string> limits; ///< in the user's words, a small set
    bool proved = false;             ///< these limits alone admit no schedule
};

/// A better schedule than any before.
struct Improvement {
    const Schedule& schedule;
    Cost value = 0;
};

struct Options {
    std::uint64_t seed = 1;
    /// Steps that may be taken in all; a count, so that the answer does not depend on the machine. A step is of the
    /// order of a microsecond.
    std::uint64_t work = 2'000'000;
    int threads = 1; ///< 1 or 2, with the same answer
    /// A schedule to begin from, of the same activities; it may break limits. Not looked at after the call.
    const Schedule* begin = nullptr;
    /// Told of each improvement as it is found; by one thread at a time, not always the caller's.
    std::function<void(const Improvement&)> improved = {};
    /// Once it is true, the search ends within milliseconds with the best it has.
    const std::atomic<bool>* cancelled = nullptr;
};

struct Answer {
    Status status = Status::OutOfTime;
    std::optional<Schedule> schedule; ///< with Proven and Feasible
    Cost value = 0;                   ///< of the schedule
    Cost bound = -kMostCost;          ///< proved: no schedule costs less; value - bound is the gap
    Clash clash;                      ///< with Infeasible and OutOfTime
    std::uint64_t work = 0;           ///< steps taken
};

/// Same problem and options, same answer, unless cancelled. `problem` must have no faultsIn.
[[nodiscard]] Answer solve(const Problem& problem, const Options& options);

} // namespace piewright::schedule
