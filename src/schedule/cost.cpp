#include "schedule/cost.h"

#include <algorithm>
#include <map>

namespace piewright::schedule {

namespace {

class Sum {
  public:
    Sum(const Problem& problem, const Schedule& schedule) : problem_(problem), placed_(schedule.placed) {}

    Cost add() && {
        for (std::size_t a = 0; a < placed_.size(); ++a) {
            sum_ += isDone(a) ? mode(a).cost : problem_.activities[a].absentCost;
        }
        for (std::size_t r = 0; r < problem_.resources.size(); ++r) {
            addSetups(r);
        }
        for (const TimeCost& cost : problem_.costs.times) {
            const std::size_t a = at(cost.activity);
            if (isDone(a)) {
                sum_ += valueOf(cost.curve, cost.point == Point::Start ? placed_[a].start : placed_[a].end);
            }
        }
        for (const ExtentCost& cost : problem_.costs.extents) {
            addExtent(cost);
        }
        for (const LoadCost& cost : problem_.costs.loads) {
            addLoad(cost);
        }
        for (const WorkCost& cost : problem_.costs.work) {
            Tick ticks = 0;
            for (std::size_t a = 0; a < placed_.size(); ++a) {
                ticks += takesPart(a, cost.worker) ? mode(a).duration : 0;
            }
            sum_ += valueOf(cost.curve, ticks);
        }
        for (const HandOver& handOver : problem_.costs.handOvers) {
            addHandOver(handOver);
        }
        for (const Before& before : problem_.costs.before) {
            addDistance(before);
        }
        return sum_;
    }

  private:
    [[nodiscard]] bool isDone(std::size_t a) const { return placed_[a].mode != kAbsent; }
    [[nodiscard]] const Mode& mode(std::size_t a) const {
        return problem_.activities[a].modes[static_cast<std::size_t>(placed_[a].mode)];
    }
    [[nodiscard]] bool takesPart(std::size_t a, WorkerIndex worker) const {
        return std::find(placed_[a].workers.begin(), placed_[a].workers.end(), worker) != placed_[a].workers.end();
    }

    void addSetups(std::size_t r) {
        if (!problem_.resources[r].machine || problem_.resources[r].machine->firstCost.empty()) {
            return;
        }
        const Machine& machine = *problem_.resources[r].machine;
        std::map<Tick, FamilyIndex> loads; // by start: no two loads start together, and each is of one family
        for (std::size_t a = 0; a < placed_.size(); ++a) {
            if (!isDone(a)) {
                continue;
            }
            for (const Use& use : mode(a).uses) {
                if (at(use.resource) == r) {
                    loads.emplace(placed_[a].start, use.family);
                }
            }
        }
        const FamilyIndex* last = nullptr;
        for (const auto& [start, family] : loads) {
            sum_ += last == nullptr ? machine.firstCost[at(family)] : machine.setupCost[at(*last)][at(family)];
            last = &family;
        }
    }

    [[nodiscard]] bool isOf(const ExtentCost& cost, std::size_t a) const {
        if (cost.worker) {
            return takesPart(a, *cost.worker);
        }
        const auto isIt = [&](const auto& one) { return one.resource == *cost.resource; };
        return !cost.resource || std::any_of(mode(a).uses.begin(), mode(a).uses.end(), isIt) ||
               std::any_of(mode(a).flows.begin(), mode(a).flows.end(), isIt);
    }

    void addExtent(const ExtentCost& cost) {
        bool isAny = false;
        Tick first = kNever;
        Tick last = 0;
        for (std::size_t a = 0; a < placed_.size(); ++a) {
            if (isDone(a) && isOf(cost, a)) {
                isAny = true;
                first = std::min(first, placed_[a].start);
                last = std::max(last, placed_[a].end);
            }
        }
        if (isAny) {
            sum_ += valueOf(cost.curve, cost.of == ExtentCost::Of::First  ? first
                                        : cost.of == ExtentCost::Of::Last ? last
                                                                          : last - first);
        }
    }

    void addLoad(const LoadCost& cost) {
        std::map<Tick, Cost> changes; // of what is used, by time
        for (std::size_t a = 0; a < placed_.size(); ++a) {
            if (!isDone(a)) {
                continue;
            }
            for (const Use& use : mode(a).uses) {
                if (use.resource == cost.resource) {
                    changes[std::clamp(placed_[a].start, cost.span.from, cost.span.to)] += use.amount;
                    changes[std::clamp(placed_[a].end, cost.span.from, cost.span.to)] -= use.amount;
                }
            }
        }
        Cost used = 0;
        Tick since = cost.span.from;
        for (const auto& [time, change] : changes) {
            sum_ += std::max<Cost>(used - cost.above, 0) * (time - since) * cost.perTick;
            since = time;
            used += change;
        }
    }

    void addHandOver(const HandOver& handOver) {
        if (!isDone(at(handOver.from)) || !isDone(at(handOver.to))) {
            return;
        }
        for (const WorkerIndex worker : placed_[at(handOver.to)].workers) {
            sum_ += takesPart(at(handOver.from), worker) ? 0 : handOver.cost;
        }
    }

    void addDistance(const Before& before) {
        const std::size_t a = at(before.activity);
        sum_ += placed_[a].mode != before.mode ? before.otherMode : 0;
        if (!isDone(a) || before.mode == kAbsent) {
            return;
        }
        const Cost moved = Cost{placed_[a].start} - before.start;
        sum_ += (moved < 0 ? -moved : moved) * before.perTick;
        for (const WorkerIndex worker : placed_[a].workers) {
            const bool isNew = std::find(before.workers.begin(), before.workers.end(), worker) == before.workers.end();
            sum_ += isNew ? before.perPerson : 0;
        }
    }

    const Problem& problem_;
    const std::vector<Placed>& placed_;
    Cost sum_ = 0;
};

} // namespace

Cost valueOf(const Curve& curve, Tick t) {
    const Curve::Piece* at = curve.pieces.data();
    for (const Curve::Piece& piece : curve.pieces) {
        if (piece.from <= t) {
            at = &piece;
        }
    }
    return at->value + at->perTick * (Cost{t} - at->from);
}

Cost costOf(const Problem& problem, const Schedule& schedule) { return Sum{problem, schedule}.add(); }

Costs makespan() {
    Costs costs;
    costs.extents.push_back({ExtentCost::Of::Last, {}, {}, {{{0, 0, 1}}}});
    return costs;
}

} // namespace piewright::schedule
