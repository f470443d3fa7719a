#include "schedule/setup_cost.h"

#include <algorithm>

namespace piewright::schedule {

using learn::Literal;
using learn::Solver;

void SetupCost::post(Solver& solver, const std::shared_ptr<const Standings>& standings, const Machine& machine,
                     std::size_t index, learn::Variable cost) {
    const std::size_t n = standings->present.size();
    const FamilyIndex family = standings->family[index];
    std::vector<Cost> costs;
    costs.reserve(n);
    for (std::size_t i = 0; i < n; ++i) costs.push_back(machine.setupCost[at(standings->family[i])][at(family)]);
    const std::int32_t id = solver.addPropagator(
        std::make_unique<SetupCost>(standings, std::move(costs), machine.firstCost[at(family)], index, cost), 2);
    const auto watch = [&](Literal literal) {
        if (literal != learn::kTrue && literal != ~learn::kTrue) solver.watch(literal.half, id, 0);
    };
    watch(standings->present[index]);
    for (std::size_t i = 0; i < n; ++i) {
        if (i < index) watch(~standings->together[i][index]);
        watch(standings->before[i][index]);
        watch(~standings->before[i][index]);
        for (std::size_t k = 0; k < n; ++k) watch(standings->before[i][k]);
    }
}

bool SetupCost::excluded(const Solver& solver, std::size_t other, std::vector<Literal>& premises) const {
    const Literal before = standings_->before[other][index_];
    if (solver.isFalse(before)) {
        premises.push_back(~before);
        return true;
    }
    for (std::size_t k = 0; k < costs_.size(); ++k) {
        const Literal first = standings_->before[other][k];
        const Literal second = standings_->before[k][index_];
        if (k == index_ || k == other || !solver.isTrue(first) || !solver.isTrue(second)) continue;
        premises.push_back(first);
        premises.push_back(second);
        return true;
    }
    return false;
}

bool SetupCost::propagate(Solver& solver) {
    const std::size_t n = costs_.size();
    solver.addWork(n / 2 + 1);
    if (!solver.isTrue(standings_->present[index_])) return true;
    for (std::size_t i = 0; i < index_; ++i) {
        if (!solver.isFalse(standings_->together[i][index_])) return true;
    }
    // The least that any load which may still be just before it costs.
    std::size_t firm = n; // surely before it
    for (std::size_t i = 0; i < n && firm == n; ++i) {
        if (solver.isTrue(standings_->before[i][index_])) firm = i;
    }
    Cost least = firm == n ? firstCost_ : std::numeric_limits<Cost>::max();
    for (std::size_t i = 0; i < n; ++i) {
        if (i == index_ || costs_[i] >= least) continue;
        scratch_.clear();
        if (!excluded(solver, i, scratch_)) least = costs_[i];
    }
    if (least == std::numeric_limits<Cost>::max()) return true; // a loop: the arcs see to that
    const Literal consequence = learn::atLeast(cost_, static_cast<learn::Value>(least));
    if (solver.isTrue(consequence)) return true;
    premises_.clear();
    premises_.push_back(standings_->present[index_]);
    for (std::size_t i = 0; i < index_; ++i) premises_.push_back(~standings_->together[i][index_]);
    if (firstCost_ < least) premises_.push_back(standings_->before[firm][index_]);
    for (std::size_t i = 0; i < n; ++i) {
        if (i != index_ && costs_[i] < least) (void)excluded(solver, i, premises_);
    }
    return solver.infer(consequence, premises_);
}

} // namespace piewright::schedule
