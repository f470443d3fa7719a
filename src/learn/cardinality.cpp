#include "learn/cardinality.h"

namespace piewright::learn {

void Cardinality::post(Solver& solver, std::vector<Literal> literals, int least, Literal when) {
    if (least <= 0) return;
    auto owned = std::make_unique<Cardinality>(std::move(literals), least, when);
    Cardinality& cardinality = *owned;
    cardinality.id_ = solver.addPropagator(std::move(owned), 0);
    for (const Literal literal : cardinality.literals_) solver.watch((~literal).half, cardinality.id_, 0);
    if (when != kTrue) solver.watch(when.half, cardinality.id_, 0);
}

bool Cardinality::propagate(Solver& solver) {
    int possible = 0;
    for (const Literal literal : literals_) possible += solver.isFalse(literal) ? 0 : 1;
    if (possible > least_ || solver.isFalse(when_)) return true;
    if (possible < least_) {
        if (!solver.isTrue(when_)) return solver.infer(~when_, id_, 0);
        std::vector<Literal> premises;
        explain(solver, ~when_, 0, solver.position(), premises);
        if (when_ != kTrue) premises.push_back(when_);
        return solver.fail(premises);
    }
    if (!solver.isTrue(when_)) return true;
    for (const Literal literal : literals_) {
        if (!solver.isFalse(literal) && !solver.infer(literal, id_, 0)) return false;
    }
    return true;
}

void Cardinality::explain(const Solver& solver, Literal consequence, std::uint32_t /*data*/, std::int32_t position,
                          std::vector<Literal>& premises) {
    // One more must have failed for `when` to be impossible than for another to be forced.
    const bool isForced = consequence != ~when_;
    int enough = static_cast<int>(literals_.size()) - least_ + (isForced ? 0 : 1);
    for (const Literal literal : literals_) {
        if (enough == 0) break;
        if (literal == consequence || !solver.isFalse(literal) || solver.positionOf(~literal) >= position) continue;
        premises.push_back(~literal);
        --enough;
    }
    if (isForced && when_ != kTrue) premises.push_back(when_);
}

} // namespace piewright::learn
