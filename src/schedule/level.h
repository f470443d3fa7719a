// How much of a cumulative resource is taken over time: a step function.
#pragma once

#include "schedule/problem.h"
#include "schedule/stretch.h"

#include <vector>

namespace piewright::schedule {

class Level {
  public:
    explicit Level(const Cumulative& cumulative);

    /// Earliest start >= from at which `amount` more has room; kNever when there is none.
    [[nodiscard]] Tick nextFit(Tick from, const Stretch& stretch, int amount) const;
    void put(Tick start, Tick end, int amount) { add(start, end, amount); }
    void take(Tick start, Tick end, int amount) { add(start, end, -amount); }

    /// What is taken over [from, to): visit(from, to, taken) for each step of it, in order.
    template <class Visit> void forSteps(Tick from, Tick to, Visit visit) const {
        for (std::size_t i = stepAt(from); from < to; ++i) {
            const Tick end = i + 1 < steps_.size() ? std::min(to, steps_[i + 1].from) : to;
            visit(from, end, steps_[i].taken);
            from = end;
        }
    }

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
