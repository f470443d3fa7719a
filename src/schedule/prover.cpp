#include "schedule/prover.h"

#include "schedule/compiled.h"

#include <algorithm>
#include <cassert>
#include <utility>

namespace piewright::schedule {

namespace {

constexpr std::uint64_t kPatience = 400; ///< dead ends for a step that may turn out too large

/// First the activity that can start earliest, as early as it can; after every other restart activity decides.
class EarliestFirst final : public learn::Brancher {
  public:
    explicit EarliestFirst(const Compiled& compiled) : compiled_(compiled) {}

    std::optional<learn::Literal> first(const learn::Solver& solver) override {
        return isEarliestTurn_ ? last(solver) : std::nullopt;
    }

    std::optional<learn::Literal> last(const learn::Solver& solver) override {
        const Doing* best = nullptr;
        std::pair<Tick, Tick> bestKey;
        for (const Doing& doing : compiled_.doings) {
            if (solver.isFixed(doing.start.variable) && isChosen(solver, doing)) continue;
            const std::pair key{solver.lower(doing.start.variable), solver.upper(doing.start.variable)};
            if (best == nullptr || key < bestKey) {
                best = &doing;
                bestKey = key;
            }
        }
        if (best == nullptr) return undecided(solver);
        // The way that can start earliest, the preferred one of equals.
        const Way* way = nullptr;
        for (const Way& one : best->ways) {
            if (solver.isTrue(one.present)) {
                way = nullptr;
                break;
            }
            if (!solver.isFalse(one.present) &&
                (way == nullptr || solver.lower(one.start) + one.duration < solver.lower(way->start) + way->duration)) {
                way = &one;
            }
        }
        if (way != nullptr) return way->present;
        return learn::atMost(best->start.variable, solver.lower(best->start.variable));
    }

    void restarted(std::int64_t count) override { isEarliestTurn_ = count % 2 == 0; }

  private:
    static bool isChosen(const learn::Solver& solver, const Doing& doing) {
        return doing.ways.size() == 1 || std::any_of(doing.ways.begin(), doing.ways.end(),
                                                     [&](const Way& way) { return solver.isTrue(way.present); });
    }

    std::optional<learn::Literal> undecided(const learn::Solver& solver) {
        for (const learn::Literal filled : compiled_.fills) {
            if (!solver.isTrue(filled) && !solver.isFalse(filled)) return filled;
        }
        return std::nullopt;
    }

    const Compiled& compiled_;
    bool isEarliestTurn_ = true;
};

} // namespace

namespace {

/// Without the named limits on time, which guards put in again one by one; with room for what goes past the horizon.
Problem loosen(Problem problem) {
    const bool isHorizonNamed = !problem.horizonReason.empty();
    std::int64_t open = problem.horizon;
    for (Activity& activity : problem.activities) {
        Tick longest = 0;
        for (const Mode& mode : activity.modes) longest = std::max(longest, mode.duration);
        open += longest;
        if (!activity.releaseReason.empty()) open += std::exchange(activity.release, 0);
        if (!activity.dueReason.empty()) activity.due = kNever;
    }
    std::vector<Lag> unnamed;
    for (Lag& lag : problem.lags) {
        open += std::max(lag.least, 0);
        if (lag.reason.empty()) unnamed.push_back(std::move(lag));
    }
    problem.lags = std::move(unnamed);
    for (Worker& worker : problem.workers) {
        if (!worker.name.empty()) worker.present = {{-kNever, kNever}};
    }
    if (isHorizonNamed) problem.horizon = static_cast<Tick>(std::min<std::int64_t>(open, kNever / 2));
    return problem;
}

} // namespace

Tick latestEnd(const Schedule& schedule) {
    Tick latest = 0;
    for (const Placed& placed : schedule.placed) latest = std::max(latest, placed.end);
    return latest;
}

struct Prover::Engine {
    Engine(const Problem& stated, const ProverOptions& options)
        : problem(stated), loosened(options.guardLimits ? std::make_unique<Problem>(loosen(stated)) : nullptr),
          model(loosened ? *loosened : stated) {
        if (model.hopeless) {
            isHopeless = true;
            clash = model.loop.value_or(std::vector<std::string>{});
            return;
        }
        compiled = std::make_unique<Compiled>(model, problem, options);
        brancher = std::make_unique<EarliestFirst>(*compiled);
        if (!compiled->isPossible) {
            isHopeless = true;
        } else {
            bound = compiled->solver.lower(compiled->latest);
        }
    }

