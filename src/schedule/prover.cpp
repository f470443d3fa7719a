#include "schedule/prover.h"

#include "schedule/branch_earliest.h"
#include "schedule/compiled.h"
#include "schedule/cost.h"
#include "schedule/near.h"
#include "schedule/search_down.h"
#include "schedule/search_up.h"

#include <algorithm>
#include <cassert>
#include <utility>

namespace piewright::schedule {

namespace {

/// Without the named limits on time, which guards put in again one by one; with room for what goes past the horizon:
/// all of it one after the other, from the last thing on that a calendar or a window speaks of.
Problem loosen(Problem problem) {
    const bool isHorizonNamed = !problem.horizonReason.empty();
    std::int64_t from = problem.horizon;
    std::int64_t sum = 0;
    const auto keep = [&](const Span& span) {
        if (span.to < kNever) from = std::max<std::int64_t>(from, span.to);
    };
    for (Activity& activity : problem.activities) {
        Tick longest = 0;
        for (const Mode& mode : activity.modes) {
            longest = std::max(longest, mode.duration);
            std::for_each(mode.pauses.begin(), mode.pauses.end(), keep);
        }
        sum += longest;
        from = std::max<std::int64_t>(from, activity.release);
        if (!activity.releaseReason.empty()) activity.release = 0;
        if (!activity.dueReason.empty()) activity.due = kNever;
    }
    for (const Resource& resource : problem.resources) {
        if (resource.cumulative) {
            for (const Cumulative::Reserved& reserved : resource.cumulative->reserved) keep(reserved.span);
        }
        if (!resource.machine) continue;
        std::for_each(resource.machine->away.begin(), resource.machine->away.end(), keep);
        Tick longest = 0;
        for (const Tick first : resource.machine->first) longest = std::max(longest, first);
        for (const std::vector<Tick>& row : resource.machine->setup) {
            for (const Tick setup : row) longest = std::max(longest, setup);
        }
        sum += std::int64_t{longest} * static_cast<std::int64_t>(problem.activities.size() + 1);
    }
    std::vector<Lag> unnamed;
    for (Lag& lag : problem.lags) {
        sum += std::max(lag.least, 0);
        if (lag.reason.empty()) unnamed.push_back(std::move(lag));
    }
    problem.lags = std::move(unnamed);
    for (Worker& worker : problem.workers) {
        std::for_each(worker.present.begin(), worker.present.end(), keep);
    }
    if (isHorizonNamed) problem.horizon = static_cast<Tick>(std::min<std::int64_t>(from + sum, kNever / 2));
    return problem;
}

/// A loop of rules on time that contradict each other, whatever is left out.
std::optional<std::vector<std::string>> loopIn(Problem problem) {
    std::vector<Length> lengths;
    for (Activity& activity : problem.activities) {
        Length length{kNever, 0};
        for (const Mode& mode : activity.modes) {
            std::int64_t longest = mode.duration;
            for (const Span& pause : mode.pauses) {
                longest += std::max(0, std::min(pause.to, problem.horizon) - std::max(pause.from, 0));
            }
            length = {std::min(length.least, mode.duration),
                      std::max(length.most, static_cast<Tick>(std::min<std::int64_t>(longest, kNever)))};
        }
        if (activity.isOptional) {
            activity.release = 0;
            activity.due = kNever;
            length = {0, 0};
        }
        lengths.push_back(length);
    }
    std::erase_if(problem.lags, [&](const Lag& lag) {
        return problem.activities[at(lag.from)].isOptional || problem.activities[at(lag.to)].isOptional;
    });
    return contradiction(problem, lengths);
}

} // namespace

Tick latestEnd(const Schedule& schedule) {
    Tick latest = 0;
    for (const Placed& placed : schedule.placed) latest = std::max(latest, placed.end);
    return latest;
}

struct Prover::Engine final : Questions {
    Engine(const Problem& stated, const ProverOptions& options)
        : problem(stated), loosened(options.guardLimits ? std::make_unique<Problem>(loosen(stated)) : nullptr),
          open(loosened ? *loosened : stated) {
        if (auto loop = loopIn(open)) {
            isHopeless_ = true;
            clash = std::move(*loop);
            return;
        }
        compiled = std::make_unique<Compiled>(open, problem, options);
        brancher = std::make_unique<BranchEarliest>(*compiled);
        if (!compiled->isPossible) {
            isHopeless_ = true;
        } else {
            bound_ = compiled->solver.lower(compiled->objective);
        }
    }

