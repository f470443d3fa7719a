// The cost of a time by a curve, on the learning kernel.
#pragma once

#include "learn/solver.h"
#include "schedule/problem.h"

#include <optional>

namespace piewright::schedule {

/// First or last whole t from `from` to `to` with a value of at most `most`. O(pieces).
[[nodiscard]] std::optional<Tick> firstAtMost(const Curve& curve, Tick from, Tick to, Cost most);
[[nodiscard]] std::optional<Tick> lastAtMost(const Curve& curve, Tick from, Tick to, Cost most);
/// Least value from `from` to `to`, from <= to.
[[nodiscard]] Cost leastOf(const Curve& curve, Tick from, Tick to);
[[nodiscard]] Cost mostOf(const Curve& curve, Tick from, Tick to);
[[nodiscard]] bool neverFalls(const Curve& curve, Tick from, Tick to);

/// cost >= curve(x) where `present` holds, the literal that x is optional by (or kTrue). Bounds of x only: it needs x
/// fixed in the end.
class CurveCost final : public learn::Propagator {
  public:
    static void post(learn::Solver& solver, learn::Variable x, learn::Variable cost, Curve curve,
                     learn::Literal present);

    CurveCost(learn::Variable x, learn::Variable cost, Curve curve, learn::Literal present)
        : x_(x), cost_(cost), curve_(std::move(curve)), present_(present) {}
    bool propagate(learn::Solver& solver) override;
    void explain(const learn::Solver& solver, learn::Literal consequence, std::uint32_t data, std::int32_t position,
                 std::vector<learn::Literal>& premises) override;

  private:
    learn::Variable x_, cost_;
    Curve curve_;
    learn::Literal present_;
    std::int32_t id_ = 0;
};

} // namespace piewright::schedule
