#include "schedule/proving.h"

#include "schedule/steps.h"

#include <algorithm>

namespace piewright::schedule {

std::unique_ptr<Prover> stateFor(const Problem& problem, const Turn& turn) {
    ProverOptions options;
    options.cancelled = turn.cancelled;
    auto prover = std::make_unique<Prover>(problem, options);
    if (turn.cancelled != nullptr && turn.cancelled->load(std::memory_order_relaxed)) prover.reset();
    return prover;
}

std::uint64_t prove(const Problem& problem, std::unique_ptr<Prover>& prover, const Turn& turn, Standing& standing,
                    Loop loop) {
    if (standing.isSettled()) return 0;
    std::uint64_t steps = 1;
    if (!prover) {
        prover = stateFor(problem, turn);
        if (!prover) return steps;
        steps += stepsToState(problem);
    }
    if (standing.schedule && (!prover->best() || standing.value < prover->value())) {
        prover->hint(*standing.schedule, true);
    }
    if (standing.bound > -kMostCost) prover->know(standing.bound);
    const std::uint64_t before = prover->work();
    ProverLimits limits;
    limits.work = workOf(turn.work > steps ? turn.work - steps : 0);
    limits.cancelled = turn.cancelled;
    const auto keep = [&](const Schedule& schedule, Cost value) {
        if (value >= standing.value) return;
        standing.schedule = schedule;
        standing.value = value;
        if (turn.found) turn.found(schedule, value);
    };
    (void)((*prover).*loop)(limits, keep);
    if (prover->isHopeless()) {
        if (!standing.schedule) standing.isHopeless = true;
    } else {
        standing.bound = std::max<Cost>(standing.bound, prover->bound());
    }
    return steps + stepsIn(prover->work() - before);
}

} // namespace piewright::schedule
