#include "schedule/faults.h"

#include <algorithm>

namespace piewright::schedule {

namespace {

using std::to_string;

constexpr Cost kTooMuch = std::numeric_limits<Cost>::max();

/// Sums and products that stop at kTooMuch.
Cost plus(Cost x, Cost y) {
    Cost sum = 0;
    return __builtin_add_overflow(x, y, &sum) ? kTooMuch : sum;
}
Cost times(Cost x, Cost y) {
    Cost product = 0;
    return __builtin_mul_overflow(x, y, &product) ? kTooMuch : product;
}
Cost size(Cost cost) { return cost == std::numeric_limits<Cost>::min() ? kTooMuch : cost < 0 ? -cost : cost; }

class CostInspector {
  public:
    explicit CostInspector(const Problem& problem) : problem_(problem) {}

    std::vector<std::string> inspect() && {
        inspectTimes();
        inspectLoads();
        inspectPeople();
        inspectBefore();
        if (faults_.empty()) {
            inspectSum();
        }
        return std::move(faults_);
    }

  private:
    void fault(std::string sentence) { faults_.push_back(std::move(sentence)); }

    template <class Index> bool inspectIndex(Index index, std::size_t there, const std::string& what) {
        const bool isIn = static_cast<std::int32_t>(index) >= 0 && at(index) < there;
        if (!isIn) {
            fault(what + " number " + to_string(static_cast<std::int32_t>(index)) + "; there are " + to_string(there));
        }
        return isIn;
    }

    void inspectSign(Cost cost, const std::string& what) {
        if (cost < 0) {
            fault(what + " is " + to_string(cost) + ", below 0");
        }
    }

    void inspectCurve(const Curve& curve, const std::string& whose) {
        if (curve.pieces.empty()) {
            fault(whose + " has a curve without pieces; it must have at least one");
        }
        for (std::size_t i = 0; i < curve.pieces.size(); ++i) {
            const Tick from = curve.pieces[i].from;
            if (from < -kNever || from > kNever) {
                fault(whose + " has a piece from " + to_string(from) + ", beyond the latest time there is, " +
                      to_string(kNever));
            }
            if (i > 0 && from <= curve.pieces[i - 1].from) {
                fault(whose + " has a piece from " + to_string(from) + " after one from " +
                      to_string(curve.pieces[i - 1].from) + "; they must ascend");
            }
        }
    }

    void inspectTimes() {
        for (std::size_t i = 0; i < problem_.costs.times.size(); ++i) {
            const TimeCost& cost = problem_.costs.times[i];
            const std::string name = "time cost " + to_string(i);
            inspectIndex(cost.activity, problem_.activities.size(), name + " names activity");
            inspectCurve(cost.curve, name);
        }
        for (std::size_t i = 0; i < problem_.costs.extents.size(); ++i) {
            const ExtentCost& cost = problem_.costs.extents[i];
            const std::string name = "extent cost " + to_string(i);
            if (cost.resource && cost.worker) {
                fault(name + " names a resource and a worker; at most one of them");
            }
            if (cost.resource) {
                inspectIndex(*cost.resource, problem_.resources.size(), name + " names resource");
            }
            if (cost.worker) {
                inspectIndex(*cost.worker, problem_.workers.size(), name + " names worker");
            }
            inspectCurve(cost.curve, name);
        }
    }

    void inspectLoads() {
        for (std::size_t i = 0; i < problem_.costs.loads.size(); ++i) {
            const LoadCost& cost = problem_.costs.loads[i];
            const std::string name = "load cost " + to_string(i);
            if (inspectIndex(cost.resource, problem_.resources.size(), name + " names resource") &&
                !problem_.resources[at(cost.resource)].cumulative) {
                fault(name + " names \"" + problem_.resources[at(cost.resource)].name + "\", which is not cumulative");
            }
            if (cost.span.from >= cost.span.to || cost.span.from < -kNever || cost.span.to > kNever) {
                fault(name + " has a span from " + to_string(cost.span.from) + " to " + to_string(cost.span.to) +
                      "; it must hold some time, none beyond " + to_string(kNever));
            }
            inspectSign(cost.above, "what " + name + " leaves free");
            inspectSign(cost.perTick, name + " per tick");
        }
    }

    void inspectPeople() {
        for (std::size_t i = 0; i < problem_.costs.work.size(); ++i) {
            const std::string name = "work cost " + to_string(i);
            inspectIndex(problem_.costs.work[i].worker, problem_.workers.size(), name + " names worker");
            inspectCurve(problem_.costs.work[i].curve, name);
        }
        for (std::size_t i = 0; i < problem_.costs.handOvers.size(); ++i) {
            const std::string name = "hand-over " + to_string(i);
            for (const ActivityIndex a : {problem_.costs.handOvers[i].from, problem_.costs.handOvers[i].to}) {
                inspectIndex(a, problem_.activities.size(), name + " names activity");
            }
            inspectSign(problem_.costs.handOvers[i].cost, "cost of " + name);
        }
    }

