#include "schedule/reservoir_level.h"

#include <algorithm>
#include <cassert>

namespace piewright::schedule {

using learn::Literal;
using learn::Solver;

namespace {
constexpr std::size_t kNobody = static_cast<std::size_t>(-1);

Tick lowerOf(const Solver& solver, Time time) { return solver.lower(time.variable) + time.offset; }
Tick upperOf(const Solver& solver, Time time) { return solver.upper(time.variable) + time.offset; }
} // namespace

void ReservoirLevel::post(Solver& solver, std::vector<Flowing> flows, std::int64_t initial, std::int64_t least,
                          Literal active) {
    auto owned = std::make_unique<ReservoirLevel>(std::move(flows), initial - least, active);
    const ReservoirLevel& levels = *owned;
    const std::int32_t id = solver.addPropagator(std::move(owned), 2);
    if (active != learn::kTrue) solver.watch(active.half, id, 0);
    for (const Flowing& flow : levels.flows_) {
        solver.watch(learn::plus(flow.time.variable), id, 0);
        solver.watch(learn::minus(flow.time.variable), id, 0);
        if (flow.present == learn::kTrue) continue;
        solver.watch(flow.present.half, id, 0);
        solver.watch((~flow.present).half, id, 0);
    }
}

/// Something flows in, and perhaps by then.
bool ReservoirLevel::mayBeIn(const Solver& solver, const Flowing& flow, Tick time) const {
    return flow.amount > 0 && !solver.isFalse(flow.present) && lowerOf(solver, flow.time) <= time;
}

/// Something flows out, and surely by then.
bool ReservoirLevel::isOut(const Solver& solver, const Flowing& flow, Tick time) const {
    return flow.amount < 0 && solver.isTrue(flow.present) && upperOf(solver, flow.time) <= time;
}

std::int64_t ReservoirLevel::levelAt(const Solver& solver, std::size_t without, Tick time) const {
    std::int64_t level = spare_;
    for (std::size_t i = 0; i < flows_.size(); ++i) {
        if (i != without && (mayBeIn(solver, flows_[i], time) || isOut(solver, flows_[i], time))) {
            level += flows_[i].amount;
        }
    }
    return level;
}

void ReservoirLevel::gather(const Solver& solver, std::size_t index, Tick time, std::int64_t below) {
    premises_.clear();
    shares_.clear();
    if (active_ != learn::kTrue) premises_.push_back(active_);
    const auto reason = [&](const Flowing& flow, std::vector<Literal>& reasons) {
        reasons.clear();
        if (flow.amount < 0) {
            reasons.push_back(atMost(flow.time, time));
            if (flow.present != learn::kTrue) reasons.push_back(flow.present);
        } else if (solver.isFalse(flow.present)) {
            reasons.push_back(~flow.present);
        } else {
            reasons.push_back(atLeast(flow.time, time + 1));
        }
    };
    std::vector<Literal> reasons;
    for (std::size_t i = 0; i < flows_.size(); ++i) {
        const Flowing& flow = flows_[i];
        if (i == index) continue;
        if (flow.amount > 0 ? mayBeIn(solver, flow, time) : !isOut(solver, flow, time)) continue;
        reason(flow, reasons);
        std::int32_t position = -1;
        for (const Literal one : reasons) position = std::max(position, solver.positionOf(one));
        shares_.push_back({position, i});
    }
    // What came last goes first, as far as the slack allows.
    std::int64_t slack = below - 1 - levelAt(solver, index, time);
    assert(slack >= 0);
    std::sort(shares_.begin(), shares_.end(), [](const Share& x, const Share& y) {
        return x.position != y.position ? x.position > y.position : x.flow < y.flow;
    });
    for (const Share& share : shares_) {
        const std::int64_t amount =
            flows_[share.flow].amount < 0 ? -flows_[share.flow].amount : flows_[share.flow].amount;
        if (share.position < 0) break;
        if (amount <= slack) {
            slack -= amount;
            continue;
        }
        reason(flows_[share.flow], reasons);
        premises_.insert(premises_.end(), reasons.begin(), reasons.end());
    }
}

bool ReservoirLevel::propagate(Solver& solver) {
    if (!solver.isTrue(active_)) return true;
    solver.addWork(flows_.size() * flows_.size() / 8 + 1);
    // The level's upper bound changes where something may come in or has surely gone out.
    times_.assign(1, 0);
    for (const Flowing& flow : flows_) {
        if (solver.isFalse(flow.present)) continue;
        if (flow.amount > 0) times_.push_back(lowerOf(solver, flow.time));
        if (flow.amount < 0 && solver.isTrue(flow.present)) times_.push_back(upperOf(solver, flow.time));
    }
    std::sort(times_.begin(), times_.end());
    times_.erase(std::unique(times_.begin(), times_.end()), times_.end());
    for (std::size_t t = 0; t < times_.size(); ++t) {
        const Tick from = times_[t];
        const Tick to = t + 1 < times_.size() ? times_[t + 1] : kNever;
        const std::int64_t level = levelAt(solver, kNobody, from);
        if (level < 0) {
            gather(solver, kNobody, from, 0);
            return solver.fail(premises_);
        }
        for (std::size_t i = 0; i < flows_.size(); ++i) {
            const Flowing& flow = flows_[i];
            if (solver.isFalse(flow.present)) continue;
            if (flow.amount < 0) {
                // What this would take is not there until `to`.
                if (isOut(solver, flow, from) || level + flow.amount >= 0 || lowerOf(solver, flow.time) >= to) continue;
                if (!keepOut(solver, i, from, to)) return false;
            } else {
                // Without this there would be too little from `from` on.
                if (!mayBeIn(solver, flow, from) || level - flow.amount >= 0) continue;
                if (solver.isTrue(flow.present) && upperOf(solver, flow.time) <= from) continue;
                if (!callIn(solver, i, from)) return false;
            }
        }
    }
    return true;
}

bool ReservoirLevel::keepOut(Solver& solver, std::size_t index, Tick from, Tick until) {
    const Flowing& flow = flows_[index];
    // Past its latest time is far enough. What was pushed since the stretches were made may have come in by then.
    Tick last = std::max(from, std::min(until - 1, upperOf(solver, flow.time)));
    if (levelAt(solver, index, last) + flow.amount >= 0) last = from;
    gather(solver, index, last, -flow.amount);
    return solver.infer(atLeast(flow.time, last + 1), premises_);
}

bool ReservoirLevel::callIn(Solver& solver, std::size_t index, Tick by) {
    const Flowing& flow = flows_[index];
    gather(solver, index, by, 0);
    if (!solver.isTrue(flow.present)) {
        if (!solver.infer(flow.present, premises_)) return false;
    }
    return solver.infer(atMost(flow.time, by), premises_);
}

} // namespace piewright::schedule
