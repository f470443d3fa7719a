// The naive twin's own view of what a schedule costs: tick by tick. Shares no code with schedule/cost.
#pragma once

#include "schedule/problem.h"

#include <algorithm>
#include <set>

namespace piewright::schedule {

inline Cost along(const Curve& curve, Tick t) {
    std::size_t piece = curve.pieces.size() - 1;
    while (piece > 0 && t < curve.pieces[piece].from) {
        --piece;
    }
    return curve.pieces[piece].value + (t - curve.pieces[piece].from) * curve.pieces[piece].perTick;
}

class TwinCost {
  public:
    TwinCost(const Problem& problem, const Schedule& schedule) : p_(problem), s_(schedule) {}

    Cost sum() const {
        Cost sum = 0;
        for (std::size_t a = 0; a < s_.placed.size(); ++a) {
            sum += isDone(a) ? mode(a).cost : p_.activities[a].absentCost;
        }
        for (std::size_t r = 0; r < p_.resources.size(); ++r) {
            if (p_.resources[r].machine && !p_.resources[r].machine->firstCost.empty()) {
                sum += setups(*p_.resources[r].machine, r);
            }
        }
        for (const TimeCost& cost : p_.costs.times) {
            const Placed& placed = s_.placed[at(cost.activity)];
            sum += placed.mode == kAbsent ? 0 : along(cost.curve, cost.point == Point::End ? placed.end : placed.start);
        }
        for (const ExtentCost& cost : p_.costs.extents) {
            sum += extent(cost);
        }
        for (const LoadCost& cost : p_.costs.loads) {
            for (Tick tick = std::max(cost.span.from, 0); tick < std::min(cost.span.to, p_.horizon); ++tick) {
                sum += cost.perTick * std::max(0, usedAt(cost.resource, tick) - cost.above);
            }
        }
        for (const WorkCost& cost : p_.costs.work) {
            Tick ticks = 0;
            for (std::size_t a = 0; a < s_.placed.size(); ++a) {
                ticks += people(a).count(cost.worker) > 0 ? mode(a).duration : 0;
            }
            sum += along(cost.curve, ticks);
        }
        for (const HandOver& over : p_.costs.handOvers) {
            if (isDone(at(over.from)) && isDone(at(over.to))) {
                sum += over.cost * notIn(people(at(over.to)), people(at(over.from)));
            }
        }
        for (const Before& before : p_.costs.before) {
            sum += distance(before);
        }
        return sum;
    }

  private:
    bool isDone(std::size_t a) const { return s_.placed[a].mode != kAbsent; }
    const Mode& mode(std::size_t a) const {
        return p_.activities[a].modes[static_cast<std::size_t>(s_.placed[a].mode)];
    }
    std::set<WorkerIndex> people(std::size_t a) const {
        return {s_.placed[a].workers.begin(), s_.placed[a].workers.end()};
    }
    static Cost notIn(const std::set<WorkerIndex>& these, const std::set<WorkerIndex>& those) {
        return std::count_if(these.begin(), these.end(), [&](WorkerIndex w) { return those.count(w) == 0; });
    }

    /// Load after load, tick by tick.
    Cost setups(const Machine& machine, std::size_t r) const {
        Cost sum = 0;
        int last = -1;
        for (Tick tick = 0; tick <= p_.horizon; ++tick) {
            int family = -1;
            for (std::size_t a = 0; a < s_.placed.size(); ++a) {
                if (!isDone(a) || s_.placed[a].start != tick) {
                    continue;
                }
                for (const Use& use : mode(a).uses) {
                    family = at(use.resource) == r ? static_cast<int>(use.family) : family;
                }
            }
            if (family < 0) {
                continue;
            }
            const auto to = static_cast<std::size_t>(family);
            sum += last < 0 ? machine.firstCost[to] : machine.setupCost[static_cast<std::size_t>(last)][to];
            last = family;
        }
        return sum;
    }

    bool counts(const ExtentCost& cost, std::size_t a) const {
        if (!isDone(a)) {
            return false;
        }
        if (cost.worker) {
            return people(a).count(*cost.worker) > 0;
        }
        bool isIn = !cost.resource;
        for (const Use& use : mode(a).uses) {
            isIn = isIn || use.resource == *cost.resource;
        }
        for (const Flow& flow : mode(a).flows) {
            isIn = isIn || flow.resource == *cost.resource;
        }
        return isIn;
    }

    Cost extent(const ExtentCost& cost) const {
        std::set<Tick> starts;
        std::set<Tick> ends;
        for (std::size_t a = 0; a < s_.placed.size(); ++a) {
            if (counts(cost, a)) {
                starts.insert(s_.placed[a].start);
                ends.insert(s_.placed[a].end);
            }
        }
        if (starts.empty()) {
            return 0;
        }
        switch (cost.of) {
        case ExtentCost::Of::First:
            return along(cost.curve, *starts.begin());
        case ExtentCost::Of::Last:
            return along(cost.curve, *ends.rbegin());
        default:
            return along(cost.curve, *ends.rbegin() - *starts.begin());
        }
    }

    int usedAt(ResourceIndex resource, Tick tick) const {
        int used = 0;
        for (std::size_t a = 0; a < s_.placed.size(); ++a) {
            if (!isDone(a) || tick < s_.placed[a].start || tick >= s_.placed[a].end) {
                continue;
            }
            for (const Use& use : mode(a).uses) {
                used += use.resource == resource ? use.amount : 0;
            }
        }
        return used;
    }

    Cost distance(const Before& before) const {
        const std::size_t a = at(before.activity);
        const Placed& now = s_.placed[a];
        if (now.mode == kAbsent || before.mode == kAbsent) {
            return now.mode == before.mode ? 0 : before.otherMode;
        }
        Cost sum = now.mode == before.mode ? 0 : before.otherMode;
        sum += before.perTick * (std::max(now.start, before.start) - std::min(now.start, before.start));
        return sum + before.perPerson * notIn(people(a), {before.workers.begin(), before.workers.end()});
    }

    const Problem& p_;
    const Schedule& s_;
};

[[nodiscard]] inline Cost twinCost(const Problem& problem, const Schedule& schedule) {
    return TwinCost{problem, schedule}.sum();
}

} // namespace piewright::schedule
