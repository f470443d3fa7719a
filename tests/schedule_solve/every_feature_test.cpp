// The whole engine against its naive twin, on small random problems with every feature and every cost mixed. Longer:
//   RC_PARAMS="max_success=20000 seed=7" build/release/bin/test_schedule_solve --gtest_filter='EveryFeature*'
#include "schedule/check.h"
#include "schedule/cost.h"
#include "schedule/random_problem.h"
#include "schedule/solve.h"
#include "schedule/twin.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cstdlib>

namespace piewright::schedule {
namespace {

const int kSeeded = setenv("RC_PARAMS", "max_success=400 seed=1963", 0); // NOLINT(concurrency-mt-unsafe)

/// Evenly, however small the cases that rapidcheck begins with.
template <class T> T evenly(T least, T end) {
    return *rc::gen::resize(rc::kNominalSize, rc::gen::inRange<T>(least, end));
}

Problem drawProblem() {
    Size size;
    size.activities = evenly(1, 6);
    size.horizon = evenly(5, 13);
    size.resources = evenly(1, 4);
    size.workers = evenly(0, 4);
    size.longest = evenly(1, 5);
    size.lags = evenly(0, 5);
    size.features = evenly<unsigned>(0, kEveryFeature + 1);
    return randomProblem(evenly<std::uint64_t>(0, 1'000'000'000), size);
}

RC_GTEST_PROP(EveryFeature, TheAnswerIsTheTwins, ()) {
    const Problem problem = drawProblem();
    const TwinAnswer twin = twinBest(problem, 2'000'000);
    RC_PRE(twin.finished);
    Options options;
    options.threads = evenly(1, 3);
    options.work = 3'000'000;
    const Answer answer = solve(problem, options);
    RC_CLASSIFY(!twin.schedule, "infeasible");
    if (!twin.schedule) {
        RC_ASSERT(answer.status == Status::Infeasible);
        return;
    }
    RC_CLASSIFY(twin.value != 0, "costs");
    RC_CLASSIFY(problem.activities.size() >= 4, "four activities or five");
    RC_ASSERT(answer.status == Status::Proven);
    const auto violations = check(problem, *answer.schedule);
    if (!violations.empty()) RC_FAIL(violations.front().what);
    RC_ASSERT(costOf(problem, *answer.schedule) == answer.value);
    RC_ASSERT(answer.value == twin.value);
    RC_ASSERT(answer.bound == twin.value);
}

/// Whatever it ends with, what it says is so.
RC_GTEST_PROP(EveryFeature, WhatIsSaidEarlyIsSo, ()) {
    const Problem problem = drawProblem();
    const TwinAnswer twin = twinBest(problem, 2'000'000);
    RC_PRE(twin.finished);
    Options options;
    options.work = evenly<std::uint64_t>(1, 3'000);
    const Answer answer = solve(problem, options);
    RC_ASSERT(twin.schedule || !answer.schedule);
    RC_ASSERT(answer.status != Status::Infeasible || !twin.schedule);
    if (twin.schedule) RC_ASSERT(answer.bound <= twin.value);
    if (!answer.schedule) return;
    const auto violations = check(problem, *answer.schedule);
    if (!violations.empty()) RC_FAIL(violations.front().what);
    RC_ASSERT(costOf(problem, *answer.schedule) == answer.value);
    RC_ASSERT(answer.value >= twin.value);
    RC_ASSERT(answer.status != Status::Proven || answer.value == twin.value);
}

} // namespace
} // namespace piewright::schedule
