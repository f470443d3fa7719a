// What the setup into one activity's load costs, on the learning kernel.
#pragma once

#include "learn/solver.h"
#include "schedule/problem.h"

#include <vector>

namespace piewright::schedule {

/// How the activities on one machine stand to each other: literals, by index. `before[i][j]` and `together[i][j]` hold
/// only where both are present; of two present ones exactly one of before[i][j], before[j][i] and together[i][j] does.
/// A together with a larger index leaves the load's setup to the smaller.
struct Standings {
    std::vector<learn::Literal> present;
    std::vector<std::vector<learn::Literal>> before;
    std::vector<std::vector<learn::Literal>> together;
    std::vector<FamilyIndex> family;
};

class SetupCost final : public learn::Propagator {
  public:
    /// cost >= the setup's into the load of `index`, from the load just before it or as the first one, where it is
    /// present and the first in its load. All share `standings`. O(n^2).
    static void post(learn::Solver& solver, const std::shared_ptr<const Standings>& standings, const Machine& machine,
                     std::size_t index, learn::Variable cost);

    SetupCost(std::shared_ptr<const Standings> standings, std::vector<Cost> costs, Cost firstCost, std::size_t index,
              learn::Variable cost)
        : standings_(std::move(standings)), costs_(std::move(costs)), firstCost_(firstCost), index_(index),
          cost_(cost) {}
    bool propagate(learn::Solver& solver) override;

  private:
    /// Why `other` is not in the load just before; false when it may be.
    bool excluded(const learn::Solver& solver, std::size_t other, std::vector<learn::Literal>& premises) const;

    std::shared_ptr<const Standings> standings_;
    std::vector<Cost> costs_; ///< by the one before
    Cost firstCost_;
    std::size_t index_;
    learn::Variable cost_;
    std::vector<learn::Literal> premises_, scratch_;
};

} // namespace piewright::schedule
