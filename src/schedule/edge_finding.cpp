#include "schedule/edge_finding.h"

#include <algorithm>
#include <cassert>

namespace piewright::schedule {

using learn::atLeast;
using learn::atMost;
using learn::Literal;
using learn::Solver;

namespace {
constexpr std::size_t kNobody = static_cast<std::size_t>(-1);
constexpr std::uint32_t kLongestPause = 31;
} // namespace

EdgeFinding::EdgeFinding(std::vector<Task> tasks, std::vector<Step> capacity, Literal active)
    : tasks_(std::move(tasks)), capacity_(std::move(capacity)), active_(active) {}

void EdgeFinding::post(Solver& solver, std::vector<Task> tasks, std::vector<Step> capacity, Literal active) {
    auto owned = std::make_unique<EdgeFinding>(std::move(tasks), std::move(capacity), active);
    const EdgeFinding& edges = *owned;
    const std::int32_t id = solver.addPropagator(std::move(owned), 3);
    if (active != learn::kTrue) solver.watch(active.half, id, -1);
    for (const Task& task : edges.tasks_) {
        solver.watch(learn::plus(task.start), id, 0);
        solver.watch(learn::minus(task.start), id, 0);
        if (task.present != learn::kTrue) solver.watch(task.present.half, id, 0);
    }
}

bool EdgeFinding::propagate(Solver& solver) {
    if (!solver.isTrue(active_)) return true;
    if (left_ > 0 && !solver.atRoot()) {
        --left_;
        return true;
    }
    measure(solver);
    solver.addWork(free_.size() * free_.size() / 16 + tasks_.size() / 8 + 1);
    hasFound_ = false;
    const bool isKept = sweep(solver, false) && sweep(solver, true);
    pause_ = hasFound_ ? pause_ / 2 : std::min(2 * pause_ + 1, kLongestPause);
    left_ = pause_;
    return isKept;
}

/// Free tasks both ways, and the area that compulsory parts leave.
void EdgeFinding::measure(const Solver& solver) {
    free_.clear();
    mirrored_.clear();
    events_.clear();
    for (std::size_t i = 0; i < tasks_.size(); ++i) {
        const Task& task = tasks_[i];
        if (solver.isFalse(task.present)) continue;
        const bool isPresent = solver.isTrue(task.present);
        const Tick earliest = solver.lower(task.start);
        const Tick latest = solver.upper(task.start);
        if (isPresent && latest < earliest + task.duration) {
            events_.push_back({latest, task.demand});
            events_.push_back({earliest + task.duration, -task.demand});
        }
        if (isPresent && latest == earliest) continue;
        free_.push_back({earliest, latest, task.duration, task.demand, i, isPresent});
        mirrored_.push_back(
            {-latest - task.duration, -earliest - task.duration, task.duration, task.demand, i, isPresent});
    }
    for (std::size_t s = 0; s < capacity_.size(); ++s) {
        events_.push_back({capacity_[s].from, (s == 0 ? 0 : capacity_[s - 1].capacity) - capacity_[s].capacity});
    }
    std::sort(events_.begin(), events_.end(), [](const Event& x, const Event& y) { return x.time < y.time; });
    areas_.clear();
    std::int64_t left = 0;
    std::int64_t rate = 0;
    for (std::size_t e = 0; e < events_.size();) {
        const Tick time = events_[e].time;
        if (!areas_.empty()) left += rate * (time - areas_.back().time);
        while (e < events_.size() && events_[e].time == time) rate -= events_[e++].change;
        areas_.push_back({time, left, rate});
    }
}

std::int64_t EdgeFinding::areaUpTo(Tick time) const {
    const auto after = std::upper_bound(areas_.begin(), areas_.end(), time,
                                        [](Tick wanted, const Area& area) { return wanted < area.time; });
    const Area& area = *std::prev(after);
    return area.left + area.rate * (time - area.time);
}

std::int64_t EdgeFinding::capacityIn(Window window) const {
    std::int64_t capacity = 0;
    for (std::size_t s = 0; s < capacity_.size(); ++s) {
        const Tick from = std::max(window.from, capacity_[s].from);
        const Tick to = s + 1 < capacity_.size() ? std::min(window.to, capacity_[s + 1].from) : window.to;
        if (from < to) capacity += std::int64_t{capacity_[s].capacity} * (to - from);
    }
    return capacity;
}

bool EdgeFinding::sweep(Solver& solver, bool isMirrored) {
    std::vector<Free>& tasks = isMirrored ? mirrored_ : free_;
    if (tasks.empty()) return true;
    std::sort(tasks.begin(), tasks.end(), [](const Free& x, const Free& y) {
        return x.earliest != y.earliest ? x.earliest > y.earliest : x.task < y.task;
    });
    const auto areaBelow = [&](Tick time) { return isMirrored ? -areaUpTo(-time) : areaUpTo(time); };
    ends_.clear();
    for (const Free& task : tasks) {
        if (task.isPresent) ends_.push_back(task.latest + task.duration);
    }
    std::sort(ends_.begin(), ends_.end());
    ends_.erase(std::unique(ends_.begin(), ends_.end()), ends_.end());
    std::vector<std::int64_t> areas; // below each earliest start
    areas.reserve(tasks.size());
    for (const Free& task : tasks) areas.push_back(areaBelow(task.earliest));
    for (auto end = ends_.rbegin(); end != ends_.rend(); ++end) {
        const Tick to = *end;
        const std::int64_t areaTo = areaBelow(to);
        std::int64_t energy = 0;
        std::int64_t most = 0;
        std::size_t candidate = kNobody;
        for (std::size_t i = 0; i < tasks.size(); ++i) {
            const Free& task = tasks[i];
            if (task.earliest >= to) continue;
            const Tick ect = task.earliest + task.duration;
            std::int64_t more = 0; // what it adds if it starts at its earliest
            if (!task.isPresent) {
                more = task.demand * (std::min(ect, to) - task.earliest);
            } else if (task.latest + task.duration <= to) {
                energy += task.demand * std::min(task.duration, task.latest - task.earliest);
            } else {
                const std::int64_t surely = task.demand * std::max<Tick>(0, to - std::max(task.latest, ect));
                energy += surely;
                more = task.demand * (std::min({task.latest, ect, to}) - task.earliest) - surely;
            }
            if (more > most) {
                most = more;
                candidate = task.task;
            }
            const std::int64_t left = areaTo - areas[i] - energy;
            if (left >= most) continue;
            const Window window = isMirrored ? Window{-to, -task.earliest} : Window{task.earliest, to};
            if (left < 0) return overfull(solver, window);
            if (!push(solver, candidate, window, isMirrored)) return false;
        }
    }
    return true;
}

Tick EdgeFinding::ticksIn(const Solver& solver, const Task& task, Window window) const {
    const Tick fromLeft = solver.lower(task.start) + task.duration - window.from;
    const Tick fromRight = window.to - solver.upper(task.start);
    return std::max<Tick>(0, std::min({task.duration, window.to - window.from, fromLeft, fromRight}));
}

/// Fills premises_; false when no more than `capacity` is surely used.
bool EdgeFinding::gather(const Solver& solver, Window window, std::int64_t capacity, std::size_t without) {
    shares_.clear();
    premises_.clear();
    std::int64_t slack = -capacity - 1;
    for (std::size_t i = 0; i < tasks_.size(); ++i) {
        const Task& task = tasks_[i];
        if (i == without || !solver.isTrue(task.present)) continue;
        const Tick ticks = ticksIn(solver, task, window);
        if (ticks == 0) continue;
        slack += std::int64_t{ticks} * task.demand;
        const std::int32_t since =
            std::max({solver.positionOf(atLeast(task.start, window.from + ticks - task.duration)),
                      solver.positionOf(atMost(task.start, window.to - ticks)), solver.positionOf(task.present)});
        shares_.push_back({since, i, ticks});
    }
    if (slack < 0) return false;
    if (active_ != learn::kTrue) premises_.push_back(active_);
    // What came last goes first, as far as the slack allows; the rest of the slack loosens what stays.
    std::sort(shares_.begin(), shares_.end(), [](const Share& x, const Share& y) {
        return x.position != y.position ? x.position > y.position : x.task < y.task;
    });
    for (Share& share : shares_) {
        const std::int64_t energy = std::int64_t{share.ticks} * tasks_[share.task].demand;
        if (share.position >= 0 && energy <= slack) {
            slack -= energy;
            share.ticks = 0;
        }
    }
    for (const Share& share : shares_) {
        if (share.ticks == 0 || share.position < 0) continue;
        const Task& task = tasks_[share.task];
        const auto loose = static_cast<Tick>(std::min<std::int64_t>(slack / task.demand, share.ticks - 1));
        const Tick ticks = share.ticks - loose;
        slack -= std::int64_t{loose} * task.demand;
        premises_.push_back(atLeast(task.start, window.from + ticks - task.duration));
        premises_.push_back(atMost(task.start, window.to - ticks));
        if (task.present != learn::kTrue) premises_.push_back(task.present);
    }
    return true;
}

bool EdgeFinding::overfull(Solver& solver, Window window) {
    [[maybe_unused]] const bool isOver = gather(solver, window, capacityIn(window), kNobody);
    assert(isOver);
    hasFound_ = true;
    return solver.fail(premises_);
}

bool EdgeFinding::push(Solver& solver, std::size_t index, Window window, bool isMirrored) {
    const Task& task = tasks_[index];
    if (solver.isFalse(task.present)) return true;
    // Ticks the others leave it in the window.
    std::int64_t rest = capacityIn(window);
    const std::int64_t capacity = rest;
    for (std::size_t i = 0; i < tasks_.size(); ++i) {
        if (i == index || !solver.isTrue(tasks_[i].present)) continue;
        rest -= std::int64_t{ticksIn(solver, tasks_[i], window)} * tasks_[i].demand;
    }
    if (rest < 0) return overfull(solver, window);
    const auto ticks = static_cast<Tick>(std::min<std::int64_t>(rest / task.demand, kNever / 2)) + 1;
    if (ticks > task.duration || ticks > window.to - window.from) return true;
    // Begun as early as it can it spends at least `ticks` there; so it must begin too late for that.
    const Literal early =
        isMirrored ? atMost(task.start, window.to - ticks) : atLeast(task.start, window.from + ticks - task.duration);
    const Literal pushed = isMirrored ? atMost(task.start, window.from + ticks - task.duration - 1)
                                      : atLeast(task.start, window.to - ticks + 1);
    if (!solver.isTrue(early) || solver.isTrue(pushed)) return true;
    [[maybe_unused]] const bool isOver = gather(solver, window, capacity - std::int64_t{ticks} * task.demand, index);
    assert(isOver);
    premises_.push_back(early);
    hasFound_ = true;
    return solver.infer(pushed, premises_);
}

} // namespace piewright::schedule
