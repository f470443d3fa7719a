#include "schedule/pausing.h"

namespace piewright::schedule {

using learn::atLeast;
using learn::atMost;
using learn::Literal;
using learn::Solver;

namespace {
enum Why : std::uint32_t { OfPause, OfOther };
} // namespace

void Pausing::post(Solver& solver, learn::Variable start, learn::Variable end, WorkingTime time) {
    auto owned = std::make_unique<Pausing>(start, end, std::move(time));
    Pausing& pausing = *owned;
    pausing.id_ = solver.addPropagator(std::move(owned), 0);
    for (const learn::Variable x : {start, end}) {
        solver.watch(learn::plus(x), pausing.id_, 0);
        solver.watch(learn::minus(x), pausing.id_, 0);
    }
}

bool Pausing::propagate(Solver& solver) {
    const auto isOpen = [&] { return solver.lower(start_) <= solver.upper(start_); };
    if (!solver.infer(atLeast(start_, time_.next(solver.lower(start_))), id_, OfPause)) return false;
    if (!solver.infer(atMost(start_, time_.previous(solver.upper(start_))), id_, OfPause)) return false;
    // What is absent has kept bounds that may lie within a pause.
    if (!isOpen() || time_.next(solver.lower(start_)) != solver.lower(start_) ||
        time_.previous(solver.upper(start_)) != solver.upper(start_)) {
        return true;
    }
    return solver.infer(atLeast(end_, time_.endOf(solver.lower(start_))), id_, OfOther) &&
           solver.infer(atMost(end_, time_.endOf(solver.upper(start_))), id_, OfOther) &&
           solver.infer(atLeast(start_, time_.earliestStart(solver.lower(end_))), id_, OfOther) &&
           solver.infer(atMost(start_, time_.latestStart(solver.upper(end_))), id_, OfOther);
}

void Pausing::explain(const Solver& /*solver*/, Literal consequence, std::uint32_t data, std::int32_t /*position*/,
                      std::vector<Literal>& premises) {
    const bool isLower = (consequence.half & 1) == 0;
    const Tick value = isLower ? consequence.bound : -consequence.bound;
    if (learn::variableOf(consequence.half) == end_) {
        // Every earlier (later) start would end before (after) it.
        premises.push_back(isLower ? atLeast(start_, time_.latestStart(value - 1) + 1)
                                   : atMost(start_, time_.earliestStart(value + 1) - 1));
    } else if (data == OfPause) {
        premises.push_back(isLower ? atLeast(start_, time_.previous(value - 1) + 1)
                                   : atMost(start_, time_.next(value + 1) - 1));
    } else if (isLower) {
        const Tick before = time_.previous(value - 1);
        if (before >= 0) premises.push_back(atLeast(end_, time_.endOf(before) + 1));
    } else {
        premises.push_back(atMost(end_, time_.endOf(time_.next(value + 1)) - 1));
    }
}

} // namespace piewright::schedule
