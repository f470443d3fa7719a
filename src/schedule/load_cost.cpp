#include "schedule/load_cost.h"

#include <algorithm>

namespace piewright::schedule {

using learn::Solver;

void OverCost::post(Solver& solver, std::vector<SpanTask> tasks, Over over, learn::Variable cost) {
    auto owned = std::make_unique<OverCost>(std::move(tasks), over, cost);
    const OverCost& one = *owned;
    const std::int32_t id = solver.addPropagator(std::move(owned), 2);
    for (const SpanTask& task : one.tasks_) {
        solver.watch(learn::minus(task.start.variable), id, 0);
        solver.watch(learn::plus(task.end.variable), id, 0);
        if (task.present != learn::kTrue) solver.watch(task.present.half, id, 0);
    }
}

Span OverCost::partOf(const Solver& solver, const SpanTask& task) const {
    if (!solver.isTrue(task.present)) return {};
    return {std::max(solver.upper(task.start.variable) + task.start.offset, over_.span.from),
            std::min(solver.lower(task.end.variable) + task.end.offset, over_.span.to)};
}

bool OverCost::propagate(Solver& solver) {
    solver.addWork(tasks_.size() / 4 + 1);
    events_.clear();
    overs_.clear();
    for (const SpanTask& task : tasks_) {
        const Span part = partOf(solver, task);
        if (part.from >= part.to) continue;
        events_.push_back({part.from, task.demand});
        events_.push_back({part.to, -task.demand});
    }
    std::sort(events_.begin(), events_.end(), [](const Event& x, const Event& y) { return x.time < y.time; });
    std::int64_t used = 0;
    Cost cost = 0;
    for (std::size_t e = 0; e < events_.size(); ++e) {
        used += events_[e].change;
        const Tick next = e + 1 < events_.size() ? events_[e + 1].time : events_[e].time;
        if (used <= over_.above || next == events_[e].time) continue;
        cost += (used - over_.above) * over_.perTick * (next - events_[e].time);
        overs_.push_back({events_[e].time, next});
    }
    // More than it may be by one is more enough.
    cost = std::min<Cost>(cost, Cost{solver.upper(cost_)} + 1);
    const learn::Literal consequence = learn::atLeast(cost_, static_cast<learn::Value>(cost));
    if (solver.isTrue(consequence)) return true;
    premises_.clear();
    for (const SpanTask& task : tasks_) {
        const Span part = partOf(solver, task);
        // As much of the part as lies between the first and the last time over.
        Tick from = kNever;
        Tick to = -kNever;
        for (const Span& over : overs_) {
            if (over.from < part.from || over.to > part.to) continue; // a part begins and ends where stretches do
            from = std::min(from, over.from);
            to = std::max(to, over.to);
        }
        if (from >= to) continue;
        premises_.push_back(atMost(task.start, from));
        premises_.push_back(atLeast(task.end, to));
        if (task.present != learn::kTrue) premises_.push_back(task.present);
    }
    return solver.infer(consequence, premises_);
}

} // namespace piewright::schedule
