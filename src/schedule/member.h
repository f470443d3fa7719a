// What the searches that run side by side have in common.
#pragma once

#include "schedule/problem.h"

#include <atomic>
#include <cstdint>
#include <functional>
#include <limits>
#include <optional>

namespace piewright::schedule {

/// What is known of a problem. Told to a member before its turn, and told by it after.
struct Standing {
    std::optional<Schedule> schedule; ///< keeps every limit
    Cost value = std::numeric_limits<Cost>::max();
    Cost bound = std::numeric_limits<Cost>::min(); ///< no schedule costs less
    bool isHopeless = false;                       ///< proved: there is no schedule

    [[nodiscard]] bool isSettled() const { return isHopeless || (schedule && value <= bound); }
};

struct Turn {
    std::uint64_t work = 0; ///< steps it may take, each of the order of a microsecond; a little more does no harm
    const std::atomic<bool>* cancelled = nullptr;          ///< to be looked at every few milliseconds
    std::function<void(const Schedule&, Cost)> found = {}; ///< to be called at once with each better schedule
};

/// A search that goes on turn by turn. The same turns and standings give the same outcome, unless cancelled. Two
/// members may run at the same time; they share nothing but the problem.
class Member {
  public:
    Member() = default;
    Member(const Member&) = delete;
    Member& operator=(const Member&) = delete;
    Member(Member&&) = delete;
    Member& operator=(Member&&) = delete;
    virtual ~Member() = default;

    /// Takes up what is new in `standing`, works, and writes what it found into it. Returns the steps taken; 0 when it
    /// has nothing more to try.
    virtual std::uint64_t run(const Turn& turn, Standing& standing) = 0;
};

} // namespace piewright::schedule
