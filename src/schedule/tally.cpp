#include "schedule/tally.h"

#include "schedule/board.h"

#include <algorithm>
#include <cstdlib>

namespace piewright::schedule {

namespace {

bool has(const std::vector<WorkerIndex>& workers, WorkerIndex worker) {
    return std::find(workers.begin(), workers.end(), worker) != workers.end();
}

void insert(std::vector<Tick>& ticks, Tick tick) {
    ticks.insert(std::upper_bound(ticks.begin(), ticks.end(), tick), tick);
}

void erase(std::vector<Tick>& ticks, Tick tick) { ticks.erase(std::lower_bound(ticks.begin(), ticks.end(), tick)); }

} // namespace

Cost valueAt(const Curve& curve, Tick t) {
    auto next = std::partition_point(curve.pieces.begin(), curve.pieces.end(),
                                     [&](const Curve::Piece& piece) { return piece.from <= t; });
    const Curve::Piece& piece = next == curve.pieces.begin() ? *next : *(next - 1);
    return piece.value + piece.perTick * (Cost{t} - piece.from);
}

Tally::Tally(const Model& model)
    : model_(model), costs_(model.problem.costs), times_(model.problem.activities.size()),
      before_(model.problem.activities.size()), handOvers_(model.problem.activities.size()),
      extentsOf_(model.problem.resources.size()), extentsBy_(model.problem.workers.size()),
      loadsOf_(model.problem.resources.size()), workBy_(model.problem.workers.size()), extents_(costs_.extents.size()),
      worked_(model.problem.workers.size(), 0) {
    for (const TimeCost& cost : costs_.times) times_[at(cost.activity)].push_back(&cost);
    for (const Before& cost : costs_.before) before_[at(cost.activity)].push_back(&cost);
    for (const HandOver& cost : costs_.handOvers) {
        if (cost.from == cost.to) continue;
        handOvers_[at(cost.from)].push_back(&cost);
        handOvers_[at(cost.to)].push_back(&cost);
    }
    for (std::size_t i = 0; i < costs_.extents.size(); ++i) {
        const ExtentCost& cost = costs_.extents[i];
        if (cost.resource) {
            extentsOf_[at(*cost.resource)].push_back(i);
        } else if (cost.worker) {
            extentsBy_[at(*cost.worker)].push_back(i);
        } else {
            everywhere_.push_back(i);
        }
    }
    for (std::size_t i = 0; i < costs_.loads.size(); ++i) {
        loadsOf_[at(costs_.loads[i].resource)].push_back(i);
        levels_.emplace_back(Cumulative{});
    }
    for (std::size_t i = 0; i < costs_.work.size(); ++i) {
        workBy_[at(costs_.work[i].worker)].push_back(i);
        total_ += valueAt(costs_.work[i].curve, 0);
    }
    isAnyPersonal_ =
        !costs_.work.empty() || std::any_of(costs_.extents.begin(), costs_.extents.end(),
                                            [](const ExtentCost& cost) { return cost.worker.has_value(); });
    isOfExtents_ = costs_.times.empty() && costs_.loads.empty() && costs_.work.empty() && costs_.handOvers.empty() &&
                   costs_.before.empty();
    for (const Activity& activity : model.problem.activities) {
        isOfExtents_ = isOfExtents_ && activity.absentCost == 0;
        for (const Mode& mode : activity.modes) isOfExtents_ = isOfExtents_ && mode.cost == 0;
    }
    for (const Resource& resource : model.problem.resources) {
        isOfExtents_ = isOfExtents_ && (!resource.machine ||
                                        (resource.machine->firstCost.empty() && resource.machine->setupCost.empty()));
    }
    isIdle_ = isOfExtents_ && costs_.extents.empty();
}

Cost Tally::ofExtent(std::size_t extent) const {
    const Times& times = extents_[extent];
    if (times.starts.empty()) return 0;
    const ExtentCost& cost = costs_.extents[extent];
    switch (cost.of) {
    case ExtentCost::Of::First:
        return valueAt(cost.curve, times.starts.front());
    case ExtentCost::Of::Last:
        return valueAt(cost.curve, times.ends.back());
    case ExtentCost::Of::Length:
        break;
    }
    return valueAt(cost.curve, times.ends.back() - times.starts.front());
}

void Tally::changeExtent(std::size_t extent, Tick start, Tick end, bool isComing) {
    Times& times = extents_[extent];
    if (isComing) {
        insert(times.starts, start);
        insert(times.ends, end);
    } else {
        erase(times.starts, start);
        erase(times.ends, end);
    }
}

template <class Visit> void Tally::forExtents(const Placed& placed, const Mode& mode, Visit visit) {
    touched_.assign(everywhere_.begin(), everywhere_.end());
    const auto add = [&](const std::vector<std::size_t>& extents) {
        for (const std::size_t extent : extents) {
            if (std::find(touched_.begin(), touched_.end(), extent) == touched_.end()) touched_.push_back(extent);
        }
    };
    for (const Use& use : mode.uses) add(extentsOf_[at(use.resource)]);
    for (const Flow& flow : mode.flows) add(extentsOf_[at(flow.resource)]);
    for (const WorkerIndex worker : placed.workers) add(extentsBy_[at(worker)]);
    for (const std::size_t extent : touched_) visit(extent);
}

Cost Tally::put(const Board& board, std::size_t activity, const Placed& placed) {
    return change(board, activity, placed, true);
}

Cost Tally::take(const Board& board, std::size_t activity, const Placed& placed) {
    return change(board, activity, placed, false);
}

Cost Tally::change(const Board& board, std::size_t activity, const Placed& placed, bool isComing) {
    board_ = &board;
    if (isIdle_) return 0;
    const Mode& mode = model_.mode(activity, placed.mode);
    // What the activity brings with it, and what it changes for others; first those that are the same both ways.
    Cost brings = mode.cost + ofTime(activity, placed.start, placed.end) + ofBefore(activity, &placed) +
                  ofHandOvers(board, activity, placed) + ofSetups(board, mode, placed);
    for (const Use& use : mode.uses) {
        for (const std::size_t load : loadsOf_[at(use.resource)]) {
            const LoadCost& cost = costs_.loads[load];
            const Tick from = std::max(cost.span.from, placed.start);
            const Tick to = std::min(cost.span.to, placed.end);
            const Tick sign = isComing ? 1 : -1;
            if (from >= to || use.amount == 0) continue;
            if (!isComing) levels_[load].take(from, to, use.amount);
            Cost beyond = 0;
            levels_[load].forSteps(from, to, [&](Tick stepFrom, Tick stepTo, std::int64_t taken) {
                const std::int64_t more = std::max<std::int64_t>(0, taken + use.amount - cost.above) -
                                          std::max<std::int64_t>(0, taken - cost.above);
                beyond += more * (Cost{stepTo} - stepFrom);
            });
            if (sign > 0) levels_[load].put(from, to, use.amount);
            brings += beyond * cost.perTick;
        }
    }
    Cost grows = isComing ? brings : -brings;
    if (!costs_.extents.empty()) {
        forExtents(placed, mode, [&](std::size_t extent) {
            const Cost before = ofExtent(extent);
            changeExtent(extent, placed.start, placed.end, isComing);
            grows += ofExtent(extent) - before;
        });
    }
    for (const WorkerIndex worker : placed.workers) {
        const std::int64_t now = worked_[at(worker)];
        const std::int64_t then = now + (isComing ? mode.duration : -mode.duration);
        worked_[at(worker)] = then;
        for (const std::size_t work : workBy_[at(worker)]) {
            grows += valueAt(costs_.work[work].curve, static_cast<Tick>(then)) -
                     valueAt(costs_.work[work].curve, static_cast<Tick>(now));
        }
    }
    total_ += grows;
    return grows;
}

Cost Tally::leaveOut(std::size_t activity) {
    const Cost grows = model_.problem.activities[activity].absentCost + ofBefore(activity, nullptr);
    total_ += grows;
    return grows;
}

Cost Tally::takeUp(std::size_t activity) {
    const Cost grows = -(model_.problem.activities[activity].absentCost + ofBefore(activity, nullptr));
    total_ += grows;
    return grows;
}

Cost Tally::ofTime(std::size_t activity, Tick start, Tick end) const {
    Cost cost = 0;
    for (const TimeCost* const time : times_[activity]) {
        cost += valueAt(time->curve, time->point == Point::Start ? start : end);
    }
    for (const Before* const before : before_[activity]) {
        if (before->mode != kAbsent) cost += before->perTick * std::abs(Cost{start} - before->start);
    }
    return cost;
}

/// Without what depends on the time alone.
Cost Tally::ofBefore(std::size_t activity, const Placed* placed) const {
    Cost cost = 0;
    for (const Before* const before : before_[activity]) {
        const bool wasDone = before->mode != kAbsent;
        if (placed == nullptr || !wasDone) {
            if ((placed != nullptr) != wasDone) cost += before->otherMode;
            continue;
        }
        if (placed->mode != before->mode) cost += before->otherMode;
        for (const WorkerIndex worker : placed->workers) {
            if (!has(before->workers, worker)) cost += before->perPerson;
        }
    }
    return cost;
}

Cost Tally::ofHandOvers(const Board& board, std::size_t activity, const Placed& placed) const {
    Cost cost = 0;
    for (const HandOver* const handOver : handOvers_[activity]) {
        const bool isFrom = at(handOver->from) == activity;
        const std::size_t other = at(isFrom ? handOver->to : handOver->from);
        if (!board.isPlaced(other)) continue;
        const std::vector<WorkerIndex>& theirs = board.placed(other).workers;
        const std::vector<WorkerIndex>& before = isFrom ? placed.workers : theirs;
        for (const WorkerIndex worker : isFrom ? theirs : placed.workers) {
            if (!has(before, worker)) cost += handOver->cost;
        }
    }
    return cost;
}

Cost Tally::ofSetups(const Board& board, const Mode& mode, const Placed& placed) const {
    Cost cost = 0;
    for (const Use& use : mode.uses) {
        const std::optional<Machine>& machine = model_.problem.resources[at(use.resource)].machine;
        if (!machine || (machine->firstCost.empty() && machine->setupCost.empty())) continue;
        const Line::Neighbours near = board.line(use.resource).neighbours(placed.start);
        if (near.isThere) continue; // of its load
        const auto between = [&](const Line::Booking* before, FamilyIndex family) {
            if (before == nullptr) return machine->firstCost.empty() ? Cost{0} : machine->firstCost[at(family)];
            return machine->setupCost.empty() ? Cost{0} : machine->setupCost[at(before->family)][at(family)];
        };
        cost += between(near.before, use.family);
        if (near.after != nullptr) {
            const Line::Booking own{placed.start, placed.end, use.family, 0, 0};
            cost += between(&own, near.after->family) - between(near.before, near.after->family);
        }
    }
    return cost;
}

Cost Tally::ofPerson(std::size_t activity, const Placed& placed, WorkerIndex worker) const {
    Cost cost = 0;
    for (const Before* const before : before_[activity]) {
        if (before->mode != kAbsent && !has(before->workers, worker)) cost += before->perPerson;
    }
    if (board_ != nullptr) {
        for (const HandOver* const handOver : handOvers_[activity]) {
            const bool isFrom = at(handOver->from) == activity;
            const std::size_t other = at(isFrom ? handOver->to : handOver->from);
            if (board_->isPlaced(other) && !has(board_->placed(other).workers, worker)) cost += handOver->cost;
        }
    }
    if (!isAnyPersonal_) return cost;
    const Mode& mode = model_.mode(activity, placed.mode);
    for (const std::size_t work : workBy_[at(worker)]) {
        const std::int64_t now = worked_[at(worker)];
        const Curve& curve = costs_.work[work].curve;
        cost += valueAt(curve, static_cast<Tick>(now + mode.duration)) - valueAt(curve, static_cast<Tick>(now));
    }
    for (const std::size_t extent : extentsBy_[at(worker)]) {
        const Times& times = extents_[extent];
        const Tick first = times.starts.empty() ? placed.start : std::min(placed.start, times.starts.front());
        const Tick last = times.ends.empty() ? placed.end : std::max(placed.end, times.ends.back());
        const ExtentCost& of = costs_.extents[extent];
        const Tick then = of.of == ExtentCost::Of::First ? first : of.of == ExtentCost::Of::Last ? last : last - first;
        cost += valueAt(of.curve, then) - ofExtent(extent);
    }
    return cost;
}

bool Tally::caresForPeople(std::size_t activity) const {
    return isAnyPersonal_ || !handOvers_[activity].empty() || !before_[activity].empty();
}

void Tally::addCorners(std::size_t activity, Tick duration, std::vector<Tick>& starts) const {
    for (const TimeCost* const time : times_[activity]) {
        const Tick back = time->point == Point::Start ? 0 : duration;
        for (const Curve::Piece& piece : time->curve.pieces) {
            starts.push_back(piece.from - back);
            starts.push_back(piece.from - back - 1);
        }
    }
    for (const Before* const before : before_[activity]) {
        if (before->mode != kAbsent) starts.push_back(before->start);
    }
}

} // namespace piewright::schedule
