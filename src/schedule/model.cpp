#include "schedule/model.h"

#include "schedule/crew.h"

#include <algorithm>
#include <map>
#include <utility>

namespace piewright::schedule {

namespace {

bool isEverPresent(const Worker& worker, const Mode& mode) {
    const Tick atOnce = mode.pauses.empty() ? mode.duration : std::min(mode.duration, 1);
    return std::any_of(worker.present.begin(), worker.present.end(),
                       [&](const Span& span) { return span.to - span.from >= atOnce; });
}

/// Whether there are people for the mode, were everyone free.
bool canBeStaffed(const Problem& problem, const Mode& mode) {
    for (const WorkerIndex worker : mode.team) {
        if (!isEverPresent(problem.workers[at(worker)], mode)) {
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
            isEverPresent(problem.workers[w], mode)) {
            candidates.push_back(worker);
        }
    }
    return crewFor(problem, mode.needs, candidates).has_value();
}

} // namespace

Model::Model(const Problem& stated) : problem(stated), presence(stated), network(stated, presence) {
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
    const auto link = [&](ActivityIndex one, ActivityIndex other) {
        if (one == other) return;
        linked[at(one)].push_back(at(other));
        linked[at(other)].push_back(at(one));
    };
    for (const Lag& lag : problem.lags) link(lag.from, lag.to);
    for (const HandOver& handOver : problem.costs.handOvers) link(handOver.from, handOver.to);
    staysAmong.resize(problem.activities.size());
    staysWith.resize(problem.activities.size());
    for (const Stay& stay : problem.stays) {
        if (stay.from == stay.to) continue;
        link(stay.from, stay.to);
        staysAmong[at(stay.to)].push_back(at(stay.from));
        staysWith[at(stay.from)].push_back(at(stay.to));
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
        findGroups();
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
        hopeless = hopeless || (modes[a].empty() && presence.isRequired(a));
        measure(a);
    }
}

void Model::measure(std::size_t a) {
    lengths[a] = {kNever, 0};
    for (const int m : modes[a]) {
        lengths[a] = {std::min(lengths[a].least, mode(a, m).duration),
                      std::max(lengths[a].most, Stretch(mode(a, m)).most())};
    }
    if (modes[a].empty()) lengths[a] = {0, 0};
}

/// Takes out modes too long or too short for the activity's window or for lags on itself; a narrower choice narrows
/// other windows. What other loops forbid is left to the search.
void Model::keepTimelyModes() {
    if (contradiction(problem, lengths)) {
        hopeless = true;
        return;
    }
    std::vector<Length> allowed(modes.size(), {0, kNever});
    for (const Lag& lag : problem.lags) {
        if (lag.from != lag.to || lag.fromPoint == lag.toPoint) continue;
        Length& length = allowed[at(lag.from)];
        if (lag.fromPoint == Point::Start) {
            length.least = std::max(length.least, lag.least);
        } else {
            length.most = std::min(length.most, -lag.least);
        }
    }
    constexpr int kRounds = 3;
    for (int round = 0; round < kRounds && !hopeless; ++round) {
        const Bounds bounds(network, problem, presence, lengths);
        bool isNarrower = false;
        for (std::size_t a = 0; a < modes.size(); ++a) {
            const Tick room = bounds.isOpen(a) ? bounds.upper(endOf(a)) - bounds.lower(startOf(a)) : -1;
            const Tick least = std::max(allowed[a].least, bounds.lower(endOf(a)) - bounds.upper(startOf(a)));
            const Tick most = std::min(allowed[a].most, room);
            const auto gone = std::erase_if(
                modes[a], [&](int m) { return mode(a, m).duration > most || Stretch(mode(a, m)).most() < least; });
            if (gone == 0) continue;
            isNarrower = true;
            hopeless = hopeless || (modes[a].empty() && presence.isRequired(a));
            measure(a);
        }
        if (!isNarrower) break;
        if (!hopeless && contradiction(problem, lengths)) hopeless = true;
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
        // Only what is done together can be placed as one.
        if (from == to || !presence.follows(from, to) || !presence.follows(to, from) || plays(from, lag.fromPoint) ||
            plays(to, lag.toPoint)) {
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

void Model::findGroups() {
    constexpr std::size_t kNone = static_cast<std::size_t>(-1);
    groupOf.assign(units.size(), kNone);
    for (std::size_t u = 0; u < units.size(); ++u) {
        if (groupOf[u] != kNone) continue;
        const std::size_t leader = units[u].members.front();
        Group group;
        group.isRequired = presence.isRequired(leader);
        group.units.push_back(u);
        groupOf[u] = groups.size();
        for (const std::size_t also : presence.implied(leader)) {
            const std::size_t other = unitOf[also];
            if (groupOf[other] != kNone || !presence.follows(also, leader)) continue;
            groupOf[other] = groups.size();
            group.units.push_back(other);
        }
        std::sort(group.units.begin(), group.units.end());
        groups.push_back(std::move(group));
    }
    for (std::size_t g = 0; g < groups.size(); ++g) {
        if (groups[g].isRequired) continue;
        for (const std::size_t also : presence.implied(units[groups[g].units.front()].members.front())) {
            const std::size_t other = groupOf[unitOf[also]];
            if (other != g) groups[g].implied.push_back(other);
        }
        std::sort(groups[g].implied.begin(), groups[g].implied.end());
        groups[g].implied.erase(std::unique(groups[g].implied.begin(), groups[g].implied.end()),
                                groups[g].implied.end());
        for (const std::size_t other : groups[g].implied) groups[other].impliedBy.push_back(g);
    }
}

} // namespace piewright::schedule
