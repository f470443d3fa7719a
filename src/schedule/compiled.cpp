#include "schedule/compiled.h"

#include "learn/cardinality.h"
#include "learn/choice.h"
#include "schedule/edge_finding.h"
#include "schedule/timetable.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace piewright::schedule {

using learn::kTrue;
using learn::Literal;
using learn::minus;
using learn::plus;

namespace {
constexpr std::size_t kMatrix = 600;        ///< activities up to which all distances are computed
constexpr std::size_t kPairs = 60'000;      ///< of order literals; beyond, profiles alone keep activities apart
constexpr std::size_t kSkillSubsets = 1024; ///< redundant levels of people
} // namespace

Compiled::Compiled(const Model& model, const Problem& stated, const ProverOptions& options)
    : model_(model), problem_(stated), options_(options) {
    addActivities();
    addWindows();
    addLags();
    findDistances();
    addCumulatives();
    if (options_.orderLiterals) orderPairs();
    addMachines();
    addPeople();
    if (!options_.guardLimits) addSkillLevels();
    isPossible = isPossible && solver.settle();
}

Literal Compiled::guard(const std::string& limit) {
    if (!options_.guardLimits || limit.empty()) return kTrue;
    for (const Guard& known : guards) {
        if (known.limit == limit) return known.holds;
    }
    guards.push_back({solver.newBoolean(), limit});
    solver.hint(learn::variableOf(guards.back().holds.half), 1);
    return guards.back().holds;
}

void Compiled::addActivities() {
    const std::int64_t open = model_.problem.horizon;
    open_ = static_cast<Tick>(std::min<std::int64_t>(open, kNever / 2));
    latest = solver.newVariable(0, open_);
    doings.resize(problem_.activities.size());
    for (std::size_t a = 0; a < doings.size(); ++a) {
        const Length length = model_.lengths[a];
        Doing& doing = doings[a];
        if (length.least > open_) {
            isPossible = false;
            doing.start = doing.end = {latest, 0};
        } else {
            doing.start = {solver.newVariable(0, open_ - length.least), 0};
            doing.end = {doing.start.variable, length.least};
        }
        if (length.least != length.most) {
            doing.end = {solver.newVariable(0, open_), 0};
            solver.addDifference(doing.start.variable, doing.end.variable, length.least);
            solver.addDifference(doing.end.variable, doing.start.variable, -length.most);
        }
        for (const int mode : model_.modes[a]) {
            doing.ways.push_back({mode, modeOf(a, mode).duration, doing.start.variable, kTrue, {}});
        }
        if (doing.ways.size() > 1) addAlternatives(a);
        solver.addArc(plus(doing.end.variable), plus(latest), doing.end.offset);
        solver.addArc(minus(latest), minus(doing.end.variable), doing.end.offset);
    }
}

void Compiled::addAlternatives(std::size_t a) {
    Doing& doing = doings[a];
    std::vector<Literal> any;
    std::vector<learn::Choice::Candidate> choices[4];
    for (Way& way : doing.ways) {
        if (way.duration > open_) {
            way.present = ~kTrue;
            continue;
        }
        way.present = solver.newBoolean();
        way.start = solver.newVariable(0, open_ - way.duration);
        solver.makeOptional(way.start, way.present);
        any.push_back(way.present);
        // Whichever way it is done, if it is done so, it keeps the bounds of the activity; and the other way round
        // once the way is chosen.
        const Tick shift = way.duration - doing.end.offset;
        const learn::Variable start = doing.start.variable;
        const learn::Variable end = doing.end.variable;
        solver.addArc(plus(start), plus(way.start), 0);
        solver.addArc(minus(start), minus(way.start), 0);
        solver.addArc(plus(way.start), plus(start), 0, way.present);
        solver.addArc(minus(way.start), minus(start), 0, way.present);
        choices[0].push_back({plus(way.start), 0, way.present});
        choices[1].push_back({minus(way.start), 0, way.present});
        if (end != start) {
            solver.addArc(plus(end), plus(way.start), -shift);
            solver.addArc(minus(end), minus(way.start), shift);
            solver.addArc(plus(way.start), plus(end), shift, way.present);
            solver.addArc(minus(way.start), minus(end), -shift, way.present);
            choices[2].push_back({plus(way.start), shift, way.present});
            choices[3].push_back({minus(way.start), -shift, way.present});
        }
    }
    clause(any);
    for (std::size_t i = 0; i < any.size(); ++i) {
        for (std::size_t j = i + 1; j < any.size(); ++j) clause({~any[i], ~any[j]});
    }
    const learn::Half halves[4] = {plus(doing.start.variable), minus(doing.start.variable), plus(doing.end.variable),
                                   minus(doing.end.variable)};
    for (std::size_t side = 0; side < 4; ++side) {
        if (!choices[side].empty()) learn::Choice::post(solver, halves[side], std::move(choices[side]));
    }
}

