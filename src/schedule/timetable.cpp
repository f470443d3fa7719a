#include "schedule/timetable.h"

#include <algorithm>
#include <cassert>
#include <map>
#include <numeric>

namespace piewright::schedule {

using learn::atLeast;
using learn::atMost;
using learn::Literal;
using learn::Solver;

namespace {
constexpr std::size_t kNobody = static_cast<std::size_t>(-1);
constexpr Tick kLongAgo = -kNever;
constexpr unsigned char kLower = 1, kUpper = 2, kBoth = 3; // what was tightened
} // namespace

std::vector<Step> stepsOf(const Cumulative& cumulative) {
    std::map<Tick, std::int64_t> changes;
    for (const Cumulative::Reserved& reserved : cumulative.reserved) {
        changes[reserved.span.from] += reserved.amount;
        changes[reserved.span.to] -= reserved.amount;
    }
    std::vector<Step> steps{{kLongAgo, cumulative.capacity}};
    std::int64_t reserved = 0;
    for (const auto& [time, change] : changes) {
        reserved += change;
        const int left = static_cast<int>(std::max<std::int64_t>(0, cumulative.capacity - reserved));
        if (left != steps.back().capacity) steps.push_back({time, left});
    }
    return steps;
}

int capacityAt(std::span<const Step> steps, Tick time) {
    const auto after = std::upper_bound(steps.begin(), steps.end(), time,
                                        [](Tick wanted, const Step& step) { return wanted < step.from; });
    return std::prev(after)->capacity;
}

Timetable::Timetable(std::vector<Task> tasks, std::vector<Step> capacity, Literal active)
    : tasks_(std::move(tasks)), capacity_(std::move(capacity)), active_(active) {
    std::int32_t first = std::numeric_limits<std::int32_t>::max();
    std::int32_t last = -1;
    for (const Task& task : tasks_) {
        first = std::min(first, static_cast<std::int32_t>(task.start));
        last = std::max(last, static_cast<std::int32_t>(task.start));
    }
    parts_.resize(tasks_.size());
    isListed_.assign(tasks_.size(), 0);
    changed_.resize(tasks_.size());
    std::iota(changed_.begin(), changed_.end(), std::size_t{0});
    isChanged_.assign(tasks_.size(), kBoth);
    firstVariable_ = first;
    byVariable_.assign(last < first ? 0 : static_cast<std::size_t>(last - first) + 1, kNobody);
    for (std::size_t i = 0; i < tasks_.size(); ++i) {
        byVariable_[static_cast<std::size_t>(static_cast<std::int32_t>(tasks_[i].start) - first)] = i;
    }
}

void Timetable::post(Solver& solver, std::vector<Task> tasks, std::vector<Step> capacity, Literal active) {
    auto owned = std::make_unique<Timetable>(std::move(tasks), std::move(capacity), active);
    Timetable& table = *owned;
    table.id_ = solver.addPropagator(std::move(owned), 1);
    if (active != learn::kTrue) solver.watch(active.half, table.id_, -1);
    for (std::size_t i = 0; i < table.tasks_.size(); ++i) {
        const Task& task = table.tasks_[i];
        const auto tag = 4 * static_cast<std::int32_t>(i);
        solver.watch(learn::plus(task.start), table.id_, tag + kLower);
        solver.watch(learn::minus(task.start), table.id_, tag + kUpper);
        if (task.present != learn::kTrue) solver.watch(task.present.half, table.id_, tag + kBoth);
    }
}

bool Timetable::woken(std::int32_t tag) {
    if (tag >= 0) {
        const auto task = static_cast<std::size_t>(tag / 4);
        if (isChanged_[task] == 0) changed_.push_back(task);
        isChanged_[task] = static_cast<unsigned char>(isChanged_[task] | (tag & kBoth));
    }
    return true;
}

Timetable::Part Timetable::partOf(const Solver& solver, std::size_t index) const {
    const Task& task = tasks_[index];
    const Tick from = solver.upper(task.start);
    const Tick to = solver.lower(task.start) + task.duration;
    return {from, to, from < to && solver.isTrue(task.present)};
}

void Timetable::update(const Solver& solver) {
    bool isStale = epoch_ != solver.epoch();
    if (isStale) {
        epoch_ = solver.epoch();
        unlisted_.clear();
        for (std::size_t i = 0; i < tasks_.size(); ++i) {
            parts_[i] = partOf(solver, i);
            if (parts_[i].isThere && isListed_[i] == 0) unlisted_.push_back(static_cast<std::uint32_t>(i));
        }
    }
    // Where something was undone, it went back to a state in which this had run; only what was woken since may have
    // grown, by its whole part at most.
    grownFrom_ = kNever;
    grownTo_ = kLongAgo;
    for (const std::size_t i : changed_) {
        const Part part = partOf(solver, i);
        if (part.from != parts_[i].from || part.to != parts_[i].to || part.isThere != parts_[i].isThere) {
            isStale = isStale || part.isThere;
            if (part.isThere && !parts_[i].isThere && isListed_[i] == 0) {
                unlisted_.push_back(static_cast<std::uint32_t>(i));
            }
            parts_[i] = part;
        }
        if (!part.isThere) continue;
        grownFrom_ = std::min(grownFrom_, part.from);
        grownTo_ = std::max(grownTo_, part.to);
    }
    if (isStale) buildProfile();
}

/// Drops what is not there any more, takes in what is new, and sorts what is nearly in order from last time.
void Timetable::arrange(std::vector<Edge>& edges, Tick Part::* key) {
    std::size_t kept = 0;
    const auto insert = [&](std::uint32_t task) {
        const Tick time = parts_[task].*key;
        std::size_t j = kept++;
        for (; j > 0 && edges[j - 1].time > time; --j) edges[j] = edges[j - 1];
        edges[j] = {time, task};
    };
    for (std::size_t i = 0; i < edges.size(); ++i) {
        const std::uint32_t task = edges[i].task;
        if (parts_[task].isThere) insert(task);
    }
    edges.resize(kept + unlisted_.size());
    for (const std::uint32_t task : unlisted_) insert(task);
}

void Timetable::buildProfile() {
    for (const Edge& edge : byFrom_) isListed_[edge.task] = parts_[edge.task].isThere ? 1 : 0;
    for (const std::uint32_t task : unlisted_) isListed_[task] = 1;
    arrange(byFrom_, &Part::from);
    arrange(byTo_, &Part::to);
    unlisted_.clear();
    profile_.clear();
    most_ = std::numeric_limits<int>::min();
    std::size_t from = 0;
    std::size_t to = 0;
    std::size_t step = 0;
    int used = 0;
    Tick time = kLongAgo;
    const auto close = [&](Tick until) {
        if (until <= time) return;
        const int capacity = capacity_[step].capacity;
        if (used > 0 || capacity_.size() > 1) {
            profile_.push_back({time, until, used, capacity});
            most_ = std::max(most_, used - capacity);
        }
        time = until;
    };
    while (to < byTo_.size() || step + 1 < capacity_.size()) {
        Tick until = kNever;
        if (from < byFrom_.size()) until = byFrom_[from].time;
        if (to < byTo_.size()) until = std::min(until, byTo_[to].time);
        if (step + 1 < capacity_.size()) until = std::min(until, capacity_[step + 1].from);
        close(until);
        for (; from < byFrom_.size() && byFrom_[from].time == until; ++from) used += tasks_[byFrom_[from].task].demand;
        for (; to < byTo_.size() && byTo_[to].time == until; ++to) used -= tasks_[byTo_[to].task].demand;
        if (step + 1 < capacity_.size() && capacity_[step + 1].from == until) ++step;
    }
    close(kNever);
}

bool Timetable::propagate(Solver& solver) {
    if (!solver.isTrue(active_)) return true;
    update(solver);
    solver.addWork(tasks_.size() / 16 + 1);
    if (most_ > 0) {
        for (const Stretch& stretch : profile_) {
            if (stretch.used > stretch.capacity) return overloaded(solver, stretch);
        }
    }
    bool isKept = true;
    for (std::size_t i = 0; i < tasks_.size() && isKept; ++i) {
        const Task& task = tasks_[i];
        if (most_ + task.demand <= 0) continue;
        const Tick earliest = solver.lower(task.start);
        const Tick latest = solver.upper(task.start);
        // From either side: its own bound, or the profile where it would run at that bound.
        const bool isLater =
            (isChanged_[i] & kLower) != 0 || (earliest < grownTo_ && grownFrom_ < earliest + task.duration);
        const bool isEarlier =
            (isChanged_[i] & kUpper) != 0 || (latest < grownTo_ && grownFrom_ < latest + task.duration);
        if (!isLater && !isEarlier) continue;
        if (solver.isFalse(task.present)) continue;
        if (earliest == latest && solver.isTrue(task.present)) continue; // it is in the profile, which holds
        isKept = (!isLater || pushLater(solver, i)) && (!isEarlier || pushEarlier(solver, i));
    }
    for (const std::size_t i : changed_) isChanged_[i] = 0;
    changed_.clear();
    return isKept;
}

bool Timetable::overloaded(Solver& solver, const Stretch& stretch) {
    const Tick time = stretch.from + (stretch.to - stretch.from) / 2;
    std::vector<Literal> premises;
    [[maybe_unused]] const bool isOver = cover(solver, kNobody, time, stretch.capacity, solver.position(), premises);
    assert(isOver);
    return solver.fail(premises);
}

bool Timetable::pushLater(Solver& solver, std::size_t index) {
    const Task& task = tasks_[index];
    Tick earliest = solver.lower(task.start);
    // Its own part of the profile, as it was built.
    const bool isIn = solver.isTrue(task.present);
    const Tick ownFrom = isIn ? solver.upper(task.start) : kNever;
    const Tick ownTo = isIn ? earliest + task.duration : kNever;
    auto stretch = std::upper_bound(profile_.begin(), profile_.end(), earliest,
                                    [](Tick time, const Stretch& one) { return time < one.to; });
    for (; stretch != profile_.end() && stretch->from < earliest + task.duration; ++stretch) {
        if (stretch->used + task.demand <= stretch->capacity) continue;
        if (stretch->from >= ownFrom && stretch->to <= ownTo) continue;
        while (earliest < stretch->to && stretch->from < earliest + task.duration) {
            const Tick time = std::min(stretch->to, earliest + task.duration) - 1;
            if (!solver.infer(atLeast(task.start, time + 1), id_, static_cast<std::uint32_t>(time))) return false;
            if (solver.lower(task.start) <= time) return true; // it turned out absent
            earliest = solver.lower(task.start);
        }
    }
    return true;
}

bool Timetable::pushEarlier(Solver& solver, std::size_t index) {
    const Task& task = tasks_[index];
    if (solver.isFalse(task.present)) return true;
    Tick latest = solver.upper(task.start);
    const bool isIn = solver.isTrue(task.present);
    // Built before pushLater; the part it had then is within what it has now.
    const Tick ownFrom = isIn ? latest : kNever;
    const Tick ownTo = isIn ? solver.lower(task.start) + task.duration : kNever;
    auto stretch = std::lower_bound(profile_.begin(), profile_.end(), latest + task.duration,
                                    [](const Stretch& one, Tick time) { return one.from < time; });
    while (stretch != profile_.begin()) {
        --stretch;
        if (stretch->to <= latest) break;
        if (stretch->used + task.demand <= stretch->capacity) continue;
        if (stretch->from >= ownFrom && stretch->to <= ownTo) continue;
        while (stretch->from < latest + task.duration && latest < stretch->to) {
            const Tick time = std::max(stretch->from, latest);
            if (!solver.infer(atMost(task.start, time - task.duration), id_, static_cast<std::uint32_t>(time))) {
                return false;
            }
            if (solver.upper(task.start) > time - task.duration) return true;
            latest = solver.upper(task.start);
        }
    }
    return true;
}

bool Timetable::cover(const Solver& solver, std::size_t without, Tick time, int spare, std::int32_t position,
                      std::vector<Literal>& premises) const {
    premises.clear();
    covers_.clear();
    if (active_ != learn::kTrue) premises.push_back(active_);
    std::int64_t used = 0;
    for (std::size_t i = 0; i < tasks_.size(); ++i) {
        if (i == without) continue;
        const Task& task = tasks_[i];
        const Literal begun = atMost(task.start, time);
        const Literal lasting = atLeast(task.start, time - task.duration + 1);
        if (!solver.isTrue(begun) || !solver.isTrue(lasting) || !solver.isTrue(task.present)) continue;
        const std::int32_t since =
            std::max({solver.positionOf(begun), solver.positionOf(lasting), solver.positionOf(task.present)});
        if (since >= position) continue;
        covers_.push_back({since, i});
        used += task.demand;
    }
    if (used <= spare) return false;
    // What came last goes first, as far as the slack allows.
    std::sort(covers_.begin(), covers_.end(), [](const Cover& x, const Cover& y) {
        return x.position != y.position ? x.position > y.position : x.task < y.task;
    });
    for (const Cover& one : covers_) {
        const Task& task = tasks_[one.task];
        if (used - task.demand > spare) {
            used -= task.demand;
            continue;
        }
        if (one.position < 0) break; // all that is left holds at the root
        premises.push_back(atMost(task.start, time));
        premises.push_back(atLeast(task.start, time - task.duration + 1));
        if (task.present != learn::kTrue) premises.push_back(task.present);
    }
    return true;
}

void Timetable::explain(const Solver& solver, Literal consequence, std::uint32_t data, std::int32_t position,
                        std::vector<Literal>& premises) {
    const auto variable = static_cast<std::int32_t>(learn::variableOf(consequence.half));
    const std::size_t index = byVariable_[static_cast<std::size_t>(variable - firstVariable_)];
    const Task& task = tasks_[index];
    const auto told = static_cast<Tick>(data);
    const bool isLower = consequence.half == learn::plus(task.start);
    // A time nearer to what is asked asks less of the task itself.
    const Tick nearest = isLower ? consequence.bound - 1 : -consequence.bound + task.duration;
    for (const Tick time : {nearest, told}) {
        if (!cover(solver, index, time, capacityAt(capacity_, time) - task.demand, position, premises)) continue;
        premises.push_back(isLower ? atLeast(task.start, time - task.duration + 1) : atMost(task.start, time));
        return;
    }
    assert(false);
}

} // namespace piewright::schedule
