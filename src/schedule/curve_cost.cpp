#include "schedule/curve_cost.h"

#include "schedule/cost.h"

#include <algorithm>

namespace piewright::schedule {

using learn::atLeast;
using learn::atMost;
using learn::Literal;
using learn::Solver;
using learn::Value;

namespace {

/// Calls `visit(from, to)` with each stretch of one piece within the range, until it returns true.
template <class Visit> void stretches(const Curve& curve, Tick from, Tick to, const Visit& visit) {
    for (std::size_t i = 0; i < curve.pieces.size(); ++i) {
        const Tick first = i == 0 ? from : std::max(from, curve.pieces[i].from);
        const Tick last = i + 1 == curve.pieces.size() ? to : std::min(to, curve.pieces[i + 1].from - 1);
        if (first <= last && visit(curve.pieces[i], first, last)) return;
    }
}

Cost along(const Curve::Piece& piece, Tick t) { return piece.value + piece.perTick * (Cost{t} - piece.from); }

} // namespace

std::optional<Tick> firstAtMost(const Curve& curve, Tick from, Tick to, Cost most) {
    std::optional<Tick> found;
    stretches(curve, from, to, [&](const Curve::Piece& piece, Tick first, Tick last) {
        if (along(piece, first) <= most) {
            found = first;
        } else if (along(piece, last) <= most) { // it falls
            const Cost fall = -piece.perTick;
            found = static_cast<Tick>(first + (along(piece, first) - most + fall - 1) / fall);
        }
        return found.has_value();
    });
    return found;
}

std::optional<Tick> lastAtMost(const Curve& curve, Tick from, Tick to, Cost most) {
    std::optional<Tick> found;
    stretches(curve, from, to, [&](const Curve::Piece& piece, Tick first, Tick last) {
        if (along(piece, last) <= most) {
            found = last;
        } else if (along(piece, first) <= most) { // it rises
            found = static_cast<Tick>(first + (most - along(piece, first)) / piece.perTick);
        }
        return false;
    });
    return found;
}

Cost leastOf(const Curve& curve, Tick from, Tick to) {
    Cost least = std::numeric_limits<Cost>::max();
    stretches(curve, from, to, [&](const Curve::Piece& piece, Tick first, Tick last) {
        least = std::min({least, along(piece, first), along(piece, last)});
        return false;
    });
    return least;
}

Cost mostOf(const Curve& curve, Tick from, Tick to) {
    Cost most = std::numeric_limits<Cost>::min();
    stretches(curve, from, to, [&](const Curve::Piece& piece, Tick first, Tick last) {
        most = std::max({most, along(piece, first), along(piece, last)});
        return false;
    });
    return most;
}

bool neverFalls(const Curve& curve, Tick from, Tick to) {
    bool rises = true;
    Cost last = std::numeric_limits<Cost>::min();
    stretches(curve, from, to, [&](const Curve::Piece& piece, Tick first, Tick end) {
        rises = rises && last <= along(piece, first) && (first == end || piece.perTick >= 0);
        last = along(piece, end);
        return !rises;
    });
    return rises;
}

void CurveCost::post(Solver& solver, learn::Variable x, learn::Variable cost, Curve curve, Literal present) {
    auto owned = std::make_unique<CurveCost>(x, cost, std::move(curve), present);
    CurveCost& one = *owned;
    one.id_ = solver.addPropagator(std::move(owned), 1);
    solver.watch(learn::plus(x), one.id_, 0);
    solver.watch(learn::minus(x), one.id_, 0);
    solver.watch(learn::minus(cost), one.id_, 0);
    if (present != learn::kTrue) solver.watch(present.half, one.id_, 0);
}

bool CurveCost::propagate(Solver& solver) {
    if (solver.isFalse(present_)) return true;
    const Tick lower = solver.lower(x_);
    const Tick upper = solver.upper(x_);
    if (solver.isTrue(present_)) {
        const Cost least = leastOf(curve_, lower, upper);
        if (!solver.infer(atLeast(cost_, static_cast<Value>(least)), id_, 0)) return false;
    }
    const Cost most = solver.upper(cost_);
    const Tick first = firstAtMost(curve_, lower, upper, most).value_or(upper + 1);
    if (!solver.infer(atLeast(x_, first), id_, 0)) return false;
    if (first > upper) return true;
    return solver.infer(atMost(x_, lastAtMost(curve_, lower, upper, most).value_or(lower - 1)), id_, 0);
}

void CurveCost::explain(const Solver& solver, Literal consequence, std::uint32_t /*data*/, std::int32_t position,
                        std::vector<Literal>& premises) {
    const Tick lower = solver.boundAt(learn::plus(x_), position);
    const Tick upper = -solver.boundAt(learn::minus(x_), position);
    const Tick start = solver.rootBound(learn::plus(x_));
    const Tick end = -solver.rootBound(learn::minus(x_));
    if (learn::variableOf(consequence.half) == cost_) {
        const Cost less = Cost{consequence.bound} - 1;
        if (const auto before = lastAtMost(curve_, start, lower - 1, less); before) {
            premises.push_back(atLeast(x_, *before + 1));
        }
        if (const auto after = firstAtMost(curve_, upper + 1, end, less); after) {
            premises.push_back(atMost(x_, *after - 1));
        }
        if (present_ != learn::kTrue) premises.push_back(present_);
        return;
    }
    // All from the bound it had up to the one it gets cost more than `most`.
    const bool isLower = consequence.half == learn::plus(x_);
    const Tick value = isLower ? consequence.bound : -consequence.bound;
    const Cost most = (isLower ? leastOf(curve_, lower, value - 1) : leastOf(curve_, value + 1, upper)) - 1;
    premises.push_back(atMost(cost_, static_cast<Value>(most)));
    if (isLower) {
        if (const auto before = lastAtMost(curve_, start, lower - 1, most); before) {
            premises.push_back(atLeast(x_, *before + 1));
        }
    } else if (const auto after = firstAtMost(curve_, upper + 1, end, most); after) {
        premises.push_back(atMost(x_, *after - 1));
    }
}

} // namespace piewright::schedule
