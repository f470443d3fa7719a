#include "schedule/limits.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace piewright::schedule {

namespace {

using Kind = NamedLimit::Kind;

class Lister {
  public:
    void add(Kind kind, const std::string& words, std::size_t which) {
        if (words.empty()) {
            return;
        }
        const auto [known, isNew] = known_.emplace(std::pair{kind, words}, limits_.size());
        if (isNew) {
            limits_.push_back({kind, words, {which}});
        } else {
            limits_[known->second].which.push_back(which);
        }
    }

    void addResource(const Resource& resource, std::size_t r) {
        if (resource.name.empty()) {
            return;
        }
        if (resource.machine) {
            const Machine& machine = *resource.machine;
            add(Kind::Capacity,
                resource.name + (machine.together > 1 ? ": one load of " + std::to_string(machine.together) : ": one") +
                    " at a time",
                r);
            if (!machine.away.empty()) {
                add(Kind::Away, resource.name + ": can't be used all the time", r);
            }
            const auto takes = [](const std::vector<Tick>& row) {
                return std::any_of(row.begin(), row.end(), [](Tick tick) { return tick > 0; });
            };
            if (takes(machine.first) || std::any_of(machine.setup.begin(), machine.setup.end(), takes)) {
                add(Kind::Setup, resource.name + ": takes time to set up", r);
            }
        } else if (resource.reservoir) {
            const Reservoir& reservoir = *resource.reservoir;
            add(Kind::Least, resource.name + ": never below " + std::to_string(reservoir.least), r);
            if (reservoir.most < std::numeric_limits<int>::max()) {
                add(Kind::Most, resource.name + ": never above " + std::to_string(reservoir.most), r);
            }
        } else {
            const Cumulative& cumulative = *resource.cumulative;
            add(Kind::Capacity, resource.name + ": room for " + std::to_string(cumulative.capacity), r);
            if (!cumulative.reserved.empty()) {
                add(Kind::Reserved, resource.name + ": partly taken at times", r);
            }
        }
    }

    void addSkill(const Problem& problem, std::size_t s) {
        if (problem.skills[s].empty()) {
            return;
        }
        const auto count = std::count_if(problem.workers.begin(), problem.workers.end(), [&](const Worker& worker) {
            return std::find(worker.skills.begin(), worker.skills.end(), static_cast<SkillIndex>(s)) !=
                   worker.skills.end();
        });
        const std::string who = count == 0   ? "nobody"
                                : count == 1 ? "only 1 person"
                                             : "only " + std::to_string(count) + " people";
        add(Kind::Skill, who + " can do \"" + problem.skills[s] + "\"", s);
    }

    std::vector<NamedLimit> sorted() && {
        std::stable_sort(limits_.begin(), limits_.end(),
                         [](const NamedLimit& x, const NamedLimit& y) { return x.kind < y.kind; });
        return std::move(limits_);
    }

  private:
    std::vector<NamedLimit> limits_;
    std::map<std::pair<Kind, std::string>, std::size_t> known_; ///< places in limits_
};

/// A time by which everything is surely done, if it can be done at all: all of it one after the other, from the last
/// thing on that a calendar or a window speaks of.
Tick lateEnough(const Problem& problem) {
    std::int64_t from = problem.horizon;
    std::int64_t sum = 0;
    for (const Activity& activity : problem.activities) {
        Tick longest = 0;
        for (const Mode& mode : activity.modes) {
            longest = std::max(longest, mode.duration);
            if (!mode.pauses.empty()) {
                from = std::max<std::int64_t>(from, mode.pauses.back().to);
            }
        }
        sum += longest;
        from = std::max<std::int64_t>(from, activity.release);
    }
    for (const Lag& lag : problem.lags) {
        sum += std::max(lag.least, 0);
    }
    for (const Resource& resource : problem.resources) {
        if (resource.reservoir) {
            continue;
        }
        if (!resource.machine) {
            for (const Cumulative::Reserved& reserved : resource.cumulative->reserved) {
                from = std::max<std::int64_t>(from, reserved.span.to);
            }
            continue;
        }
        Tick longest = 0;
        for (const std::vector<Tick>& row : resource.machine->setup) {
            for (const Tick setup : row) {
                longest = std::max(longest, setup);
            }
        }
        for (const Tick first : resource.machine->first) {
            from = std::max<std::int64_t>(from, first);
        }
        for (const Span& span : resource.machine->away) {
            from = std::max<std::int64_t>(from, span.to);
        }
        sum += std::int64_t{longest} * static_cast<std::int64_t>(problem.activities.size());
    }
    return static_cast<Tick>(std::min<std::int64_t>(from + sum, kNever));
}

void giveUpUses(Problem& problem, std::size_t r) {
    for (Activity& activity : problem.activities) {
        for (Mode& mode : activity.modes) {
            std::erase_if(mode.uses, [&](const Use& use) { return at(use.resource) == r; });
        }
    }
}

template <class Rule> void dropAll(std::vector<Rule>& rules, const std::set<std::size_t>& gone) {
    std::size_t i = 0;
    std::erase_if(rules, [&](const Rule& /*rule*/) { return gone.contains(i++); });
}

} // namespace