    /// Latest end of best, kNever where there is none.
    [[nodiscard]] Tick value() const { return best ? latestEnd(*best) : kNever; }
    void tell(const Improved& improved) const {
        if (improved && best) improved(*best, latestEnd(*best));
    }

    Verdict ask(std::optional<Tick> by, const ProverLimits& limits) {
        if (isHopeless) return Verdict::Refuted;
        if (by && *by < bound) return Verdict::Refuted;
        if (by && best && latestEnd(*best) <= *by) return Verdict::Satisfied;
        std::vector<learn::Literal> assumptions;
        for (const Compiled::Guard& guard : compiled->guards) assumptions.push_back(guard.holds);
        if (by) assumptions.push_back(learn::atMost(compiled->latest, *by));
        learn::Solver& solver = compiled->solver;
        switch (solver.solve(assumptions, {limits.work, limits.conflicts, limits.cancelled}, *brancher)) {
        case learn::Outcome::Unknown:
            return Verdict::Unknown;
        case learn::Outcome::Satisfied: {
            Schedule found = read();
            solver.backtrackToRoot();
            hint(found);
            best = std::move(found);
            return Verdict::Satisfied;
        }
        case learn::Outcome::Refuted:
            break;
        }
        const std::vector<learn::Literal>& core = solver.core();
        const bool isAboutTime = by && std::find(core.begin(), core.end(), assumptions.back()) != core.end();
        if (!isAboutTime) {
            // With a schedule in hand the latest end itself was kept below it: there is nothing better.
            if (best) {
                bound = latestEnd(*best);
            } else {
                isHopeless = true;
                tellCore();
            }
        } else {
            bound = std::max(bound, *by + 1);
            // Where only some limits were to blame, it holds under these alone, and the kernel has learnt that.
            if (core.size() == 1 && !solver.addClause({learn::atLeast(compiled->latest, bound)})) closeAt();
        }
        return Verdict::Refuted;
    }

    void tellCore() {
        const std::vector<learn::Literal>& core = compiled->solver.core();
        for (const Compiled::Guard& guard : compiled->guards) {
            if (std::find(core.begin(), core.end(), guard.holds) != core.end()) clash.push_back(guard.limit);
        }
    }

    void closeAt() {
        if (best) {
            bound = latestEnd(*best);
        } else {
            isHopeless = true;
        }
    }

    [[nodiscard]] Schedule read() const {
        const learn::Solver& solver = compiled->solver;
        Schedule schedule;
        for (std::size_t a = 0; a < compiled->doings.size(); ++a) {
            const Doing& doing = compiled->doings[a];
            const auto way = std::find_if(doing.ways.begin(), doing.ways.end(),
                                          [&](const Way& one) { return solver.isTrue(one.present); });
            assert(way != doing.ways.end());
            Placed placed;
            placed.start = solver.lower(doing.start.variable);
            placed.end = placed.start + way->duration;
            placed.mode = way->mode;
            const Mode& mode = problem.activities[a].modes[static_cast<std::size_t>(way->mode)];
            for (std::size_t need = 0; need < way->places.size(); ++need) {
                int open = mode.needs[need].count;
                for (const Way::Place& place : way->places[need]) {
                    if (open > 0 && solver.isTrue(place.fills)) {
                        placed.workers.push_back(place.worker);
                        --open;
                    }
                }
            }
            placed.workers.insert(placed.workers.end(), mode.team.begin(), mode.team.end());
            schedule.placed.push_back(std::move(placed));
        }
        return schedule;
    }

