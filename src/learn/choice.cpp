#include "learn/choice.h"

#include <algorithm>

namespace piewright::learn {

void Choice::post(Solver& solver, Half chosen, std::vector<Candidate> candidates) {
    auto owned = std::make_unique<Choice>(chosen, std::move(candidates));
    Choice& choice = *owned;
    choice.id_ = solver.addPropagator(std::move(owned), 0);
    for (const Candidate& one : choice.candidates_) {
        solver.watch(one.half, choice.id_, 0);
        solver.watch((~one.present).half, choice.id_, 0);
    }
}

bool Choice::propagate(Solver& solver) {
    Value least = std::numeric_limits<Value>::max();
    for (const Candidate& one : candidates_) {
        if (!solver.isFalse(one.present)) least = std::min(least, solver.bound(one.half) + one.offset);
    }
    // All absent: a clause sees to that.
    return least == std::numeric_limits<Value>::max() || solver.infer({chosen_, least}, id_, 0);
}

void Choice::explain(const Solver& solver, Literal consequence, std::uint32_t /*data*/, std::int32_t position,
                     std::vector<Literal>& premises) {
    for (const Candidate& one : candidates_) {
        const Literal late{one.half, consequence.bound - one.offset};
        const auto since = [&](Literal literal) {
            return solver.isTrue(literal) ? solver.positionOf(literal) : std::numeric_limits<std::int32_t>::max();
        };
        // Whichever came first.
        const Literal earlier = since(~one.present) <= since(late) ? ~one.present : late;
        if (since(earlier) >= 0 && since(earlier) < position) premises.push_back(earlier);
    }
}

} // namespace piewright::learn