    [[nodiscard]] Cost value() const override { return best ? value_ : kNoValue; }
    [[nodiscard]] Cost bound() const override { return bound_; }
    [[nodiscard]] bool isHopeless() const override { return isHopeless_; }
    [[nodiscard]] std::uint64_t work() const override { return compiled ? compiled->solver.counts().work : 0; }
    [[nodiscard]] std::uint64_t conflicts() const override {
        return compiled ? compiled->solver.counts().conflicts : 0;
    }
    void tell(const Improved& improved) const override {
        if (improved && best) improved(*best, value_);
    }

    Verdict ask(std::optional<Cost> by, const ProverLimits& limits) override {
        if (isHopeless_) return Verdict::Refuted;
        if (by && *by < bound_) return Verdict::Refuted;
        if (by && best && value_ <= *by) return Verdict::Satisfied;
        return ask(by, limits, {});
    }

    /// With more assumptions. Refuted may be because of these.
    Verdict ask(std::optional<Cost> by, const ProverLimits& limits, std::vector<learn::Literal> assumptions) {
        const std::size_t extra = assumptions.size();
        for (const Compiled::Guard& guard : compiled->guards) assumptions.push_back(guard.holds);
        // What the variable may be at most is no question.
        if (by && *by >= compiled->solver.upper(compiled->objective)) by.reset();
        if (by) assumptions.push_back(learn::atMost(compiled->objective, static_cast<learn::Value>(*by)));
        learn::Solver& solver = compiled->solver;
        switch (solver.solve(assumptions, {limits.work, limits.conflicts, limits.cancelled}, *brancher)) {
        case learn::Outcome::Unknown:
            return Verdict::Unknown;
        case learn::Outcome::Satisfied: {
            Schedule found = read();
            solver.backtrackToRoot();
            hint(found, true);
            last = std::move(found);
            if (const Cost cost = valueOf(*last); !best || cost < value_) take(*last, cost);
            return Verdict::Satisfied;
        }
        case learn::Outcome::Refuted:
            break;
        }
        const std::vector<learn::Literal>& core = solver.core();
        const auto isBlamed = [&](learn::Literal one) {
            return std::find(core.begin(), core.end(), one) != core.end();
        };
        if (std::any_of(assumptions.begin(), assumptions.begin() + static_cast<std::ptrdiff_t>(extra), isBlamed)) {
            return Verdict::Refuted;
        }
        const bool isAboutTime = by && std::find(core.begin(), core.end(), assumptions.back()) != core.end();
        if (!isAboutTime) {
            // With a schedule in hand the latest end itself was kept below it: there is nothing better.
            if (best) {
                bound_ = value_;
            } else {
                isHopeless_ = true;
                tellCore();
            }
        } else {
            bound_ = std::max(bound_, *by + 1);
            // Where only some limits were to blame, it holds under these alone, and the kernel has learnt that.
            if (core.size() == 1 && !solver.addClause({costsAtLeast(bound_)})) closeAt();
        }
        return Verdict::Refuted;
    }

    /// What the kernel's objective stands for.
    [[nodiscard]] Cost valueOf(const Schedule& schedule) const {
        return compiled->hasCosts ? costOf(problem, schedule) : 0;
    }
    void take(const Schedule& schedule, Cost value) {
        best = schedule;
        value_ = value;
    }
    [[nodiscard]] learn::Literal costsAtLeast(Cost cost) const {
        return learn::atLeast(compiled->objective, static_cast<learn::Value>(cost));
    }

    void tellCore() {
        const std::vector<learn::Literal>& core = compiled->solver.core();
        for (const Compiled::Guard& guard : compiled->guards) {
            if (std::find(core.begin(), core.end(), guard.holds) != core.end()) clash.push_back(guard.limit);
        }
    }

