// Time-table propagation of a cumulative resource whose tasks may last longer or shorter: what surely runs at a time
// leaves the rest of the capacity to the others. For tasks that pause; see timetable.h for those of fixed length.
#pragma once

#include "learn/solver.h"
#include "schedule/compiled_time.h"
#include "schedule/timetable.h"

#include <vector>

namespace piewright::schedule {

/// From `start` to `end`, at least one tick.
struct SpanTask {
    Time start, end;
    int demand = 0;
    learn::Literal present = learn::kTrue;
};

class SpanTable final : public learn::Propagator {
  public:
    /// Propagates only where `active` holds.
    static void post(learn::Solver& solver, std::vector<SpanTask> tasks, std::vector<Step> capacity,
                     learn::Literal active);

    SpanTable(std::vector<SpanTask> tasks, std::vector<Step> capacity, learn::Literal active)
        : tasks_(std::move(tasks)), capacity_(std::move(capacity)), active_(active) {}
    /// O(n^2) and capacity steps.
    bool propagate(learn::Solver& solver) override;

  private:
    [[nodiscard]] bool runsAt(const learn::Solver& solver, std::size_t index, Tick time) const;
    /// Premises for: the others take more than `spare` at `time`. False: they do not.
    bool cover(const learn::Solver& solver, std::size_t without, Tick time, std::int64_t spare);
    bool push(learn::Solver& solver, std::size_t index, Tick from, Tick to, std::int64_t spare);

    std::vector<SpanTask> tasks_;
    std::vector<Step> capacity_;
    learn::Literal active_;
    std::vector<Tick> times_;
    std::vector<learn::Literal> premises_;
};

} // namespace piewright::schedule
