// What a schedule costs, on the learning kernel: one variable that is at least the sum of all.
#include "learn/choice.h"
#include "schedule/compiled.h"
#include "schedule/cost.h"
#include "schedule/curve_cost.h"
#include "schedule/load_cost.h"

#include <algorithm>
#include <utility>

namespace piewright::schedule {

using learn::kTrue;
using learn::Literal;
using learn::minus;
using learn::plus;
using learn::Value;
using learn::Variable;

namespace {

/// The latest end and nothing else.
bool isMakespan(const Problem& problem) {
    const Costs& costs = problem.costs;
    const auto isFree = [](const Activity& activity) {
        return (!activity.isOptional || activity.absentCost == 0) &&
               std::all_of(activity.modes.begin(), activity.modes.end(),
                           [](const Mode& mode) { return mode.cost == 0; });
    };
    if (!costs.times.empty() || !costs.loads.empty() || !costs.work.empty() || !costs.handOvers.empty() ||
        !costs.before.empty() || costs.extents.size() != 1 ||
        !std::all_of(problem.activities.begin(), problem.activities.end(), isFree) ||
        std::any_of(problem.resources.begin(), problem.resources.end(), [](const Resource& resource) {
            return resource.machine && !resource.machine->firstCost.empty();
        })) {
        return false;
    }
    const ExtentCost& extent = costs.extents.front();
    const Curve::Piece& piece = extent.curve.pieces.front();
    return extent.of == ExtentCost::Of::Last && !extent.resource && !extent.worker && extent.curve.pieces.size() == 1 &&
           piece.perTick == 1 && piece.value == piece.from;
}

} // namespace

void Compiled::addCosts() {
    hasCosts = !options_.guardLimits;
    if (!hasCosts) {
        objective = solver.newVariable(0, 0);
        return;
    }
    if (isMakespan(problem_)) {
        objective = latest;
        return;
    }
    addModeCosts();
    const Costs& costs = problem_.costs;
    for (const TimeCost& cost : costs.times) {
        const Doing& doing = doings[at(cost.activity)];
        if (doing.ways.empty()) continue;
        addCurve(cost.point == Point::Start ? doing.start : doing.end, cost.curve, doing.present);
    }
    for (const ExtentCost& cost : costs.extents) addExtentCost(cost);
    for (const LoadCost& cost : costs.loads) addLoadCost(cost);
    for (const WorkCost& cost : costs.work) addWorkCost(cost);
    for (const HandOver& handOver : costs.handOvers) addHandOver(handOver);
    for (const Before& before : costs.before) addDistance(before);
    addObjective();
}

void Compiled::addCost(Literal literal, Cost cost) {
    if (literal == ~kTrue) return;
    if (literal == kTrue) {
        constant_ += cost;
    } else if ((literal.half & 1) == 0) {
        weights_[learn::variableOf(literal.half)] += cost;
    } else {
        constant_ += cost;
        weights_[learn::variableOf(literal.half)] -= cost;
    }
}

/// Exactly one of an activity's ways or its absence holds: only what they cost more than the cheapest needs a literal.
void Compiled::addModeCosts() {
    for (std::size_t a = 0; a < doings.size(); ++a) {
        const Doing& doing = doings[a];
        std::vector<std::pair<Literal, Cost>> options;
        options.reserve(doing.ways.size() + 1);
        for (const Way& way : doing.ways) options.emplace_back(way.present, modeOf(a, way.mode).cost);
        if (doing.present != kTrue) options.emplace_back(~doing.present, problem_.activities[a].absentCost);
        for (const Before& before : problem_.costs.before) {
            if (at(before.activity) != a) continue;
            for (std::size_t i = 0; i < options.size(); ++i) {
                const int mode = i < doing.ways.size() ? doing.ways[i].mode : kAbsent;
                if (mode != before.mode) options[i].second += before.otherMode;
            }
        }
        if (options.empty()) continue;
        const Cost least = std::min_element(options.begin(), options.end(), [](const auto& x, const auto& y) {
                               return x.second < y.second;
                           })->second;
        constant_ += least;
        for (const auto& [present, cost] : options) addCost(present, cost - least);
    }
}

void Compiled::addCurve(Time x, Curve curve, Literal present) {
    for (Curve::Piece& piece : curve.pieces) piece.from -= x.offset;
    if (curve.pieces.size() == 1 && present == kTrue) {
        const Curve::Piece& piece = curve.pieces.front();
        constant_ += piece.value - piece.perTick * piece.from;
        weights_[x.variable] += piece.perTick;
        return;
    }
    Cost least = leastOf(curve, solver.lower(x.variable), solver.upper(x.variable));
    Cost most = mostOf(curve, solver.lower(x.variable), solver.upper(x.variable));
    if (present != kTrue) {
        least = std::min<Cost>(least, 0);
        most = std::max<Cost>(most, 0);
    }
    const Variable cost = solver.newVariable(static_cast<Value>(least), static_cast<Value>(most));
    if (least < 0 && present != kTrue) clause({present, learn::atLeast(cost, 0)});
    CurveCost::post(solver, x.variable, cost, std::move(curve), present);
    weights_[cost] += 1;
}

std::vector<Compiled::Extended> Compiled::extendedBy(const ExtentCost& cost) const {
    std::vector<Extended> those;
    for (std::size_t a = 0; a < doings.size(); ++a) {
        const Doing& doing = doings[a];
        const auto names = [&](const Way& way) {
            const Mode& mode = modeOf(a, way.mode);
            const auto isIt = [&](const auto& one) { return one.resource == *cost.resource; };
            return std::any_of(mode.uses.begin(), mode.uses.end(), isIt) ||
                   std::any_of(mode.flows.begin(), mode.flows.end(), isIt);
        };
        if (cost.worker) {
            those.push_back({doing.start, doing.end, takesPart(a, at(*cost.worker))});
        } else if (!cost.resource || std::all_of(doing.ways.begin(), doing.ways.end(), names)) {
            if (!doing.ways.empty()) those.push_back({doing.start, doing.end, doing.present});
        } else {
            for (const Way& way : doing.ways) {
                if (names(way)) those.push_back({{way.start, 0}, way.end, way.present});
            }
        }
    }
    std::erase_if(those, [](const Extended& one) { return one.present == ~kTrue; });
    return those;
}

Variable Compiled::optionalTime(Literal present) {
    const Variable time = solver.newVariable(0, open_);
    if (present != kTrue) solver.makeOptional(time, present);
    return time;
}

/// Up to every start of those present; the first of them where it is to be exact.
Variable Compiled::firstOf(const std::vector<Extended>& those, Literal present, bool isExact) {
    const Variable first = optionalTime(present);
    std::vector<learn::Choice::Candidate> candidates;
    for (const Extended& one : those) {
        solver.addArc(minus(one.start.variable), minus(first), -one.start.offset, one.present);
        solver.addArc(plus(first), plus(one.start.variable), -one.start.offset, one.present);
        candidates.push_back({plus(one.start.variable), one.start.offset, one.present});
    }
    if (isExact) learn::Choice::post(solver, plus(first), std::move(candidates));
    return first;
}

/// From every end of those present on; the last of them where it is to be exact.
Variable Compiled::lastOf(const std::vector<Extended>& those, Literal present, bool isExact) {
    const Variable last = optionalTime(present);
    std::vector<learn::Choice::Candidate> candidates;
    for (const Extended& one : those) {
        solver.addArc(plus(one.end.variable), plus(last), one.end.offset, one.present);
        solver.addArc(minus(last), minus(one.end.variable), one.end.offset, one.present);
        candidates.push_back({minus(one.end.variable), -one.end.offset, one.present});
    }
    if (isExact) learn::Choice::post(solver, minus(last), std::move(candidates));
    return last;
}

void Compiled::addExtentCost(const ExtentCost& cost) {
    const std::vector<Extended> those = extendedBy(cost);
    if (those.empty()) return;
    std::vector<Literal> presents;
    bool isSure = false;
    for (const Extended& one : those) {
        presents.push_back(one.present);
        isSure = isSure || one.present == kTrue;
    }
    const Literal present = isSure ? kTrue : any(std::move(presents));
    // Where later never costs less, it is enough to be late enough.
    const bool isExact = !neverFalls(cost.curve, 0, open_);
    switch (cost.of) {
    case ExtentCost::Of::First:
        addCurve({firstOf(those, present, true), 0}, cost.curve, present);
        return;
    case ExtentCost::Of::Last:
        addCurve({lastOf(those, present, isExact), 0}, cost.curve, present);
        return;
    case ExtentCost::Of::Length:
        break;
    }
    const Variable first = firstOf(those, present, isExact);
    const Variable last = lastOf(those, present, isExact);
    const Variable length = optionalTime(present);
    Linear::post(solver, {{plus(length), 1}, {plus(first), 1}, {minus(last), 1}}, 0);
    if (isExact) Linear::post(solver, {{minus(length), 1}, {minus(first), 1}, {plus(last), 1}}, 0);
    addCurve({length, 0}, cost.curve, present);
}

void Compiled::addLoadCost(const LoadCost& cost) {
    std::vector<SpanTask> tasks;
    Cost used = 0;
    for (std::size_t a = 0; a < doings.size(); ++a) {
        for (const Way& way : doings[a].ways) {
            for (const Use& use : modeOf(a, way.mode).uses) {
                if (use.resource != cost.resource || use.amount <= 0 || way.duration <= 0) continue;
                tasks.push_back({{way.start, 0}, way.end, use.amount, way.present});
                used += use.amount;
            }
        }
    }
    used = std::min<Cost>(used, problem_.resources[at(cost.resource)].cumulative->capacity);
    const Span span{std::max(cost.span.from, 0), std::min(cost.span.to, open_)};
    if (span.from >= span.to || used <= cost.above || cost.perTick == 0) return;
    const Cost most = (used - cost.above) * (span.to - span.from) * cost.perTick;
    const Variable sum = solver.newVariable(0, static_cast<Value>(std::min(most, kMostCost)));
    OverCost::post(solver, std::move(tasks), {span, cost.above, cost.perTick}, sum);
    weights_[sum] += 1;
}

void Compiled::addWorkCost(const WorkCost& cost) {
    std::vector<std::pair<Literal, Tick>> parts;
    std::int64_t sum = 0;
    for (std::size_t a = 0; a < doings.size(); ++a) {
        for (const Way& way : doings[a].ways) {
            const std::vector<WorkerIndex>& team = modeOf(a, way.mode).team;
            if (std::find(team.begin(), team.end(), cost.worker) != team.end()) {
                parts.emplace_back(way.present, way.duration);
                sum += way.duration;
            }
            for (const std::vector<Way::Place>& places : way.places) {
                for (const Way::Place& place : places) {
                    if (place.worker != cost.worker) continue;
                    parts.emplace_back(place.fills, way.duration);
                    sum += way.duration;
                }
            }
        }
    }
    // One thing at a time, so no more than there is time.
    const Variable work = solver.newVariable(0, static_cast<Value>(std::min<std::int64_t>(sum, open_)));
    std::vector<Linear::Term> atLeast{{plus(work), 1}};
    std::vector<Linear::Term> atMost{{minus(work), 1}};
    std::int64_t base = 0;
    for (const auto& [literal, ticks] : parts) {
        if (literal == kTrue) {
            base += ticks;
        } else if (ticks > 0) {
            atLeast.push_back({literal.half ^ 1, ticks});
            atMost.push_back({literal.half, ticks});
        }
    }
    Linear::post(solver, std::move(atLeast), base);
    if (!neverFalls(cost.curve, 0, open_)) Linear::post(solver, std::move(atMost), -base);
    addCurve({work, 0}, cost.curve, kTrue);
}

void Compiled::addHandOver(const HandOver& handOver) {
    if (handOver.cost == 0) return;
    const Literal both = doings[at(handOver.from)].present;
    for (const auto& [worker, there] : busy_[at(handOver.to)]) {
        const Literal here = takesPart(at(handOver.from), worker);
        if (here == kTrue || here == there) continue;
        if (here == ~kTrue) {
            addCost(all({there, both}), handOver.cost);
            continue;
        }
        const Literal isNew = solver.newBoolean();
        clause({~there, here, ~both, isNew});
        addCost(isNew, handOver.cost);
    }
}

/// Its modes are in addModeCosts.
void Compiled::addDistance(const Before& before) {
    const std::size_t a = at(before.activity);
    if (before.mode == kAbsent || doings[a].ways.empty()) return;
    if (before.perTick > 0) {
        const Tick start = before.start;
        addCurve(doings[a].start, {{{start - 1, before.perTick, -before.perTick}, {start, 0, before.perTick}}},
                 doings[a].present);
    }
    for (const auto& [worker, there] : busy_[a]) {
        const auto index = static_cast<WorkerIndex>(worker);
        if (std::find(before.workers.begin(), before.workers.end(), index) == before.workers.end()) {
            addCost(there, before.perPerson);
        }
    }
}

void Compiled::addObjective() {
    Cost least = constant_;
    Cost most = constant_;
    std::vector<Linear::Term> terms;
    for (const auto& [variable, weight] : weights_) {
        if (weight == 0) continue;
        least += weight * (weight > 0 ? solver.lower(variable) : solver.upper(variable));
        most += weight * (weight > 0 ? solver.upper(variable) : solver.lower(variable));
        terms.push_back(weight > 0 ? Linear::Term{minus(variable), weight} : Linear::Term{plus(variable), -weight});
    }
    // The statement has no more than that, whatever the bounds here add up to.
    least = std::max(least, -kMostCost);
    most = std::clamp(most, least, kMostCost);
    objective = solver.newVariable(static_cast<Value>(least), static_cast<Value>(most));
    if (terms.empty()) return;
    terms.push_back({plus(objective), 1});
    Linear::post(solver, std::move(terms), constant_);
}

} // namespace piewright::schedule
