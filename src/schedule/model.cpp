#include "schedule/model.h"

#include "schedule/crew.h"

#include <algorithm>
#include <map>
#include <utility>

namespace piewright::schedule {

namespace {

bool isEverPresent(const Worker& worker, Tick duration) {
    return std::any_of(worker.present.begin(), worker.present.end(),
                       [&](const Span& span) { return span.to - span.from >= duration; });
}

/// Whether there are people for the mode, were everyone free.
bool canBeStaffed(const Problem& problem, const Mode& mode) {
    for (const WorkerIndex worker : mode.team) {
        if (!isEverPresent(problem.workers[at(worker)], mode.duration)) {
            return false;
        }
    }
    std::int64_t places = 0;
    for (const SkillNeed& need : mode.needs) {
        places += need.count;
    }
    if (places > static_cast<std::int64_t>(problem.workers.size())) {
        return false;
    }
    std::vector<WorkerIndex> candidates;
    for (std::size_t w = 0; w < problem.workers.size(); ++w) {
        const auto worker = static_cast<WorkerIndex>(w);
        if (std::find(mode.team.begin(), mode.team.end(), worker) == mode.team.end() &&
            isEverPresent(problem.workers[w], mode.duration)) {
            candidates.push_back(worker);
        }
    }
    return crewFor(problem, mode.needs, candidates).has_value();
}

} // namespace

Model::Model(const Problem& stated) : problem(stated), network(stated) {
    skilled.resize(problem.skills.size());
    for (std::size_t w = 0; w < problem.workers.size(); ++w) {
        for (const SkillIndex skill : problem.workers[w].skills) {
            std::vector<WorkerIndex>& workers = skilled[at(skill)];
            if (workers.empty() || workers.back() != static_cast<WorkerIndex>(w)) {
                workers.push_back(static_cast<WorkerIndex>(w));
            }
        }
    }
    std::vector<char> asked(problem.skills.size(), 0);
    for (const Activity& activity : problem.activities) {
        for (const Mode& mode : activity.modes) {
            for (const SkillNeed& need : mode.needs) {
                asked[at(need.skill)] = 1;
            }
        }
    }
    versatility.assign(problem.workers.size(), 0);
    for (std::size_t s = 0; s < skilled.size(); ++s) {
        if (asked[s] == 0) {
            continue;
        }
        for (const WorkerIndex worker : skilled[s]) {
            ++versatility[at(worker)];
        }
    }
    linked.resize(problem.activities.size());
    for (const Lag& lag : problem.lags) {
        if (lag.from == lag.to) {
            continue;
        }
        linked[at(lag.from)].push_back(at(lag.to));
        linked[at(lag.to)].push_back(at(lag.from));
    }
    for (std::vector<std::size_t>& others : linked) {
        std::sort(others.begin(), others.end());
        others.erase(std::unique(others.begin(), others.end()), others.end());
    }
    loop = contradiction(problem);
    hopeless = loop.has_value();
    if (!hopeless) {
        keepStaffedModes();
    }
    if (!hopeless) {
        keepTimelyModes();
    }
    if (!hopeless) {
        findUnits();
    }
}

void Model::keepStaffedModes() {
    modes.resize(problem.activities.size());
    lengths.resize(problem.activities.size());
    for (std::size_t a = 0; a < problem.activities.size(); ++a) {
        for (std::size_t m = 0; m < problem.activities[a].modes.size(); ++m) {
            if (canBeStaffed(problem, problem.activities[a].modes[m])) {
                modes[a].push_back(static_cast<int>(m));
            }
        }
        hopeless = hopeless || modes[a].empty();
        if (!modes[a].empty()) {
            measure(a);
        }
    }
}

void Model::measure(std::size_t a) {
    const auto duration = [&](int mode) {
        return problem.activities[a].modes[static_cast<std::size_t>(mode)].duration;
    };
    lengths[a] = {duration(modes[a].front()), duration(modes[a].front())};
    for (const int mode : modes[a]) {
        lengths[a] = {std::min(lengths[a].least, duration(mode)), std::max(lengths[a].most, duration(mode))};
    }
}

void Model::keepTimelyModes() {
    if (contradiction(problem, lengths)) {
        hopeless = true;
        return;
    }
    for (std::size_t a = 0; a < modes.size(); ++a) {
        if (lengths[a].least == lengths[a].most) {
            continue;
        }
        std::erase_if(modes[a], [&](int mode) {
            const Tick duration = problem.activities[a].modes[static_cast<std::size_t>(mode)].duration;
            lengths[a] = {duration, duration};
            return contradiction(problem, lengths).has_value();
        });
        if (modes[a].empty()) {
            hopeless = true; // each way of doing it meets a loop of its own
            return;
        }
        measure(a);
    }
}

void Model::findUnits() {
    // Distance between the starts of two activities as told by one lag, where their durations leave no play.
    struct Told {
        std::size_t from, to;
        std::int64_t least;
    };
    std::map<std::pair<std::size_t, std::size_t>, std::int64_t>
        least; // ordered, so that units come out the same always
    for (const Lag& lag : problem.lags) {
        const std::size_t from = at(lag.from);
        const std::size_t to = at(lag.to);
        const auto plays = [&](std::size_t a, Point point) {
            return point == Point::End && lengths[a].least != lengths[a].most;
        };
        if (from == to || plays(from, lag.fromPoint) || plays(to, lag.toPoint)) {
            continue;
        }
        const std::int64_t distance = std::int64_t{lag.least} +
                                      (lag.fromPoint == Point::End ? lengths[from].least : 0) -
                                      (lag.toPoint == Point::End ? lengths[to].least : 0);
        const auto [it, isNew] = least.try_emplace({from, to}, distance);
        if (!isNew) {
            it->second = std::max(it->second, distance);
        }
    }
    std::vector<std::vector<std::pair<std::size_t, Tick>>> tied(problem.activities.size());
    for (const auto& [pair, distance] : least) {
        const auto back = least.find({pair.second, pair.first});
        if (back != least.end() && back->second == -distance) {
            tied[pair.first].emplace_back(pair.second, static_cast<Tick>(distance));
        }
    }
    constexpr std::size_t kNone = static_cast<std::size_t>(-1);
    unitOf.assign(problem.activities.size(), kNone);
    std::vector<Tick> offset(problem.activities.size(), 0);
    for (std::size_t a = 0; a < problem.activities.size(); ++a) {
        if (unitOf[a] != kNone) {
            continue;
        }
        std::vector<std::size_t> members{a};
        unitOf[a] = units.size();
        for (std::size_t i = 0; i < members.size(); ++i) {
            for (const auto& [other, distance] : tied[members[i]]) {
                if (unitOf[other] != kNone) {
                    continue;
                }
                unitOf[other] = units.size();
                offset[other] = offset[members[i]] + distance;
                members.push_back(other);
            }
        }
        std::sort(members.begin(), members.end(),
                  [&](std::size_t x, std::size_t y) { return std::pair{offset[x], x} < std::pair{offset[y], y}; });
        Unit unit;
        for (const std::size_t member : members) {
            unit.members.push_back(member);
            unit.offsets.push_back(offset[member] - offset[members.front()]);
        }
        units.push_back(std::move(unit));
    }
}

} // namespace piewright::schedule
