// What is wrong with a problem as stated: the gate in front of the search, which takes all of this for granted.
#include "schedule/faults.h"
#include "schedule/problem.h"

#include <algorithm>

namespace piewright::schedule {

namespace {

using std::to_string;

std::string quoted(const std::string& name) { return '"' + name + '"'; }

bool isTime(Tick tick) { return -kNever <= tick && tick <= kNever; }

template <class Index> bool isIn(Index index, std::size_t size) {
    return static_cast<std::int32_t>(index) >= 0 && at(index) < size;
}

template <class Index> std::string number(Index index) { return to_string(static_cast<std::int32_t>(index)); }

class Inspector {
  public:
    explicit Inspector(const Problem& problem) : problem_(problem) {}

    std::vector<std::string> inspect() && {
        if (problem_.horizon < 0 || problem_.horizon > kNever) {
            fault("the horizon " + to_string(problem_.horizon) + " lies outside 0 to " + to_string(kNever));
        }
        for (const Resource& resource : problem_.resources) {
            inspectResource(resource);
        }
        for (const Worker& worker : problem_.workers) {
            inspectWorker(worker);
        }
        for (const Activity& activity : problem_.activities) {
            inspectActivity(activity);
        }
        for (const Lag& lag : problem_.lags) {
            inspectLag(lag);
        }
        for (const Stay& stay : problem_.stays) {
            inspectPair("stay " + quoted(stay.reason), stay.from, stay.to);
        }
        for (const Implication& implication : problem_.implications) {
            inspectPair("implication " + quoted(implication.reason), implication.given, implication.also);
        }
        if (faults_.empty()) { // else its indices lead nowhere
            faults_ = faultsInCosts(problem_);
        }
        return std::move(faults_);
    }

  private:
    void fault(std::string sentence) { faults_.push_back(std::move(sentence)); }

    void inspectSpan(Span span, const std::string& whose) {
        if (!isTime(span.from) || !isTime(span.to)) {
            fault(whose + " has a span from " + to_string(span.from) + " to " + to_string(span.to) +
                  ", beyond the latest time there is, " + to_string(kNever));
        } else if (span.from >= span.to) {
            fault(whose + " has a span from " + to_string(span.from) + " to " + to_string(span.to) +
                  ", which holds no time");
        }
    }

    void inspectResource(const Resource& resource) {
        const std::string name = "resource " + quoted(resource.name);
        const int kinds = (resource.cumulative ? 1 : 0) + (resource.machine ? 1 : 0) + (resource.reservoir ? 1 : 0);
        if (kinds != 1) {
            fault(name +
                  (kinds == 0 ? " is neither cumulative nor a machine nor a reservoir"
                              : " is more than one of cumulative, machine and reservoir") +
                  "; it must be one of them");
            return;
        }
        if (resource.reservoir) {
            inspectReservoir(*resource.reservoir, name);
        }
        if (resource.cumulative) {
            inspectCumulative(*resource.cumulative, name);
        }
        if (resource.machine) {
            inspectMachine(*resource.machine, name);
        }
    }

    void inspectCumulative(const Cumulative& cumulative, const std::string& name) {
        if (cumulative.capacity < 0) {
            fault(name + " has capacity " + to_string(cumulative.capacity) + ", below 0");
        }
        for (const Cumulative::Reserved& reserved : cumulative.reserved) {
            inspectSpan(reserved.span, name);
            if (reserved.amount < 0) {
                fault(name + " has " + to_string(reserved.amount) + " reserved, below 0");
            }
        }
    }

    void inspectReservoir(const Reservoir& reservoir, const std::string& name) {
        if (reservoir.initial < reservoir.least || reservoir.initial > reservoir.most) {
            fault(name + " has " + to_string(reservoir.initial) + " in it at first, outside " +
                  to_string(reservoir.least) + " to " + to_string(reservoir.most));
        }
    }

    void inspectMachine(const Machine& machine, const std::string& name) {
        if (machine.together < 1) {
            fault(name + " takes " + to_string(machine.together) + " together; at least 1");
        }
        inspectSetupCosts(machine, name);
        for (const Span& span : machine.away) {
            inspectSpan(span, name);
        }
        const std::size_t families = machine.first.size();
        if (machine.setup.size() != families ||
            std::any_of(machine.setup.begin(), machine.setup.end(),
                        [&](const std::vector<Tick>& row) { return row.size() != families; })) {
            fault(name + " has first setups for " + to_string(families) +
                  " families; its setups must be a square table of that size");
            return;
        }
        const auto isSetup = [](Tick tick) { return 0 <= tick && tick <= kNever; };
        for (std::size_t f = 0; f < families; ++f) {
            for (std::size_t g = 0; g <= families; ++g) {
                const Tick setup = g < families ? machine.setup[f][g] : machine.first[f];
                if (!isSetup(setup)) {
                    fault(name + " has a setup of " + to_string(setup) + ", outside 0 to " + to_string(kNever));
                    return;
                }
            }
        }
        inspectTriangles(machine, name);
    }