    void closeAt() {
        if (best) {
            bound_ = value_;
        } else {
            isHopeless_ = true;
        }
    }

    [[nodiscard]] Schedule read() const {
        const learn::Solver& solver = compiled->solver;
        Schedule schedule;
        for (std::size_t a = 0; a < compiled->doings.size(); ++a) {
            const Doing& doing = compiled->doings[a];
            if (doing.ways.empty() || solver.isFalse(doing.present)) {
                schedule.placed.push_back({0, 0, kAbsent, {}});
                continue;
            }
            const auto way = std::find_if(doing.ways.begin(), doing.ways.end(),
                                          [&](const Way& one) { return solver.isTrue(one.present); });
            assert(way != doing.ways.end());
            Placed placed;
            placed.start = solver.lower(doing.start.variable);
            placed.end = solver.lower(way->end.variable) + way->end.offset;
            placed.mode = way->mode;
            const Mode& mode = problem.activities[a].modes[static_cast<std::size_t>(way->mode)];
            for (std::size_t need = 0; need < way->places.size(); ++need) {
                int places = mode.needs[need].count;
                for (const Way::Place& place : way->places[need]) {
                    if (places > 0 && solver.isTrue(place.fills)) {
                        placed.workers.push_back(place.worker);
                        --places;
                    }
                }
            }
            placed.workers.insert(placed.workers.end(), mode.team.begin(), mode.team.end());
            schedule.placed.push_back(std::move(placed));
        }
        return schedule;
    }

    void hint(const Schedule& schedule, bool isValid) {
        learn::Solver& solver = compiled->solver;
        for (std::size_t a = 0; a < compiled->doings.size(); ++a) {
            const Doing& doing = compiled->doings[a];
            const Placed& placed = schedule.placed[a];
            if (doing.ways.empty()) continue;
            if (doing.present != learn::kTrue) {
                solver.hint(learn::variableOf(doing.present.half), placed.mode != kAbsent ? 1 : 0);
            }
            if (placed.mode == kAbsent) continue;
            solver.hint(doing.start.variable, placed.start);
            if (doing.end.variable != doing.start.variable) solver.hint(doing.end.variable, placed.end);
            for (const Way& way : doing.ways) {
                if (way.present == learn::kTrue || way.present == ~learn::kTrue) continue;
                solver.hint(way.start, placed.start);
                solver.hint(learn::variableOf(way.present.half), way.mode == placed.mode ? 1 : 0);
                for (const std::vector<Way::Place>& places : way.places) {
                    for (const Way::Place& place : places) hintFill(place, way, placed);
                }
            }
            if (doing.ways.size() == 1) {
                for (const std::vector<Way::Place>& places : doing.ways[0].places) {
                    for (const Way::Place& place : places) hintFill(place, doing.ways[0], placed);
                }
            }
        }
        for (const Compiled::Order& order : compiled->orders) {
            const bool holds = schedule.placed[order.before].end <= schedule.placed[order.after].start;
            solver.hint(learn::variableOf(order.holds.half), holds ? 1 : 0);
        }
        for (const Compiled::Order& together : compiled->togethers) {
            const bool holds = schedule.placed[together.before].start == schedule.placed[together.after].start;
            solver.hint(learn::variableOf(together.holds.half), holds ? 1 : 0);
        }
        solver.hint(compiled->latest, latestEnd(schedule));
        if (isValid && compiled->hasCosts)
            solver.hint(compiled->objective, static_cast<learn::Value>(valueOf(schedule)));
    }

    void hintFill(const Way::Place& place, const Way& way, const Placed& placed) {
        const bool fills = way.mode == placed.mode && std::find(placed.workers.begin(), placed.workers.end(),
                                                                place.worker) != placed.workers.end();
        compiled->solver.hint(learn::variableOf(place.fills.half), fills ? 1 : 0);
    }

    /// From now on only what is better than best.
    void tighten() override {
        if (!best || bound_ >= value_) return;
        if (!compiled->solver.addClause({~costsAtLeast(value_)})) closeAt();
    }

