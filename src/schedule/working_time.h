// When an activity that pauses ends: its end as a function of its start that never falls.
#pragma once

#include "schedule/problem.h"

#include <vector>

namespace piewright::schedule {

/// Ticks outside `pauses` count. Times from 0 on. O(pauses) each.
class WorkingTime {
  public:
    WorkingTime() = default;
    /// `duration` at least 1 where it is asked for ends; `pauses` in order and apart.
    WorkingTime(Tick duration, std::vector<Span> pauses) : duration_(duration), pauses_(std::move(pauses)) {}

    /// First time from `t` on at which it may start.
    [[nodiscard]] Tick next(Tick t) const;
    /// Last time up to `t` at which it may start; -1 where there is none.
    [[nodiscard]] Tick previous(Tick t) const;
    /// Of one that starts at `start`, not within a pause; kNever at most.
    [[nodiscard]] Tick endOf(Tick start) const;
    /// Latest start with an end by `end`; -1 where there is none.
    [[nodiscard]] Tick latestStart(Tick end) const;
    /// Earliest start with an end at `end` or later.
    [[nodiscard]] Tick earliestStart(Tick end) const;

  private:
    [[nodiscard]] std::int64_t ticksBefore(Tick t) const; ///< from 0
    [[nodiscard]] Tick tickAt(std::int64_t index) const;  ///< from 0

    Tick duration_ = 1;
    std::vector<Span> pauses_;
};

} // namespace piewright::schedule
