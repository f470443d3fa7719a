// The statement said twice: the checker and the costs against the naive twin, over random problems with every feature
// mixed and random schedules near to right ones. A longer run:
//   RC_PARAMS="max_success=200000 seed=7" build/release/bin/test_schedule --gtest_filter='PropertyOfStatement*'
#include "schedule/check.h"
#include "schedule/cost.h"
#include "schedule/random_problem.h"
#include "schedule/twin.h"
#include "schedule/twin_cost.h"

#include <gmock/gmock.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <random>

namespace piewright::schedule {
namespace {

Problem drawProblem() {
    Size size;
    size.activities = *rc::gen::inRange(1, 6);
    size.horizon = *rc::gen::inRange(4, 13);
    size.resources = *rc::gen::inRange(1, 4);
    size.workers = *rc::gen::inRange(0, 4);
    size.longest = *rc::gen::inRange(1, 5);
    size.lags = *rc::gen::inRange(0, 4);
    size.strictness = *rc::gen::inRange(0, 101);
    size.features = kEveryFeature;
    return randomProblem(*rc::gen::inRange<std::uint64_t>(0, 1'000'000'000), size);
}

RC_GTEST_PROP(PropertyOfStatement, RandomProblemsHaveNoFaults, ()) {
    const std::vector<std::string> faults = faultsIn(drawProblem());
    if (!faults.empty()) RC_FAIL(faults.front());
}

/// Something about one activity is another way.
void disturb(const Problem& problem, Schedule& schedule, std::mt19937_64& random) {
    const auto draw = [&](std::size_t below) { return static_cast<std::size_t>(random() % below); };
    const std::size_t a = draw(schedule.placed.size());
    Placed& placed = schedule.placed[a];
    if (placed.mode == kAbsent || (draw(6) == 0 && problem.activities[a].isOptional)) {
        placed = {0, 0, kAbsent, {}};
        return;
    }
    if (draw(4) == 0 && !placed.workers.empty()) {
        const std::size_t places =
            placed.workers.size() - problem.activities[a].modes[static_cast<std::size_t>(placed.mode)].team.size();
        if (places > 0) placed.workers[draw(places)] = static_cast<WorkerIndex>(draw(problem.workers.size()));
        return;
    }
    const auto by = static_cast<Tick>(draw(5)) - 2;
    placed.start += by;
    placed.end += by + (draw(5) == 0 ? 1 : 0);
}

RC_GTEST_PROP(PropertyOfStatement, TheCheckerSaysWhatTheTwinSays, ()) {
    const Problem problem = drawProblem();
    const TwinAnswer twin = twinSolve(problem, 300'000);
    RC_PRE(twin.schedule.has_value());
    const std::vector<Violation> violations = check(problem, *twin.schedule);
    if (!violations.empty()) RC_FAIL(violations.front().what);
    RC_ASSERT(twinKeeps(problem, *twin.schedule));
    RC_ASSERT(costOf(problem, *twin.schedule) == twinCost(problem, *twin.schedule));
    std::mt19937_64 random(*rc::gen::inRange<std::uint64_t>(0, 1'000'000));
    int kept = 0;
    Schedule schedule = *twin.schedule;
    for (int i = 0; i < 60; ++i) {
        Schedule next = schedule;
        disturb(problem, next, random);
        const std::vector<Violation> found = check(problem, next);
        if (found.empty() != twinKeeps(problem, next)) RC_FAIL(found.empty() ? "the twin minds" : found.front().what);
        if (!found.empty()) continue;
        ++kept;
        RC_ASSERT(costOf(problem, next) == twinCost(problem, next));
        schedule = std::move(next); // on from here
    }
    RC_TAG(kept > 0 ? std::string("moved") : std::string("fast"));
}

} // namespace
} // namespace piewright::schedule