std::vector<NamedLimit> namedLimits(const Problem& problem) {
    Lister list;
    for (std::size_t l = 0; l < problem.lags.size(); ++l) {
        list.add(Kind::Lag, problem.lags[l].reason, l);
    }
    for (std::size_t i = 0; i < problem.stays.size(); ++i) {
        list.add(Kind::Stay, problem.stays[i].reason, i);
    }
    for (std::size_t i = 0; i < problem.implications.size(); ++i) {
        list.add(Kind::Implication, problem.implications[i].reason, i);
    }
    for (std::size_t a = 0; a < problem.activities.size(); ++a) {
        list.add(Kind::Release, problem.activities[a].releaseReason, a);
        list.add(Kind::Due, problem.activities[a].dueReason, a);
    }
    list.add(Kind::Horizon, problem.horizonReason, 0);
    // Only what is asked for: the rest limits nothing.
    std::set<std::size_t> resources;
    std::set<std::size_t> skills;
    std::set<std::size_t> team;
    for (const Activity& activity : problem.activities) {
        for (const Mode& mode : activity.modes) {
            for (const Use& use : mode.uses) {
                resources.insert(at(use.resource));
            }
            for (const Flow& flow : mode.flows) {
                resources.insert(at(flow.resource));
            }
            for (const SkillNeed& need : mode.needs) {
                skills.insert(at(need.skill));
            }
            for (const WorkerIndex worker : mode.team) {
                team.insert(at(worker));
            }
        }
    }
    for (const std::size_t r : resources) {
        list.addResource(problem.resources[r], r);
    }
    for (const std::size_t s : skills) {
        list.addSkill(problem, s);
    }
    for (std::size_t w = 0; w < problem.workers.size(); ++w) {
        const std::string& name = problem.workers[w].name;
        if (name.empty()) {
            continue;
        }
        list.add(Kind::Presence, name + " is there only at times", w);
        if (team.contains(w)) {
            list.add(Kind::Team, name + " does one thing at a time", w);
        }
    }
    return std::move(list).sorted();
}

Problem without(const Problem& problem, const std::vector<NamedLimit>& givenUp) {
    Problem rest = problem;
    std::set<std::size_t> lags;
    std::set<std::size_t> stays;
    std::set<std::size_t> implications;
    for (const NamedLimit& limit : givenUp) {
        for (const std::size_t i : limit.which) {
            switch (limit.kind) {
            case Kind::Lag:
                lags.insert(i);
                break;
            case Kind::Stay:
                stays.insert(i);
                break;
            case Kind::Implication:
                implications.insert(i);
                break;
            case Kind::Least:
                rest.resources[i].reservoir->least = std::numeric_limits<int>::min();
                break;
            case Kind::Most:
                rest.resources[i].reservoir->most = std::numeric_limits<int>::max();
                break;
            case Kind::Presence:
                rest.workers[i].present = {{-kNever, kNever}};
                break;
            case Kind::Reserved:
                rest.resources[i].cumulative->reserved.clear();
                break;
            case Kind::Away:
                rest.resources[i].machine->away.clear();
                break;
            case Kind::Setup:
                rest.resources[i].machine->first.clear();
                rest.resources[i].machine->setup.clear();
                break;
            case Kind::Team:
                for (Activity& activity : rest.activities) {
                    for (Mode& mode : activity.modes) {
                        std::erase(mode.team, static_cast<WorkerIndex>(i));
                    }
                }
                break;
            case Kind::Skill:
                for (Activity& activity : rest.activities) {
                    for (Mode& mode : activity.modes) {
                        std::erase_if(mode.needs, [&](const SkillNeed& need) { return at(need.skill) == i; });
                    }
                }
                break;
            case Kind::Capacity:
                giveUpUses(rest, i);
                break;
            case Kind::Release:
                rest.activities[i].release = 0;
                break;
            case Kind::Due:
                rest.activities[i].due = kNever;
                break;
            case Kind::Horizon:
                rest.horizon = lateEnough(problem);
                break;
            }
        }
    }
    dropAll(rest.lags, lags);
    dropAll(rest.stays, stays);
    dropAll(rest.implications, implications);
    return rest;
}

} // namespace piewright::schedule
