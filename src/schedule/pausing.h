// The end of an activity that pauses follows its start, on the learning kernel.
#pragma once

#include "learn/solver.h"
#include "schedule/working_time.h"

namespace piewright::schedule {

/// end = WorkingTime::endOf(start), where both count (two variables optional by the same literal, or neither).
/// O(pauses).
class Pausing final : public learn::Propagator {
  public:
    static void post(learn::Solver& solver, learn::Variable start, learn::Variable end, WorkingTime time);

    Pausing(learn::Variable start, learn::Variable end, WorkingTime time)
        : start_(start), end_(end), time_(std::move(time)) {}
    bool propagate(learn::Solver& solver) override;
    void explain(const learn::Solver& solver, learn::Literal consequence, std::uint32_t data, std::int32_t position,
                 std::vector<learn::Literal>& premises) override;

  private:
    learn::Variable start_, end_;
    WorkingTime time_;
    std::int32_t id_ = 0;
};

} // namespace piewright::schedule