void Compiled::addWindows() {
    for (std::size_t a = 0; a < doings.size(); ++a) {
        const Activity& activity = problem_.activities[a];
        if (activity.release > 0) clause({~guard(activity.releaseReason), atLeast(doings[a].start, activity.release)});
        if (activity.due < open_) clause({~guard(activity.dueReason), atMost(doings[a].end, activity.due)});
    }
    if (problem_.horizon < open_) {
        clause({~guard(problem_.horizonReason), learn::atMost(latest, problem_.horizon)});
    }
}

void Compiled::addLags() {
    for (const Lag& lag : problem_.lags) {
        const auto time = [&](ActivityIndex activity, Point point) {
            const Doing& doing = doings[at(activity)];
            return point == Point::Start ? doing.start : doing.end;
        };
        const Time from = time(lag.from, lag.fromPoint);
        const Time to = time(lag.to, lag.toPoint);
        const Tick least = lag.least + from.offset - to.offset;
        if (from.variable == to.variable) {
            if (least > 0) clause({~guard(lag.reason)});
            continue;
        }
        solver.addDifference(from.variable, to.variable, least, guard(lag.reason));
    }
}

void Compiled::findDistances() {
    const std::size_t n = doings.size();
    if (n > kMatrix || options_.guardLimits) return;
    distance_.assign(n * n, -kNever);
    for (std::size_t a = 0; a < n; ++a) distance_[a * n + a] = 0;
    for (const Lag& lag : problem_.lags) {
        const std::size_t from = at(lag.from);
        const std::size_t to = at(lag.to);
        const Tick start = lag.least + (lag.fromPoint == Point::End ? model_.lengths[from].least : 0) -
                           (lag.toPoint == Point::End ? model_.lengths[to].most : 0);
        distance_[from * n + to] = std::max(distance_[from * n + to], start);
    }
    for (std::size_t k = 0; k < n; ++k) {
        const Tick* const by = distance_.data() + k * n;
        for (std::size_t i = 0; i < n; ++i) {
            const Tick first = distance_[i * n + k];
            if (first == -kNever || i == k) continue;
            Tick* const row = distance_.data() + i * n;
            for (std::size_t j = 0; j < n; ++j) {
                if (by[j] != -kNever) row[j] = std::max(row[j], first + by[j]);
            }
        }
    }
}

void Compiled::addCumulatives() {
    for (std::size_t r = 0; r < problem_.resources.size(); ++r) {
        const Resource& resource = problem_.resources[r];
        if (!resource.cumulative) continue;
        std::vector<Task> tasks;
        std::int64_t total = 0;
        for (std::size_t a = 0; a < doings.size(); ++a) {
            for (const Way& way : doings[a].ways) {
                for (const Use& use : modeOf(a, way.mode).uses) {
                    if (at(use.resource) != r || use.amount <= 0 || way.duration <= 0) continue;
                    if (way.present == ~kTrue) continue;
                    tasks.push_back({way.start, way.duration, use.amount, way.present});
                    total += use.amount;
                }
            }
        }
        const std::vector<Step> steps = stepsOf(*resource.cumulative);
        if (tasks.empty() || (steps.size() == 1 && total <= steps.front().capacity)) continue;
        const Literal active = guard(resource.name);
        if (options_.edgeFinding) EdgeFinding::post(solver, tasks, steps, active);
        Timetable::post(solver, std::move(tasks), steps, active);
    }
}

