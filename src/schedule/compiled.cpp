#include "schedule/compiled.h"

#include "learn/cardinality.h"
#include "learn/choice.h"
#include "schedule/edge_finding.h"
#include "schedule/pausing.h"
#include "schedule/span_table.h"
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

Compiled::Compiled(const Problem& open, const Problem& stated, const ProverOptions& options)
    : window_(open), problem_(stated), options_(options) {
    using Stage = void (Compiled::*)();
    for (const Stage stage : {&Compiled::findWays, &Compiled::addActivities, &Compiled::addWindows, &Compiled::addLags,
                              &Compiled::findDistances, &Compiled::addCumulatives, &Compiled::orderPairs,
                              &Compiled::addMachines, &Compiled::addReservoirs, &Compiled::addPeople,
                              &Compiled::addPairs, &Compiled::addSkillLevels, &Compiled::addCosts}) {
        if (isCutShort()) return;
        (this->*stage)();
    }
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

Literal Compiled::all(std::vector<Literal> literals) {
    std::erase(literals, kTrue);
    std::sort(literals.begin(), literals.end());
    literals.erase(std::unique(literals.begin(), literals.end()), literals.end());
    if (literals.empty()) return kTrue;
    if (literals.size() == 1) return literals.front();
    const auto [known, isNew] = alls_.emplace(literals, kTrue);
    if (!isNew) return known->second;
    const Literal both = known->second = solver.newBoolean();
    std::vector<Literal> back{both};
    for (const Literal literal : literals) {
        clause({~both, literal});
        back.push_back(~literal);
    }
    clause(std::move(back));
    return both;
}

Literal Compiled::any(std::vector<Literal> literals) {
    for (Literal& literal : literals) literal = ~literal;
    return literals.empty() ? ~kTrue : ~all(std::move(literals));
}

void Compiled::connect(Time from, Literal fromPresent, Time to, Literal toPresent, Tick least, Literal when) {
    const Tick gap = least + from.offset - to.offset;
    const Literal both = all({fromPresent, toPresent, when});
    if (from.variable == to.variable) {
        if (gap > 0) clause({~both});
        return;
    }
    // A bound may be handed to a variable that counts only where the giver's does; both ways where the rule itself is
    // in question.
    const bool isFree = when == kTrue;
    solver.addArc(plus(from.variable), plus(to.variable), gap,
                  isFree && (fromPresent == kTrue || fromPresent == toPresent) ? kTrue : both);
    solver.addArc(minus(to.variable), minus(from.variable), gap,
                  isFree && (toPresent == kTrue || fromPresent == toPresent) ? kTrue : both);
}

/// Modes that people and time allow by themselves, and how long they last.
void Compiled::findWays() {
    skilled_.resize(problem_.skills.size());
    for (std::size_t w = 0; w < problem_.workers.size(); ++w) {
        for (const SkillIndex skill : problem_.workers[w].skills) {
            std::vector<WorkerIndex>& workers = skilled_[at(skill)];
            if (workers.empty() || workers.back() != static_cast<WorkerIndex>(w)) {
                workers.push_back(static_cast<WorkerIndex>(w));
            }
        }
    }
    open_ = static_cast<Tick>(std::min<std::int64_t>(window_.horizon, kNever / 2));
    modes_.resize(problem_.activities.size());
    lengths_.assign(problem_.activities.size(), {0, 0});
    for (std::size_t a = 0; a < modes_.size(); ++a) {
        const Activity& activity = window_.activities[a];
        const Tick window = std::min(activity.due, open_) - activity.release;
        for (std::size_t m = 0; m < activity.modes.size(); ++m) {
            const Mode& mode = activity.modes[m];
            bool mayBe = mode.duration <= window;
            for (const SkillNeed& need : mode.needs) {
                const auto people = std::count_if(
                    skilled_[at(need.skill)].begin(), skilled_[at(need.skill)].end(), [&](WorkerIndex worker) {
                        return std::find(mode.team.begin(), mode.team.end(), worker) == mode.team.end();
                    });
                mayBe = mayBe && people >= need.count;
            }
            if (!mayBe) continue;
            std::int64_t longest = mode.duration;
            for (const Span& pause : mode.pauses) {
                longest += std::max(0, std::min(pause.to, open_) - std::max(pause.from, 0));
            }
            const Length length{mode.duration, static_cast<Tick>(longest)};
            lengths_[a] = modes_[a].empty() ? length
                                            : Length{std::min(lengths_[a].least, length.least),
                                                     std::max(lengths_[a].most, length.most)};
            modes_[a].push_back(static_cast<int>(m));
        }
    }
}

void Compiled::addActivities() {
    latest = solver.newVariable(0, open_);
    doings.resize(problem_.activities.size());
    for (std::size_t a = 0; a < doings.size(); ++a) {
        const Length length = lengths_[a];
        Doing& doing = doings[a];
        if (problem_.activities[a].isOptional) {
            doing.present = solver.newBoolean();
            solver.hint(learn::variableOf(doing.present.half), 1);
        }
        if (modes_[a].empty()) {
            clause({~doing.present});
            doing.start = doing.end = {latest, 0};
            continue;
        }
        doing.start = {solver.newVariable(0, open_ - length.least), 0};
        doing.end = {doing.start.variable, length.least};
        if (doing.present != kTrue) solver.makeOptional(doing.start.variable, doing.present);
        if (length.least != length.most) {
            doing.end = {solver.newVariable(0, open_), 0};
            if (doing.present != kTrue) solver.makeOptional(doing.end.variable, doing.present);
            solver.addDifference(doing.start.variable, doing.end.variable, length.least);
            solver.addDifference(doing.end.variable, doing.start.variable, -length.most);
        }
        for (const int mode : modes_[a]) {
            Way way;
            way.mode = mode;
            way.duration = modeOf(a, mode).duration;
            way.start = doing.start.variable;
            way.present = doing.present;
            way.end = doing.end;
            doing.ways.push_back(std::move(way));
        }
        if (doing.ways.size() > 1) {
            addAlternatives(a);
        } else {
            addWay(a, doing.ways.front());
        }
        solver.addArc(plus(doing.end.variable), plus(latest), doing.end.offset, doing.present);
        solver.addArc(minus(latest), minus(doing.end.variable), doing.end.offset);
    }
}

/// Its end where it pauses, which its start and end variables are there for already.
void Compiled::addWay(std::size_t a, Way& way) {
    std::vector<Span> pauses;
    for (const Span& pause : modeOf(a, way.mode).pauses) {
        if (pause.to > 0 && pause.from < open_) pauses.push_back(pause);
    }
    if (pauses.empty()) return;
    way.pauses = true;
    Pausing::post(solver, way.start, way.end.variable, WorkingTime(way.duration, std::move(pauses)));
}

void Compiled::addAlternatives(std::size_t a) {
    Doing& doing = doings[a];
    std::vector<Literal> any;
    std::vector<learn::Choice::Candidate> choices[4];
    for (Way& way : doing.ways) {
        way.present = solver.newBoolean();
        way.start = solver.newVariable(0, open_ - way.duration);
        solver.makeOptional(way.start, way.present);
        way.end = {way.start, way.duration};
        const std::vector<Span>& pauses = modeOf(a, way.mode).pauses;
        if (std::any_of(pauses.begin(), pauses.end(),
                        [&](const Span& pause) { return pause.to > 0 && pause.from < open_; })) {
            way.end = {solver.newVariable(0, open_), 0};
            solver.makeOptional(way.end.variable, way.present);
        }
        addWay(a, way);
        any.push_back(way.present);
        if (doing.present != kTrue) clause({~way.present, doing.present});
        // Whichever way it is done, if it is done so, it keeps the bounds of the activity; and the other way round
        // once the way is chosen.
        const learn::Variable start = doing.start.variable;
        const learn::Variable end = doing.end.variable;
        solver.addArc(plus(start), plus(way.start), 0);
        solver.addArc(minus(start), minus(way.start), 0);
        solver.addArc(plus(way.start), plus(start), 0, way.present);
        solver.addArc(minus(way.start), minus(start), 0, way.present);
        choices[0].push_back({plus(way.start), 0, way.present});
        choices[1].push_back({minus(way.start), 0, way.present});
        if (end != start) {
            const learn::Variable own = way.end.variable;
            const Tick shift = way.end.offset - doing.end.offset;
            solver.addArc(plus(end), plus(own), -shift);
            solver.addArc(minus(end), minus(own), shift);
            solver.addArc(plus(own), plus(end), shift, way.present);
            solver.addArc(minus(own), minus(end), -shift, way.present);
            choices[2].push_back({plus(own), shift, way.present});
            choices[3].push_back({minus(own), -shift, way.present});
        }
    }
    for (std::size_t i = 0; i < any.size(); ++i) {
        for (std::size_t j = i + 1; j < any.size(); ++j) clause({~any[i], ~any[j]});
    }
    any.push_back(~doing.present);
    clause(std::move(any));
    const learn::Half halves[4] = {plus(doing.start.variable), minus(doing.start.variable), plus(doing.end.variable),
                                   minus(doing.end.variable)};
    for (std::size_t side = 0; side < 4; ++side) {
        if (!choices[side].empty()) learn::Choice::post(solver, halves[side], std::move(choices[side]));
    }
}

void Compiled::addWindows() {
    for (std::size_t a = 0; a < doings.size(); ++a) {
        const Activity& activity = problem_.activities[a];
        const Doing& doing = doings[a];
        if (doing.ways.empty()) continue;
        // A bound of what may be absent says that it is, where it cannot be kept; a guarded one must not.
        const auto limit = [&](const std::string& reason, Literal bound) {
            const Literal active = guard(reason);
            if (active == kTrue) {
                clause({bound});
            } else {
                clause({~active, ~doing.present, bound});
            }
        };
        if (activity.release > 0) limit(activity.releaseReason, atLeast(doing.start, activity.release));
        if (activity.due < open_) limit(activity.dueReason, atMost(doing.end, activity.due));
    }
    if (problem_.horizon < open_) {
        clause({~guard(problem_.horizonReason), learn::atMost(latest, problem_.horizon)});
    }
}

void Compiled::addLags() {
    for (const Lag& lag : problem_.lags) {
        const Doing& from = doings[at(lag.from)];
        const Doing& to = doings[at(lag.to)];
        if (from.ways.empty() || to.ways.empty()) continue;
        connect(lag.fromPoint == Point::Start ? from.start : from.end, from.present,
                lag.toPoint == Point::Start ? to.start : to.end, to.present, lag.least, guard(lag.reason));
    }
}

/// Who stays, and what must be done with what.
void Compiled::addPairs() {
    for (const Stay& stay : problem_.stays) {
        const Literal active = guard(stay.reason);
        for (const auto& [worker, there] : busy_[at(stay.to)]) {
            clause({~active, ~there, ~doings[at(stay.from)].present, takesPart(at(stay.from), worker)});
        }
    }
    for (const Implication& one : problem_.implications) {
        clause({~guard(one.reason), ~doings[at(one.given)].present, doings[at(one.also)].present});
    }
}

Literal Compiled::takesPart(std::size_t activity, std::size_t worker) const {
    const auto found = busy_[activity].find(worker);
    return found == busy_[activity].end() ? ~kTrue : found->second;
}

Occupation Compiled::occupationOf(std::size_t activity, const Way& way, const Use& use) const {
    return {activity, {way.start, 0}, way.end, way.present, use.family, way.duration, use.amount};
}

void Compiled::findDistances() {
    const std::size_t n = doings.size();
    if (n > kMatrix || options_.guardLimits) return;
    distance_.assign(n * n, -kNever);
    for (std::size_t a = 0; a < n; ++a) distance_[a * n + a] = 0;
    for (const Lag& lag : problem_.lags) {
        const std::size_t from = at(lag.from);
        const std::size_t to = at(lag.to);
        if (doings[from].present != kTrue || doings[to].present != kTrue) continue;
        const Tick start = lag.least + (lag.fromPoint == Point::End ? lengths_[from].least : 0) -
                           (lag.toPoint == Point::End ? lengths_[to].most : 0);
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
        std::vector<SpanTask> spans;
        bool pauses = false;
        std::int64_t total = 0;
        for (std::size_t a = 0; a < doings.size(); ++a) {
            for (const Way& way : doings[a].ways) {
                for (const Use& use : modeOf(a, way.mode).uses) {
                    if (at(use.resource) != r || use.amount <= 0 || way.duration <= 0) continue;
                    if (way.present == ~kTrue) continue;
                    tasks.push_back({way.start, way.duration, use.amount, way.present});
                    spans.push_back({{way.start, 0}, way.end, use.amount, way.present});
                    pauses = pauses || way.pauses;
                    total += use.amount;
                }
            }
        }
        const std::vector<Step> steps = stepsOf(*resource.cumulative);
        if (tasks.empty() || (steps.size() == 1 && total <= steps.front().capacity)) continue;
        const Literal active = guard(resource.name);
        if (pauses) SpanTable::post(solver, std::move(spans), steps, active);
        if (options_.edgeFinding) EdgeFinding::post(solver, tasks, steps, active);
        Timetable::post(solver, std::move(tasks), steps, active);
    }
}

void Compiled::orderPairs() {
    const std::size_t n = doings.size();
    if (n > kMatrix || options_.guardLimits || !options_.orderLiterals) return;
    isOrdered_.assign(n * n, 0);
    // Demands of mandatory activities of one length, by resource.
    std::vector<std::vector<int>> demand(n, std::vector<int>(problem_.resources.size(), 0));
    for (std::size_t a = 0; a < n; ++a) {
        if (!isSingle(a) || doings[a].present != kTrue || doings[a].ways[0].duration <= 0) continue;
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
            order(occupationOf(a, doings[a].ways[0], {}), occupationOf(b, doings[b].ways[0], {}), 0, 0, kTrue);
            isOrdered_[a * n + b] = isOrdered_[b * n + a] = 1;
        }
    }
}