    void inspectSetupCosts(const Machine& machine, const std::string& name) {
        const std::size_t families = machine.firstCost.size();
        if (machine.setupCost.size() != families ||
            std::any_of(machine.setupCost.begin(), machine.setupCost.end(),
                        [&](const std::vector<Cost>& row) { return row.size() != families; })) {
            fault(name + " has costs of first setups for " + to_string(families) +
                  " families; its costs of setups must be a square table of that size");
            return;
        }
        if (families > 0 && !machine.first.empty() && machine.first.size() != families) {
            fault(name + " has setups for " + to_string(machine.first.size()) + " families and costs of them for " +
                  to_string(families));
        }
        for (std::size_t f = 0; f < families; ++f) {
            for (std::size_t g = 0; g <= families; ++g) {
                if (const Cost cost = g < families ? machine.setupCost[f][g] : machine.firstCost[f]; cost < 0) {
                    fault(name + " has a setup that costs " + to_string(cost) + ", below 0");
                    return;
                }
            }
        }
    }

    [[nodiscard]] std::string family(std::size_t f) const {
        return f < problem_.families.size() ? quoted(problem_.families[f]) : "family " + to_string(f);
    }

    /// The first broken triangle only: one wrong number breaks many.
    void inspectTriangles(const Machine& machine, const std::string& name) {
        const std::size_t families = machine.first.size();
        for (std::size_t f = 0; f < families; ++f) {
            for (std::size_t h = 0; h < families; ++h) {
                if (const Tick by = machine.first[f] + machine.setup[f][h]; machine.first[h] > by) {
                    fault(name + " takes " + to_string(machine.first[h]) + " to its first setup for " + family(h) +
                          " but only " + to_string(by) + " by way of " + family(f));
                    return;
                }
                for (std::size_t g = 0; g < families; ++g) {
                    if (const Tick by = machine.setup[f][g] + machine.setup[g][h]; machine.setup[f][h] > by) {
                        fault(name + " takes " + to_string(machine.setup[f][h]) + " from " + family(f) + " to " +
                              family(h) + " but only " + to_string(by) + " by way of " + family(g));
                        return;
                    }
                }
            }
        }
    }

    void inspectWorker(const Worker& worker) {
        const std::string name = "worker " + quoted(worker.name);
        for (const SkillIndex skill : worker.skills) {
            if (!isIn(skill, problem_.skills.size())) {
                fault(name + " has skill number " + number(skill) + "; there are " + to_string(problem_.skills.size()));
            }
        }
        for (std::size_t i = 0; i < worker.present.size(); ++i) {
            inspectSpan(worker.present[i], name);
            if (i > 0 && worker.present[i].from <= worker.present[i - 1].to) {
                fault(name + " is present until " + to_string(worker.present[i - 1].to) + " and then from " +
                      to_string(worker.present[i].from) + "; spans must be in order and apart");
            }
        }
    }

    void inspectActivity(const Activity& activity) {
        const std::string name = "activity " + quoted(activity.name);
        if (activity.modes.empty()) {
            fault(name + " has no mode; it must have at least one");
        }
        if (activity.release < 0 || activity.release > kNever) {
            fault(name + " has release " + to_string(activity.release) + ", outside 0 to " + to_string(kNever));
        }
        if (!isTime(activity.due)) {
            fault(name + " is due at " + to_string(activity.due) + ", beyond the latest time there is, " +
                  to_string(kNever));
        }
        for (std::size_t m = 0; m < activity.modes.size(); ++m) {
            inspectMode(activity.modes[m], name + (activity.modes.size() > 1 ? ", mode " + to_string(m) : "") + ",");
        }
    }

    void inspectMode(const Mode& mode, const std::string& name) {
        if (mode.duration < 0 || mode.duration > kNever) {
            fault(name + " has duration " + to_string(mode.duration) + ", outside 0 to " + to_string(kNever));
        }
        inspectUses(mode, name);
        inspectFlows(mode, name);
        inspectPauses(mode, name);
        for (std::size_t i = 0; i < mode.needs.size(); ++i) {
            const SkillNeed& need = mode.needs[i];
            if (!isIn(need.skill, problem_.skills.size())) {
                fault(name + " needs skill number " + number(need.skill) + "; there are " +
                      to_string(problem_.skills.size()));
                continue;
            }
            const std::string& skill = problem_.skills[at(need.skill)];
            if (need.count < 1) {
                fault(name + " needs " + to_string(need.count) + " people for " + quoted(skill) + "; at least 1");
            }
            if (std::any_of(mode.needs.begin(), mode.needs.begin() + static_cast<std::ptrdiff_t>(i),
                            [&](const SkillNeed& other) { return other.skill == need.skill; })) {
                fault(name + " names skill " + quoted(skill) + " twice");
            }
        }
        for (std::size_t i = 0; i < mode.team.size(); ++i) {
            if (!isIn(mode.team[i], problem_.workers.size())) {
                fault(name + " names worker number " + number(mode.team[i]) + "; there are " +
                      to_string(problem_.workers.size()));
            } else if (std::find(mode.team.begin(), mode.team.begin() + static_cast<std::ptrdiff_t>(i), mode.team[i]) !=
                       mode.team.begin() + static_cast<std::ptrdiff_t>(i)) {
                fault(name + " names worker " + quoted(problem_.workers[at(mode.team[i])].name) + " twice");
            }
        }
    }