void Compiled::orderPairs() {
    const std::size_t n = doings.size();
    if (n > kMatrix || options_.guardLimits) return;
    isOrdered_.assign(n * n, 0);
    // Demands of mandatory activities of one length, by resource.
    std::vector<std::vector<int>> demand(n, std::vector<int>(problem_.resources.size(), 0));
    for (std::size_t a = 0; a < n; ++a) {
        if (!isSingle(a) || doings[a].ways[0].duration <= 0) continue;
        for (const Use& use : modeOf(a, doings[a].ways[0].mode).uses) {
            if (problem_.resources[at(use.resource)].cumulative) demand[a][at(use.resource)] = use.amount;
        }
    }
    std::vector<int> capacity;
    capacity.reserve(problem_.resources.size());
    for (const Resource& resource : problem_.resources) {
        capacity.push_back(resource.cumulative ? resource.cumulative->capacity : 0);
    }
    std::size_t pairs = 0;
    for (std::size_t a = 0; a < n; ++a) {
        for (std::size_t b = a + 1; b < n && pairs < kPairs; ++b) {
            bool isApart = false;
            for (std::size_t r = 0; r < capacity.size() && !isApart; ++r) {
                isApart = demand[a][r] > 0 && demand[b][r] > 0 && demand[a][r] > capacity[r] - demand[b][r];
            }
            if (!isApart) continue;
            ++pairs;
            order({a, doings[a].start, doings[a].end, kTrue, {}}, {b, doings[b].start, doings[b].end, kTrue, {}}, 0, 0,
                  kTrue);
            isOrdered_[a * n + b] = isOrdered_[b * n + a] = 1;
        }
    }
}

/// A literal that makes one come before the other.
Literal Compiled::before(std::size_t one, std::size_t other, const Occupation& first, const Occupation& second,
                         Tick setup) {
    const Literal holds = solver.newBoolean();
    solver.addDifference(first.start.variable, second.start.variable,
                         first.end.offset - first.start.offset + setup + first.start.offset - second.start.offset,
                         holds);
    orders.push_back({one, other, holds});
    return holds;
}

void Compiled::order(const Occupation& one, const Occupation& other, Tick setup, Tick setupBack, Literal active) {
    // Both spans have a fixed length, so starts are enough.
    const Tick length = one.end.offset - one.start.offset;
    const Tick lengthBack = other.end.offset - other.start.offset;
    const bool isFirst = distance(one.activity, other.activity) >= length + setup;
    const bool isSecond = distance(other.activity, one.activity) >= lengthBack + setupBack;
    if (isFirst || isSecond) return;
    // Distances are of activities; a way that is not chosen keeps no order.
    const bool isMandatory = one.present == kTrue && other.present == kTrue && active == kTrue;
    const bool mayBeFirst = distance(other.activity, one.activity) <= -(length + setup);
    const bool mayBeSecond = distance(one.activity, other.activity) <= -(lengthBack + setupBack);
    const auto arc = [&](const Occupation& x, const Occupation& y, Tick least, Literal when) {
        solver.addDifference(x.start.variable, y.start.variable, least + x.start.offset - y.start.offset, when);
    };
    if (isMandatory) {
        if (!mayBeFirst && !mayBeSecond) {
            isPossible = false;
        } else if (!mayBeSecond) {
            arc(one, other, length + setup, kTrue);
        } else if (!mayBeFirst) {
            arc(other, one, lengthBack + setupBack, kTrue);
        } else {
            const Literal holds = before(one.activity, other.activity, one, other, setup);
            arc(other, one, lengthBack + setupBack, ~holds);
        }
        return;
    }
    std::vector<Literal> either{~one.present, ~other.present, ~active};
    const auto add = [&](const Occupation& x, const Occupation& y, Tick gap) {
        const Literal holds = before(x.activity, y.activity, x, y, gap);
        clause({~holds, x.present});
        clause({~holds, y.present});
        either.push_back(holds);
    };
    if (mayBeFirst) add(one, other, setup);
    if (mayBeSecond) add(other, one, setupBack);
    clause(std::move(either));
}

void Compiled::keepApart(const Occupation& occupation, Span away, Literal active) {
    clause({~occupation.present, ~active, atMost(occupation.end, away.from), atLeast(occupation.start, away.to)});
}