/// A literal that makes one come before the other.
Literal Compiled::before(std::size_t one, std::size_t other, const Occupation& first, const Occupation& second,
                         Tick setup) {
    const Literal holds = solver.newBoolean();
    solver.addDifference(first.end.variable, second.start.variable, first.end.offset + setup - second.start.offset,
                         holds);
    orders.push_back({one, other, holds});
    return holds;
}

void Compiled::order(const Occupation& one, const Occupation& other, Tick setup, Tick setupBack, Literal active) {
    if (isCutShort()) return;
    const Tick length = one.duration;
    const Tick lengthBack = other.duration;
    const auto lastsAlike = [](const Occupation& x) { return x.end.variable == x.start.variable; };
    const bool isFirst = lastsAlike(one) && distance(one.activity, other.activity) >= length + setup;
    const bool isSecond = lastsAlike(other) && distance(other.activity, one.activity) >= lengthBack + setupBack;
    if (isFirst || isSecond) return;
    // Distances are of activities; a way that is not chosen keeps no order.
    const bool isMandatory = one.present == kTrue && other.present == kTrue && active == kTrue;
    const bool mayBeFirst = distance(other.activity, one.activity) <= -(length + setup);
    const bool mayBeSecond = distance(one.activity, other.activity) <= -(lengthBack + setupBack);
    const auto arc = [&](const Occupation& x, const Occupation& y, Tick gap, Literal when) {
        solver.addDifference(x.end.variable, y.start.variable, gap + x.end.offset - y.start.offset, when);
    };
    if (isMandatory) {
        if (!mayBeFirst && !mayBeSecond) {
            isPossible = false;
        } else if (!mayBeSecond) {
            arc(one, other, setup, kTrue);
        } else if (!mayBeFirst) {
            arc(other, one, setupBack, kTrue);
        } else {
            const Literal holds = before(one.activity, other.activity, one, other, setup);
            arc(other, one, setupBack, ~holds);
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
        bool hasEmpty = false; // or one that pauses: the timetable does not say all of these
        for (std::size_t a = 0; a < n; ++a) {
            for (const Way& way : doings[a].ways) {
                for (const Use& use : modeOf(a, way.mode).uses) {
                    if (at(use.resource) != r || way.present == ~kTrue) continue;
                    occupations.push_back(occupationOf(a, way, use));
                    hasEmpty = hasEmpty || way.duration == 0 || way.pauses;
                    const int amount = machine.together > 1 ? use.amount : 1;
                    if (way.duration > 0 && amount > 0) tasks.push_back({way.start, way.duration, amount, way.present});
                }
            }
        }
        for (const Occupation& one : occupations) {
            if (!machine.first.empty() && machine.first[at(one.family)] > 0) {
                clause({~one.present, ~active, atLeast(one.start, machine.first[at(one.family)])});
            }
            for (const Span& away : machine.away) keepApart(one, away, active);
        }
        const bool hasLoads = machine.together > 1 || !machine.firstCost.empty();
        if (hasLoads) addLoads(machine, occupations, active);
        const std::size_t pairs = occupations.size() * (occupations.size() - 1) / 2;
        const bool isOrderNeeded = hasEmpty || !machine.setup.empty();
        if (!hasLoads && (isOrderNeeded || orders.size() + pairs <= kPairs)) {
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
            const std::vector<Step> steps{{-kNever, machine.together}};
            if (options_.edgeFinding) EdgeFinding::post(solver, tasks, steps, active);
            Timetable::post(solver, std::move(tasks), steps, active);
        }
    }
}

void Compiled::addPeople() {
    const std::size_t n = doings.size();
    busy_.resize(n);
    for (std::size_t a = 0; a < n; ++a) {
        std::map<std::size_t, std::vector<Literal>> causes;
        for (Way& way : doings[a].ways) {
            if (way.present == ~kTrue) continue;
            const Mode& mode = modeOf(a, way.mode);
            std::map<std::size_t, std::vector<Literal>> ofWay;
            for (const SkillNeed& need : mode.needs) {
                std::vector<Literal> fillers;
                way.places.emplace_back();
                for (const WorkerIndex worker : skilled_[at(need.skill)]) {
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
            busy_[a].emplace(worker, takesPart);
            keepPresent(a, worker, takesPart);
        }
    }
    // One at a time. The literals for the two orders are shared by all people who may meet there.
    const auto comesBefore = [&](std::size_t a, std::size_t b) {
        if (distance(a, b) >= lengths_[a].most) return kTrue;
        if (distance(b, a) > -lengths_[a].least) return ~kTrue;
        const Literal holds = solver.newBoolean();
        solver.addDifference(doings[a].end.variable, doings[b].start.variable,
                             doings[a].end.offset - doings[b].start.offset, holds);
        if (doings[a].present != kTrue) clause({~holds, doings[a].present});
        if (doings[b].present != kTrue) clause({~holds, doings[b].present});
        orders.push_back({a, b, holds});
        return holds;
    };
    for (std::size_t a = 0; a < n; ++a) {
        for (std::size_t b = a + 1; b < n; ++b) {
            if (!isOrdered_.empty() && isOrdered_[a * n + b] != 0) continue;
            bool isStated = false;
            Literal first = kTrue;
            Literal second = kTrue;
            for (const auto& [worker, here] : busy_[a]) {
                const auto there = busy_[b].find(worker);
                if (there == busy_[b].end()) continue;
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

/// A worker who takes part is there, wholly within one span, or all the while that it does not pause.
void Compiled::keepPresent(std::size_t a, std::size_t worker, Literal takesPart) {
    const Literal active = guard(problem_.workers[worker].name);
    std::vector<Span> absences;
    Tick left = -kNever;
    for (const Span& span : problem_.workers[worker].present) {
        absences.push_back({left, span.from});
        left = span.to;
    }
    absences.push_back({left, kNever});
    const bool pauses =
        std::any_of(doings[a].ways.begin(), doings[a].ways.end(), [](const Way& way) { return way.pauses; });
    if (!pauses) {
        Occupation occupation;
        occupation.start = doings[a].start;
        occupation.end = doings[a].end;
        occupation.present = takesPart;
        for (const Span& absence : absences) keepApart(occupation, absence, active);
        return;
    }
    for (const Way& way : doings[a].ways) {
        Occupation occupation;
        occupation.start = {way.start, 0};
        occupation.end = way.end;
        occupation.present = doings[a].ways.size() == 1 ? takesPart : all({takesPart, way.present});
        for (Span absence : absences) {
            for (const Span& pause : modeOf(a, way.mode).pauses) {
                if (pause.from < absence.to && pause.to > absence.from) {
                    if (pause.from > absence.from) keepApart(occupation, {absence.from, pause.from}, active);
                    absence.from = std::min(pause.to, absence.to);
                }
            }
            if (absence.from < absence.to) keepApart(occupation, absence, active);
        }
    }
}

/// Redundant: whoever has one of some skills can take one place of these at a time.
void Compiled::addSkillLevels() {
    if (options_.guardLimits) return;
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
                if (places == 0 || way.duration == 0 || way.pauses || way.present == ~kTrue) continue;
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
