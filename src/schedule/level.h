// How much of a cumulative resource is taken over time: a step function.
#pragma once

#include "schedule/problem.h"

#include <vector>

namespace piewright::schedule {

class Level {
  public:
    explicit Level(const Cumulative& cumulative);

    /// Earliest start >= from at which `amount` more has room for `duration`; kNever when there is none.
    [[nodiscard]] Tick nextFit(Tick from, Tick duration, int amount) const;
    void put(Tick start, Tick end, int amount) { add(start, end, amount); }
    void take(Tick start, Tick end, int amount) { add(start, end, -amount); }

  private:
    struct Step {
        Tick from;
        std::int64_t taken; ///< until the next step
    };

    void add(Tick start, Tick end, std::int64_t amount);
    std::size_t splitAt(Tick tick);
    [[nodiscard]] std::size_t stepAt(Tick tick) const;

    int capacity_;
    std::vector<Step> steps_; ///< in order; the first begins before all time
};

} // namespace piewright::schedule