void Compiled::addMachines() {
    const std::size_t n = doings.size();
    for (std::size_t r = 0; r < problem_.resources.size(); ++r) {
        const Resource& resource = problem_.resources[r];
        if (!resource.machine) continue;
        const Machine& machine = *resource.machine;
        const Literal active = guard(resource.name);
        std::vector<Occupation> occupations;
        std::vector<Task> tasks;
        bool hasEmpty = false;
        for (std::size_t a = 0; a < n; ++a) {
            for (const Way& way : doings[a].ways) {
                for (const Use& use : modeOf(a, way.mode).uses) {
                    if (at(use.resource) != r || way.present == ~kTrue) continue;
                    occupations.push_back({a, {way.start, 0}, {way.start, way.duration}, way.present, use.family});
                    hasEmpty = hasEmpty || way.duration == 0;
                    if (way.duration > 0) tasks.push_back({way.start, way.duration, 1, way.present});
                }
            }
        }
        for (const Occupation& one : occupations) {
            if (!machine.first.empty() && machine.first[at(one.family)] > 0) {
                clause({~one.present, ~active, atLeast(one.start, machine.first[at(one.family)])});
            }
            for (const Span& away : machine.away) keepApart(one, away, active);
        }
        const std::size_t pairs = occupations.size() * (occupations.size() - 1) / 2;
        const bool isOrderNeeded = hasEmpty || !machine.setup.empty();
        if (isOrderNeeded || orders.size() + pairs <= kPairs) {
            const auto setup = [&](const Occupation& x, const Occupation& y) {
                return machine.setup.empty() ? Tick{0} : machine.setup[at(x.family)][at(y.family)];
            };
            for (std::size_t i = 0; i < occupations.size(); ++i) {
                for (std::size_t j = i + 1; j < occupations.size(); ++j) {
                    if (occupations[i].activity == occupations[j].activity) continue;
                    order(occupations[i], occupations[j], setup(occupations[i], occupations[j]),
                          setup(occupations[j], occupations[i]), active);
                }
            }
        }
        if (tasks.size() > 1) {
            const std::vector<Step> steps{{-kNever, 1}};
            if (options_.edgeFinding) EdgeFinding::post(solver, tasks, steps, active);
            Timetable::post(solver, std::move(tasks), steps, active);
        }
    }
}

void Compiled::addPeople() {
    const std::size_t n = doings.size();
    std::vector<std::map<std::size_t, Literal>> busy(n); // by activity: worker to "takes part"
    for (std::size_t a = 0; a < n; ++a) {
        std::map<std::size_t, std::vector<Literal>> causes;
        for (Way& way : doings[a].ways) {
            if (way.present == ~kTrue) continue;
            const Mode& mode = modeOf(a, way.mode);
            std::map<std::size_t, std::vector<Literal>> ofWay;
            for (const SkillNeed& need : mode.needs) {
                std::vector<Literal> fillers;
                way.places.emplace_back();
                for (const WorkerIndex worker : model_.skilled[at(need.skill)]) {
                    if (std::find(mode.team.begin(), mode.team.end(), worker) != mode.team.end()) continue;
                    const Literal filled = solver.newBoolean();
                    clause({~filled, way.present});
                    way.places.back().push_back({worker, filled});
                    fills.push_back(filled);
                    fillers.push_back(filled);
                    ofWay[at(worker)].push_back(filled);
                }
                learn::Cardinality::post(solver, fillers, need.count, way.present);
                std::vector<Literal> empty;
                empty.reserve(fillers.size());
                for (const Literal filled : fillers) empty.push_back(~filled);
                learn::Cardinality::post(solver, empty, static_cast<int>(empty.size()) - need.count, way.present);
            }
            for (const WorkerIndex worker : mode.team) ofWay[at(worker)].push_back(way.present);
            for (const auto& [worker, places] : ofWay) {
                for (std::size_t i = 0; i < places.size(); ++i) {
                    causes[worker].push_back(places[i]);
                    for (std::size_t j = i + 1; j < places.size(); ++j) clause({~places[i], ~places[j]});
                }
            }
        }
        for (const auto& [worker, places] : causes) {
            Literal takesPart = places.front();
            if (places.size() > 1) {
                takesPart = solver.newBoolean();
                for (const Literal place : places) clause({~place, takesPart});
                std::vector<Literal> either = places;
                either.push_back(~takesPart);
                clause(std::move(either));
            }
            busy[a].emplace(worker, takesPart);
            const Literal active = guard(problem_.workers[worker].name);
            const Occupation occupation{a, doings[a].start, doings[a].end, takesPart, {}};
            Tick left = -kNever;
            for (const Span& span : problem_.workers[worker].present) {
                if (left == -kNever) {
                    clause({~takesPart, ~active, atLeast(occupation.start, span.from)});
                } else {
                    keepApart(occupation, {left, span.from}, active);
                }
                left = span.to;
            }
            clause({~takesPart, ~active, left == -kNever ? ~kTrue : atMost(occupation.end, left)});
        }
    }
    // One at a time. The literals for the two orders are shared by all people who may meet there.
    const auto comesBefore = [&](std::size_t a, std::size_t b) {
        if (distance(a, b) >= model_.lengths[a].most) return kTrue;
        if (distance(b, a) > -model_.lengths[a].least) return ~kTrue;
        const Literal holds = solver.newBoolean();
        solver.addDifference(doings[a].end.variable, doings[b].start.variable,
                             doings[a].end.offset - doings[b].start.offset, holds);
        orders.push_back({a, b, holds});
        return holds;
    };
    for (std::size_t a = 0; a < n; ++a) {
        for (std::size_t b = a + 1; b < n; ++b) {
            if (!isOrdered_.empty() && isOrdered_[a * n + b] != 0) continue;
            bool isStated = false;
            Literal first = kTrue;
            Literal second = kTrue;
            for (const auto& [worker, here] : busy[a]) {
                const auto there = busy[b].find(worker);
                if (there == busy[b].end()) continue;
                if (!std::exchange(isStated, true)) {
                    first = comesBefore(a, b);
                    second = first == kTrue ? ~kTrue : comesBefore(b, a);
                }
                if (first == kTrue || second == kTrue) break;
                clause({~here, ~there->second, ~guard(problem_.workers[worker].name), first, second});
            }
        }
    }
}

