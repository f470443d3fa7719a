// The prover against the exhaustive twin, over small random problems with every feature mixed: the same feasibility,
// the same least cost, never a bound above it. A longer run:
//   RC_PARAMS="max_success=100000 seed=7" build/release/bin/test_schedule_prover --gtest_filter='PropertyOfProver*'
#include "schedule/check.h"
#include "schedule/cost.h"
#include "schedule/prover.h"
#include "schedule/random_problem.h"
#include "schedule/twin.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cstdlib>

namespace piewright::schedule {
namespace {

// Known before rapidcheck looks for it: the same cases every time, unless the environment says otherwise.
const int kSeeded =
    setenv("RC_PARAMS", "max_success=1000 seed=1993 max_discard_ratio=100", 0); // NOLINT(concurrency-mt-unsafe)

constexpr std::uint64_t kTwinLimit = 60'000;

Problem drawProblem(unsigned features) {
    Size size;
    size.activities = *rc::gen::inRange(1, 6);
    size.horizon = *rc::gen::inRange(4, 11);
    size.resources = *rc::gen::inRange(1, 4);
    size.workers = *rc::gen::inRange(0, 4);
    size.longest = *rc::gen::inRange(1, 5);
    size.lags = *rc::gen::inRange(0, 4);
    size.strictness = *rc::gen::inRange(0, 101);
    size.features = features;
    return randomProblem(*rc::gen::inRange<std::uint64_t>(0, 1'000'000'000), size);
}

void mustKeep(const Problem& problem, const Schedule& schedule, Cost value) {
    const std::vector<Violation> violations = check(problem, schedule);
    if (!violations.empty()) RC_FAIL(violations.front().what);
    RC_ASSERT(costOf(problem, schedule) == value);
}

void agrees(const Problem& problem, const ProverOptions& options = {}) {
    const TwinAnswer twin = twinBest(problem, kTwinLimit);
    RC_PRE(twin.finished);
    Prover fromAbove(problem, options);
    const Verdict verdict = fromAbove.improve({});
    RC_ASSERT(verdict == (twin.schedule ? Verdict::Satisfied : Verdict::Refuted));
    Prover fromBelow(problem, options);
    RC_ASSERT(fromBelow.refute({}) == verdict);
    if (!twin.schedule) return;
    mustKeep(problem, *fromAbove.best(), twin.value);
    mustKeep(problem, *fromBelow.best(), twin.value);
    RC_ASSERT(fromAbove.bound() == twin.value);
    RC_ASSERT(fromBelow.bound() == twin.value);
    Prover asked(problem, options);
    asked.hint(*twin.schedule, false);
    const Cost by = twin.value + *rc::gen::inRange(-3, 4);
    RC_ASSERT(asked.bound() <= twin.value);
    RC_ASSERT(asked.decide(by, {}) == (by >= twin.value ? Verdict::Satisfied : Verdict::Refuted));
    RC_ASSERT(asked.bound() <= twin.value);
}

RC_GTEST_PROP(PropertyOfProver, WithEveryFeatureMixed, ()) { agrees(drawProblem(kEveryFeature)); }

RC_GTEST_PROP(PropertyOfProver, WithOneOrTwoFeatures, ()) {
    const auto bit = [] { return 1U << *rc::gen::inRange(0U, 13U); };
    agrees(drawProblem(bit() | bit()));
}

RC_GTEST_PROP(PropertyOfProver, WithEveryLimitAndTheMakespan, ()) {
    Problem problem = drawProblem(kEveryLimit);
    problem.costs = makespan();
    agrees(problem);
}

RC_GTEST_PROP(PropertyOfProver, WithFewerMeans, ()) {
    ProverOptions plain;
    plain.edgeFinding = *rc::gen::inRange(0, 2) == 0;
    plain.orderLiterals = *rc::gen::inRange(0, 2) == 0;
    agrees(drawProblem(kEveryFeature), plain);
}

RC_GTEST_PROP(PropertyOfProver, GuardedLimitsKeptTogetherAreTheProblem, ()) {
    const Problem problem = drawProblem(kEveryLimit);
    const TwinAnswer twin = twinSolve(problem, kTwinLimit);
    RC_PRE(twin.finished);
    ProverOptions guarded;
    guarded.guardLimits = true;
    Prover prover(problem, guarded);
    RC_ASSERT(prover.decideUnder(prover.namedLimits(), {}) == (twin.schedule ? Verdict::Satisfied : Verdict::Refuted));
    Prover whole(problem, guarded);
    RC_ASSERT(whole.improve({}) == (twin.schedule ? Verdict::Satisfied : Verdict::Refuted));
    if (twin.schedule) {
        const std::vector<Violation> violations = check(problem, *whole.best());
        if (!violations.empty()) RC_FAIL(violations.front().what);
    }
}

} // namespace
} // namespace piewright::schedule