    void hint(const Schedule& schedule) {
        learn::Solver& solver = compiled->solver;
        for (std::size_t a = 0; a < compiled->doings.size(); ++a) {
            const Doing& doing = compiled->doings[a];
            const Placed& placed = schedule.placed[a];
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
        solver.hint(compiled->latest, latestEnd(schedule));
    }

    void hintFill(const Way::Place& place, const Way& way, const Placed& placed) {
        const bool fills = way.mode == placed.mode && std::find(placed.workers.begin(), placed.workers.end(),
                                                                place.worker) != placed.workers.end();
        compiled->solver.hint(learn::variableOf(place.fills.half), fills ? 1 : 0);
    }

    /// From now on only what is better than best.
    void tighten() {
        if (!best || bound >= latestEnd(*best)) return;
        if (!compiled->solver.addClause({learn::atMost(compiled->latest, latestEnd(*best) - 1)})) closeAt();
    }

    const Problem& problem;
    std::unique_ptr<Problem> loosened; ///< without its named limits on time; only where these are guarded
    Model model;
    std::unique_ptr<Compiled> compiled;
    std::unique_ptr<EarliestFirst> brancher;
    std::optional<Schedule> best;
    Tick bound = 0;
    bool isHopeless = false;
    std::vector<std::string> clash;
    Tick step = 0; ///< of improve(): how much earlier the next question asks
    std::uint64_t patience = kPatience;
};

Prover::Prover(const Problem& problem, const ProverOptions& options)
    : engine_(std::make_unique<Engine>(problem, options)) {}
Prover::~Prover() = default;

Verdict Prover::decide(Tick latest, const ProverLimits& limits) { return engine_->ask(latest, limits); }

namespace {
/// What is left of `limits` after `work` and `conflicts`.
ProverLimits rest(const ProverLimits& limits, std::uint64_t work, std::uint64_t conflicts) {
    return {limits.work - std::min(limits.work, work), limits.conflicts - std::min(limits.conflicts, conflicts),
            limits.cancelled};
}
bool isSpent(const ProverLimits& limits) {
    return limits.work == 0 || limits.conflicts == 0 ||
           (limits.cancelled != nullptr && limits.cancelled->load(std::memory_order_relaxed));
}
} // namespace

Verdict Prover::improve(const ProverLimits& limits, const Improved& improved) {
    Engine& engine = *engine_;
    const std::uint64_t workBefore = work();
    const std::uint64_t conflictsBefore = conflicts();
    while (!engine.isHopeless) {
        if (engine.bound >= engine.value()) return Verdict::Satisfied;
        ProverLimits left = rest(limits, work() - workBefore, conflicts() - conflictsBefore);
        if (isSpent(left)) return Verdict::Unknown;
        std::optional<Tick> target;
        if (engine.best) {
            engine.tighten();
            const Tick gap = engine.value() - engine.bound;
            if (gap <= 0) continue;
            engine.step = std::clamp<Tick>(engine.step, 1, std::max<Tick>(1, gap / 2));
            target = engine.value() - engine.step;
            if (engine.step > 1) left.conflicts = std::min(left.conflicts, engine.patience);
        }
        const Tick before = engine.value();
        switch (engine.ask(target, left)) {
        case Verdict::Satisfied:
            engine.step = before == kNever ? engine.value() : std::max(engine.step * 2, before - engine.value());
            engine.tell(improved);
            break;
        case Verdict::Refuted:
            break; // bound() has moved, or the end is reached
        case Verdict::Unknown:
            engine.step /= 2;
            break;
        }
    }
    return Verdict::Refuted;
}

Verdict Prover::refute(const ProverLimits& limits, const Improved& improved) {
    Engine& engine = *engine_;
    const std::uint64_t workBefore = work();
    const std::uint64_t conflictsBefore = conflicts();
    Tick step = 1;
    std::uint64_t patience = kPatience;
    while (!engine.isHopeless) {
        if (engine.bound >= engine.value()) return Verdict::Satisfied;
        ProverLimits left = rest(limits, work() - workBefore, conflicts() - conflictsBefore);
        if (isSpent(left)) return Verdict::Unknown;
        Tick target = engine.bound + step - 1;
        target = std::min(target, engine.value() - 1);
        if (step > 1) left.conflicts = std::min(left.conflicts, patience);
        switch (engine.ask(target, left)) {
        case Verdict::Satisfied:
            step = 1;
            engine.tell(improved);
            break;
        case Verdict::Refuted:
            step *= 2;
            break;
        case Verdict::Unknown:
            step = 1;
            break;
        }
    }
    return Verdict::Refuted;
}

void Prover::hint(const Schedule& schedule, bool isValid) {
    if (engine_->isHopeless || schedule.placed.size() != engine_->problem.activities.size()) return;
    engine_->hint(schedule);
    if (isValid && latestEnd(schedule) < engine_->value()) {
        engine_->best = schedule;
        engine_->step = latestEnd(schedule);
    }
}

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
Tick Prover::bound() const { return engine_->bound; }
bool Prover::isHopeless() const { return engine_->isHopeless; }
const std::vector<std::string>& Prover::clash() const { return engine_->clash; }
std::uint64_t Prover::work() const { return engine_->compiled ? engine_->compiled->solver.counts().work : 0; }
std::uint64_t Prover::conflicts() const { return engine_->compiled ? engine_->compiled->solver.counts().conflicts : 0; }

} // namespace piewright::schedule
