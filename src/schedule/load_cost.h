// The cost of using more than so much of a resource, on the learning kernel.
#pragma once

#include "learn/solver.h"
#include "schedule/span_table.h"

#include <vector>

namespace piewright::schedule {

/// cost >= perTick for each tick within `span` and each unit that the tasks use beyond `above`. By what surely runs.
class OverCost final : public learn::Propagator {
  public:
    struct Over {
        Span span;
        std::int64_t above = 0;
        Cost perTick = 0;
    };
    static void post(learn::Solver& solver, std::vector<SpanTask> tasks, Over over, learn::Variable cost);

    OverCost(std::vector<SpanTask> tasks, Over over, learn::Variable cost)
        : tasks_(std::move(tasks)), over_(over), cost_(cost) {}
    /// O(n log n).
    bool propagate(learn::Solver& solver) override;

  private:
    /// When a task surely runs, within the span.
    [[nodiscard]] Span partOf(const learn::Solver& solver, const SpanTask& task) const;

    std::vector<SpanTask> tasks_;
    Over over_;
    learn::Variable cost_;
    struct Event {
        Tick time;
        std::int64_t change;
    };
    std::vector<Event> events_;
    std::vector<Span> overs_; ///< where more than `above` is used
    std::vector<learn::Literal> premises_;
};

} // namespace piewright::schedule
