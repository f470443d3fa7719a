#include "schedule/linear.h"

#include <algorithm>

namespace piewright::schedule {

using learn::Literal;
using learn::Solver;
using learn::Value;

namespace {
/// Greatest value that a half may take.
std::int64_t most(const Solver& solver, learn::Half half) { return -std::int64_t{solver.bound(half ^ 1)}; }

std::int64_t divideUp(std::int64_t x, std::int64_t y) { return x >= 0 ? (x + y - 1) / y : -(-x / y); }
} // namespace

void Linear::post(Solver& solver, std::vector<Term> terms, std::int64_t least) {
    std::sort(terms.begin(), terms.end(), [](const Term& x, const Term& y) { return x.half < y.half; });
    std::vector<Term> merged;
    for (const Term& term : terms) {
        if (!merged.empty() && merged.back().half == term.half) {
            merged.back().weight += term.weight;
        } else {
            merged.push_back(term);
        }
    }
    auto owned = std::make_unique<Linear>(std::move(merged), least);
    Linear& linear = *owned;
    linear.id_ = solver.addPropagator(std::move(owned), 2);
    for (const Term& term : linear.terms_) solver.watch(term.half ^ 1, linear.id_, 0);
}

bool Linear::propagate(Solver& solver) {
    solver.addWork(terms_.size() / 8 + 1);
    std::int64_t sum = 0;
    for (const Term& term : terms_) sum += term.weight * most(solver, term.half);
    for (const Term& term : terms_) {
        const std::int64_t others = sum - term.weight * most(solver, term.half);
        const std::int64_t needed = divideUp(least_ - others, term.weight);
        if (needed <= solver.bound(term.half)) continue;
        // Past what it may be by one is past it enough.
        const auto value = static_cast<Value>(std::min(needed, most(solver, term.half) + 1));
        if (!solver.infer({term.half, value}, id_, 0)) return false;
        if (needed > most(solver, term.half)) return true; // what is absent keeps its bounds
    }
    return true;
}

void Linear::explain(const Solver& solver, Literal consequence, std::uint32_t /*data*/, std::int32_t position,
                     std::vector<Literal>& premises) {
    std::int64_t slack = least_ - 1;
    const auto mostThen = [&](learn::Half half) { return -std::int64_t{solver.boundAt(half ^ 1, position)}; };
    for (const Term& term : terms_) {
        slack -=
            term.weight * (term.half == consequence.half ? std::int64_t{consequence.bound} - 1 : mostThen(term.half));
    }
    // What the slack pays for altogether is left out; what comes after is loosened as far as the rest goes.
    for (const Term& term : terms_) {
        if (term.half == consequence.half) continue;
        const std::int64_t now = mostThen(term.half);
        const std::int64_t open = -std::int64_t{solver.rootBound(term.half ^ 1)} - now;
        if (open == 0) continue;
        const std::int64_t loose = std::min(slack / term.weight, open);
        slack -= loose * term.weight;
        if (loose < open) premises.push_back({term.half ^ 1, static_cast<Value>(-(now + loose))});
    }
}

} // namespace piewright::schedule
