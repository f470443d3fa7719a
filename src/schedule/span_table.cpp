#include "schedule/span_table.h"

#include <algorithm>

namespace piewright::schedule {

using learn::Literal;
using learn::Solver;

namespace {
constexpr std::size_t kNobody = static_cast<std::size_t>(-1);

Tick lowerOf(const Solver& solver, Time time) { return solver.lower(time.variable) + time.offset; }
Tick upperOf(const Solver& solver, Time time) { return solver.upper(time.variable) + time.offset; }
} // namespace

void SpanTable::post(Solver& solver, std::vector<SpanTask> tasks, std::vector<Step> capacity, Literal active) {
    auto owned = std::make_unique<SpanTable>(std::move(tasks), std::move(capacity), active);
    const SpanTable& table = *owned;
    const std::int32_t id = solver.addPropagator(std::move(owned), 2);
    if (active != learn::kTrue) solver.watch(active.half, id, 0);
    for (const SpanTask& task : table.tasks_) {
        for (const Time time : {task.start, task.end}) {
            solver.watch(learn::plus(time.variable), id, 0);
            solver.watch(learn::minus(time.variable), id, 0);
        }
        if (task.present != learn::kTrue) solver.watch(task.present.half, id, 0);
    }
}

bool SpanTable::runsAt(const Solver& solver, std::size_t index, Tick time) const {
    const SpanTask& task = tasks_[index];
    return solver.isTrue(task.present) && upperOf(solver, task.start) <= time && lowerOf(solver, task.end) > time;
}

bool SpanTable::cover(const Solver& solver, std::size_t without, Tick time, std::int64_t spare) {
    premises_.clear();
    if (active_ != learn::kTrue) premises_.push_back(active_);
    std::int64_t used = 0;
    for (std::size_t i = 0; i < tasks_.size() && used <= spare; ++i) {
        if (i == without || !runsAt(solver, i, time)) continue;
        used += tasks_[i].demand;
        premises_.push_back(atMost(tasks_[i].start, time));
        premises_.push_back(atLeast(tasks_[i].end, time + 1));
        if (tasks_[i].present != learn::kTrue) premises_.push_back(tasks_[i].present);
    }
    return used > spare;
}

bool SpanTable::propagate(Solver& solver) {
    if (!solver.isTrue(active_)) return true;
    solver.addWork(tasks_.size() * tasks_.size() / 8 + 1);
    times_.clear();
    for (const Step& step : capacity_) times_.push_back(step.from);
    for (const SpanTask& task : tasks_) {
        if (!solver.isTrue(task.present) || upperOf(solver, task.start) >= lowerOf(solver, task.end)) continue;
        times_.push_back(upperOf(solver, task.start));
        times_.push_back(lowerOf(solver, task.end));
    }
    std::sort(times_.begin(), times_.end());
    times_.erase(std::unique(times_.begin(), times_.end()), times_.end());
    // Stretches of one profile each. What is pushed below only makes them fuller: the next run sees to that.
    for (std::size_t t = 0; t < times_.size(); ++t) {
        const Tick from = times_[t];
        const Tick to = t + 1 < times_.size() ? times_[t + 1] : kNever;
        const std::int64_t capacity = capacityAt(capacity_, from);
        std::int64_t used = 0;
        for (std::size_t i = 0; i < tasks_.size(); ++i) used += runsAt(solver, i, from) ? tasks_[i].demand : 0;
        if (used > capacity) {
            (void)cover(solver, kNobody, from, capacity);
            return solver.fail(premises_);
        }
        for (std::size_t i = 0; i < tasks_.size(); ++i) {
            if (used + tasks_[i].demand <= capacity || runsAt(solver, i, from)) continue;
            if (!push(solver, i, from, to, capacity - tasks_[i].demand)) return false;
        }
    }
    return true;
}

/// It runs at no time from `from` to `to`, where the others take more than `spare`.
bool SpanTable::push(Solver& solver, std::size_t index, Tick from, Tick to, std::int64_t spare) {
    const SpanTask& task = tasks_[index];
    while (!solver.isFalse(task.present)) {
        const Tick start = lowerOf(solver, task.start);
        const Tick end = lowerOf(solver, task.end);
        if (start >= to || end <= from) break;
        const Tick time = std::min(to, end) - 1;
        if (start > time || !cover(solver, index, time, spare)) break;
        premises_.push_back(atLeast(task.end, time + 1));
        if (!solver.infer(atLeast(task.start, time + 1), premises_)) return false;
        if (lowerOf(solver, task.start) <= time) break; // it turned out absent
    }
    while (!solver.isFalse(task.present)) {
        const Tick start = upperOf(solver, task.start);
        const Tick end = upperOf(solver, task.end);
        if (start >= to || end <= from) break;
        const Tick time = std::max(from, start);
        if (end <= time || !cover(solver, index, time, spare)) break;
        premises_.push_back(atMost(task.start, time));
        if (!solver.infer(atMost(task.end, time), premises_)) return false;
        if (upperOf(solver, task.end) > time) break;
    }
    return true;
}

} // namespace piewright::schedule