    const Problem& problem;
    std::unique_ptr<Problem> loosened; ///< without its named limits on time; only where these are guarded
    const Problem& open;
    std::unique_ptr<Compiled> compiled;
    std::unique_ptr<BranchEarliest> brancher;
    std::optional<Schedule> best, last;
    std::unique_ptr<Near> near; ///< once a neighbourhood was asked for
    Cost value_ = 0;            ///< of best
    Cost bound_ = 0;
    bool isHopeless_ = false;
    std::vector<std::string> clash;
    SearchDown down;
};

Prover::Prover(const Problem& problem, const ProverOptions& options)
    : engine_(std::make_unique<Engine>(problem, options)) {}
Prover::~Prover() = default;

Verdict Prover::decide(Cost most, const ProverLimits& limits) { return engine_->ask(most, limits); }

Verdict Prover::improve(const ProverLimits& limits, const Improved& improved) {
    return engine_->down.run(*engine_, limits, improved);
}

Verdict Prover::refute(const ProverLimits& limits, const Improved& improved) {
    return searchUp(*engine_, limits, improved);
}

void Prover::hint(const Schedule& schedule, bool isValid) {
    if (engine_->isHopeless_ || schedule.placed.size() != engine_->problem.activities.size()) return;
    engine_->hint(schedule, isValid);
    if (!isValid) return;
    if (const Cost value = engine_->valueOf(schedule); value < engine_->value()) {
        engine_->take(schedule, value);
        engine_->down.aimFor(value - engine_->bound_);
    }
}

void Prover::know(Cost bound) {
    Engine& engine = *engine_;
    if (engine.isHopeless_ || bound <= engine.bound_) return;
    engine.bound_ = bound;
    if (!engine.compiled->solver.addClause({engine.costsAtLeast(bound)})) engine.closeAt();
}

Verdict Prover::decideNear(const Schedule& schedule, const Kept& kept, Cost most, const ProverLimits& limits) {
    Engine& engine = *engine_;
    if (engine.isHopeless_ || most < engine.bound_) return Verdict::Refuted;
    if (!engine.near) engine.near = std::make_unique<Near>(*engine.compiled);
    return engine.ask(most, limits, engine.near->assume(schedule, kept));
}

const std::optional<Schedule>& Prover::last() const { return engine_->last; }

Verdict Prover::decideUnder(const std::vector<std::string>& limits, const ProverLimits& work) {
    Engine& engine = *engine_;
    if (!engine.compiled) return Verdict::Refuted; // clash() has the loop
    engine.clash.clear();
    std::vector<learn::Literal> assumptions;
    for (const Compiled::Guard& guard : engine.compiled->guards) {
        if (std::find(limits.begin(), limits.end(), guard.limit) != limits.end()) assumptions.push_back(guard.holds);
    }
    learn::Solver& solver = engine.compiled->solver;
    switch (solver.solve(assumptions, {work.work, work.conflicts, work.cancelled}, *engine.brancher)) {
    case learn::Outcome::Unknown:
        return Verdict::Unknown;
    case learn::Outcome::Satisfied:
        solver.backtrackToRoot();
        return Verdict::Satisfied;
    case learn::Outcome::Refuted:
        break;
    }
    engine.tellCore();
    return Verdict::Refuted;
}

std::vector<std::string> Prover::namedLimits() const {
    std::vector<std::string> limits;
    if (engine_->compiled) {
        for (const Compiled::Guard& guard : engine_->compiled->guards) limits.push_back(guard.limit);
    }
    return limits;
}

const std::optional<Schedule>& Prover::best() const { return engine_->best; }
Cost Prover::value() const { return engine_->best ? engine_->value_ : 0; }
Cost Prover::bound() const { return engine_->bound_; }
bool Prover::isHopeless() const { return engine_->isHopeless_; }
const std::vector<std::string>& Prover::clash() const { return engine_->clash; }
std::uint64_t Prover::work() const { return engine_->work(); }
std::uint64_t Prover::conflicts() const { return engine_->conflicts(); }

} // namespace piewright::schedule