    void inspectBefore() {
        for (std::size_t i = 0; i < problem_.costs.before.size(); ++i) {
            const Before& before = problem_.costs.before[i];
            const std::string name = "previous place " + to_string(i);
            if (inspectIndex(before.activity, problem_.activities.size(), name + " names activity")) {
                const Activity& activity = problem_.activities[at(before.activity)];
                const int modes = static_cast<int>(activity.modes.size());
                if (before.mode < kAbsent || before.mode >= modes) {
                    fault(name + " of \"" + activity.name + "\" names mode " + to_string(before.mode) + "; there are " +
                          to_string(modes));
                }
            }
            if (before.start < -kNever || before.start > kNever) {
                fault(name + " has a start of " + to_string(before.start) + ", beyond the latest time there is, " +
                      to_string(kNever));
            }
            for (const WorkerIndex worker : before.workers) {
                inspectIndex(worker, problem_.workers.size(), name + " names worker");
            }
            inspectSign(before.perTick, "cost per tick of " + name);
            inspectSign(before.otherMode, "cost of another mode of " + name);
            inspectSign(before.perPerson, "cost per person of " + name);
        }
    }

    /// Largest size within the horizon: at the ends of a piece.
    [[nodiscard]] Cost worst(const Curve& curve) const {
        Cost most = 0;
        for (std::size_t i = 0; i < curve.pieces.size(); ++i) {
            const Curve::Piece& piece = curve.pieces[i];
            const Tick from = i == 0 ? 0 : std::max(piece.from, 0);
            const Tick to = i + 1 == curve.pieces.size() ? problem_.horizon
                                                         : std::min(curve.pieces[i + 1].from - 1, problem_.horizon);
            if (from > to) {
                continue;
            }
            for (const Tick t : {from, to}) {
                const Cost slope = times(size(piece.perTick), size(Cost{t} - piece.from));
                const bool isUp = (piece.perTick > 0) == (t > piece.from);
                const bool isAlike = isUp == (piece.value >= 0);
                most =
                    std::max(most, isAlike ? plus(size(piece.value), slope)
                                           : std::max(size(piece.value), slope) - std::min(size(piece.value), slope));
            }
        }
        return most;
    }

    [[nodiscard]] Cost mostPeople(ActivityIndex activity) const {
        Cost most = 0;
        for (const Mode& mode : problem_.activities[at(activity)].modes) {
            Cost people = static_cast<Cost>(mode.team.size());
            for (const SkillNeed& need : mode.needs) {
                people += need.count;
            }
            most = std::max(most, people);
        }
        return most;
    }

    [[nodiscard]] Cost worstOfMachine(std::size_t r) const {
        const Machine& machine = *problem_.resources[r].machine;
        Cost dearest = 0;
        for (std::size_t f = 0; f < machine.firstCost.size(); ++f) {
            dearest = std::max(dearest, machine.firstCost[f]);
            for (const Cost cost : machine.setupCost[f]) {
                dearest = std::max(dearest, cost);
            }
        }
        Cost users = 0;
        for (const Activity& activity : problem_.activities) {
            users += std::any_of(activity.modes.begin(), activity.modes.end(),
                                 [&](const Mode& mode) {
                                     return std::any_of(mode.uses.begin(), mode.uses.end(),
                                                        [&](const Use& use) { return at(use.resource) == r; });
                                 })
                         ? 1
                         : 0;
        }
        return times(dearest, users);
    }

    [[nodiscard]] Cost worstOfLoad(const LoadCost& cost) const {
        Cost used = 0;
        for (const Activity& activity : problem_.activities) {
            Cost most = 0;
            for (const Mode& mode : activity.modes) {
                for (const Use& use : mode.uses) {
                    if (use.resource == cost.resource) {
                        most = std::max<Cost>(most, use.amount);
                    }
                }
            }
            used += most;
        }
        used = std::min<Cost>(used, problem_.resources[at(cost.resource)].cumulative->capacity);
        const Cost ticks = Cost{std::min(cost.span.to, problem_.horizon)} - std::max(cost.span.from, 0);
        return times(cost.perTick, times(std::max<Cost>(ticks, 0), std::max<Cost>(used - cost.above, 0)));
    }

    void inspectSum() {
        Cost sum = 0;
        const auto add = [&](Cost cost) { sum = plus(sum, cost); };
        for (const Activity& activity : problem_.activities) {
            Cost most = activity.isOptional ? size(activity.absentCost) : 0;
            for (const Mode& mode : activity.modes) {
                most = std::max(most, size(mode.cost));
            }
            add(most);
        }
        for (std::size_t r = 0; r < problem_.resources.size(); ++r) {
            if (problem_.resources[r].machine) {
                add(worstOfMachine(r));
            }
        }
        const Costs& costs = problem_.costs;
        for (const TimeCost& cost : costs.times) {
            add(worst(cost.curve));
        }
        for (const ExtentCost& cost : costs.extents) {
            add(worst(cost.curve));
        }
        for (const LoadCost& cost : costs.loads) {
            add(worstOfLoad(cost));
        }
        for (const WorkCost& cost : costs.work) {
            add(worst(cost.curve));
        }
        for (const HandOver& handOver : costs.handOvers) {
            add(times(handOver.cost, mostPeople(handOver.to)));
        }
        for (const Before& before : costs.before) {
            const Cost ticks = std::max(size(before.start), size(Cost{problem_.horizon} - before.start));
            add(times(before.perTick, ticks));
            add(before.otherMode);
            add(times(before.perPerson, mostPeople(before.activity)));
        }
        if (sum > kMostCost) {
            fault("the costs may come to " + (sum == kTooMuch ? "a sum beyond counting" : to_string(sum)) + ", above " +
                  to_string(kMostCost) + "; a coarser unit helps");
        }
    }

    const Problem& problem_;
    std::vector<std::string> faults_;
};

} // namespace

std::vector<std::string> faultsInCosts(const Problem& problem) { return CostInspector{problem}.inspect(); }

} // namespace piewright::schedule