    void inspectUses(const Mode& mode, const std::string& name) {
        for (std::size_t i = 0; i < mode.uses.size(); ++i) {
            const Use& use = mode.uses[i];
            if (!isIn(use.resource, problem_.resources.size())) {
                fault(name + " uses resource number " + number(use.resource) + "; there are " +
                      to_string(problem_.resources.size()));
                continue;
            }
            const Resource& resource = problem_.resources[at(use.resource)];
            if (std::any_of(mode.uses.begin(), mode.uses.begin() + static_cast<std::ptrdiff_t>(i),
                            [&](const Use& other) { return other.resource == use.resource; })) {
                fault(name + " uses " + quoted(resource.name) + " twice");
            }
            if (resource.cumulative && (use.amount < 0 || use.amount > resource.cumulative->capacity)) {
                fault(name + " uses " + to_string(use.amount) + " of " + quoted(resource.name) + ", outside 0 to " +
                      to_string(resource.cumulative->capacity));
            }
            if (resource.reservoir) {
                fault(name + " uses " + quoted(resource.name) + ", a reservoir; it can only flow in or out");
            }
            if (resource.machine) {
                inspectMachineUse(mode, use, resource, name);
            }
        }
    }

    void inspectMachineUse(const Mode& mode, const Use& use, const Resource& resource, const std::string& name) {
        const Machine& machine = *resource.machine;
        if (machine.together == 1 && use.amount != 1) {
            fault(name + " uses " + to_string(use.amount) + " of machine " + quoted(resource.name) + "; must be 1");
        }
        if (machine.together > 1 && (use.amount < 0 || use.amount > machine.together)) {
            fault(name + " puts " + to_string(use.amount) + " into a load of " + quoted(resource.name) +
                  ", outside 0 to " + to_string(machine.together));
        }
        for (const std::size_t families : {machine.first.size(), machine.firstCost.size()}) {
            if (families > 0 && !isIn(use.family, families)) {
                fault(name + " has family number " + number(use.family) + " on " + quoted(resource.name) +
                      ", which has " + to_string(families));
                break;
            }
        }
        if (!machine.firstCost.empty() && mode.duration == 0) {
            fault(name + " has no duration on " + quoted(resource.name) + ", whose setups cost something");
        }
    }

    void inspectFlows(const Mode& mode, const std::string& name) {
        for (const Flow& flow : mode.flows) {
            if (!isIn(flow.resource, problem_.resources.size())) {
                fault(name + " flows to resource number " + number(flow.resource) + "; there are " +
                      to_string(problem_.resources.size()));
            } else if (!problem_.resources[at(flow.resource)].reservoir) {
                fault(name + " flows to " + quoted(problem_.resources[at(flow.resource)].name) +
                      ", which is no reservoir");
            }
        }
    }

    void inspectPauses(const Mode& mode, const std::string& name) {
        if (!mode.pauses.empty() && mode.duration == 0) {
            fault(name + " has pauses but no duration");
        }
        for (std::size_t i = 0; i < mode.pauses.size(); ++i) {
            inspectSpan(mode.pauses[i], name);
            if (i > 0 && mode.pauses[i].from <= mode.pauses[i - 1].to) {
                fault(name + " pauses until " + to_string(mode.pauses[i - 1].to) + " and then from " +
                      to_string(mode.pauses[i].from) + "; pauses must be in order and apart");
            }
        }
    }

    void inspectPair(const std::string& name, ActivityIndex from, ActivityIndex to) {
        for (const ActivityIndex end : {from, to}) {
            if (!isIn(end, problem_.activities.size())) {
                fault(name + " names activity number " + number(end) + "; there are " +
                      to_string(problem_.activities.size()));
            }
        }
    }

    void inspectLag(const Lag& lag) {
        const std::string name = "lag " + quoted(lag.reason);
        inspectPair(name, lag.from, lag.to);
        if (!isTime(lag.least)) {
            fault(name + " has a length of " + to_string(lag.least) + ", beyond the longest there is, " +
                  to_string(kNever));
        }
    }

    const Problem& problem_;
    std::vector<std::string> faults_;
};

} // namespace

std::vector<std::string> faultsIn(const Problem& problem) { return Inspector{problem}.inspect(); }

} // namespace piewright::schedule