/// Redundant: whoever has one of some skills can take one place of these at a time.
void Compiled::addSkillLevels() {
    std::set<std::size_t> asked;
    for (std::size_t a = 0; a < doings.size(); ++a) {
        for (const Way& way : doings[a].ways) {
            for (const SkillNeed& need : modeOf(a, way.mode).needs) asked.insert(at(need.skill));
        }
    }
    const std::vector<std::size_t> skills(asked.begin(), asked.end());
    std::vector<std::vector<char>> subsets;
    const std::size_t all = skills.size() < 10 ? (std::size_t{1} << skills.size()) : kSkillSubsets;
    for (std::size_t mask = 1; mask < std::min(all, kSkillSubsets); ++mask) {
        std::vector<char> isIn(problem_.skills.size(), 0);
        for (std::size_t s = 0; s < std::min<std::size_t>(skills.size(), 10); ++s) {
            isIn[skills[s]] = static_cast<char>((mask >> s) & 1U);
        }
        subsets.push_back(std::move(isIn));
    }
    if (skills.size() >= 10) {
        for (const std::size_t skill : skills) {
            subsets.emplace_back(problem_.skills.size(), 0);
            subsets.back()[skill] = 1;
        }
        subsets.emplace_back(problem_.skills.size(), 1);
    }
    for (const std::vector<char>& isIn : subsets) {
        Cumulative people;
        people.capacity = 0;
        for (const Worker& worker : problem_.workers) {
            if (std::none_of(worker.skills.begin(), worker.skills.end(),
                             [&](SkillIndex skill) { return isIn[at(skill)] != 0; })) {
                continue;
            }
            ++people.capacity;
            Tick left = -kNever + 1;
            for (const Span& span : worker.present) {
                if (span.from > left) people.reserved.push_back({{left, span.from}, 1});
                left = span.to;
            }
            if (left < open_) people.reserved.push_back({{left, kNever - 1}, 1});
        }
        std::vector<Task> tasks;
        std::int64_t total = 0;
        for (std::size_t a = 0; a < doings.size(); ++a) {
            for (const Way& way : doings[a].ways) {
                int places = 0;
                for (const SkillNeed& need : modeOf(a, way.mode).needs)
                    places += isIn[at(need.skill)] != 0 ? need.count : 0;
                if (places == 0 || way.duration == 0 || way.present == ~kTrue) continue;
                tasks.push_back({way.start, way.duration, places, way.present});
                total += places;
            }
        }
        const std::vector<Step> steps = stepsOf(people);
        if (tasks.size() < 2 || (steps.size() == 1 && total <= people.capacity)) continue;
        if (options_.edgeFinding) EdgeFinding::post(solver, tasks, steps, kTrue);
        Timetable::post(solver, std::move(tasks), steps, kTrue);
    }
}

} // namespace piewright::schedule
