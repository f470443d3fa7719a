// The engine against its naive twin, over small random problems with every feature mixed. A longer run:
//   RC_PARAMS="max_success=200000 seed=7" build/release/bin/test_schedule --gtest_filter='Property*'
#include "schedule/builder.h"
#include "schedule/check.h"
#include "schedule/energy.h"
#include "schedule/limits.h"
#include "schedule/model.h"
#include "schedule/random_problem.h"
#include "schedule/solve.h"
#include "schedule/tree.h"
#include "schedule/twin.h"

#include <gmock/gmock.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cstdlib>

namespace piewright::schedule {
namespace {

// Known before rapidcheck looks for it: the same cases every time, unless the environment says otherwise.
const int kSeeded = setenv("RC_PARAMS", "max_success=800 seed=1963", 0); // NOLINT(concurrency-mt-unsafe)

constexpr std::uint64_t kTwinLimit = 3'000'000;

Problem drawProblem() {
    Size size;
    size.activities = *rc::gen::inRange(1, 7);
    size.horizon = *rc::gen::inRange(5, 16);
    size.resources = *rc::gen::inRange(1, 4);
    size.workers = *rc::gen::inRange(0, 5);
    size.longest = *rc::gen::inRange(1, 6);
    size.lags = *rc::gen::inRange(0, 6);
    return randomProblem(*rc::gen::inRange<std::uint64_t>(0, 1'000'000'000), size);
}

Options options() { return {1, 200'000}; }

void mustKeep(const Problem& problem, const Schedule& schedule) {
    const std::vector<Violation> violations = check(problem, schedule);
    if (!violations.empty()) {
        RC_FAIL(violations.front().what);
    }
}

RC_GTEST_PROP(PropertyOfProblems, HaveNoFaults, ()) {
    const std::vector<std::string> faults = faultsIn(drawProblem());
    if (!faults.empty()) {
        RC_FAIL(faults.front());
    }
}

RC_GTEST_PROP(PropertyOfSolve, AgreesWithTheTwin, ()) {
    const Problem problem = drawProblem();
    const Answer answer = solve(problem, options());
    const TwinAnswer twin = twinSolve(problem, kTwinLimit);
    RC_PRE(twin.finished);
    if (twin.schedule) {
        mustKeep(problem, *twin.schedule);
    } // the twin and the checker agree, too
    RC_ASSERT(answer.status == (twin.schedule ? Status::Proven : Status::Infeasible));
    RC_ASSERT(answer.schedule.has_value() == twin.schedule.has_value());
    if (answer.schedule) {
        mustKeep(problem, *answer.schedule);
    }
}

RC_GTEST_PROP(PropertyOfSolve, GivesTheSameAnswerToTheSameQuestion, ()) {
    const Problem problem = drawProblem();
    const Options asked{*rc::gen::inRange<std::uint64_t>(0, 5), *rc::gen::inRange<std::uint64_t>(1, 20'000)};
    const Answer one = solve(problem, asked);
    const Answer other = solve(problem, asked);
    RC_ASSERT(one.status == other.status);
    RC_ASSERT(one.schedule == other.schedule);
    RC_ASSERT(one.clash.limits == other.clash.limits);
    RC_ASSERT(one.clash.proved == other.clash.proved);
    RC_ASSERT(one.work == other.work);
}

std::vector<NamedLimit> notNamed(const std::vector<NamedLimit>& limits, const std::vector<std::string>& named) {
    std::vector<NamedLimit> rest;
    std::copy_if(limits.begin(), limits.end(), std::back_inserter(rest), [&](const NamedLimit& limit) {
        return std::find(named.begin(), named.end(), limit.words) == named.end();
    });
    return rest;
}

RC_GTEST_PROP(PropertyOfClash, ItsLimitsAloneAdmitNoScheduleAndEachIsNeeded, ()) {
    const Problem problem = drawProblem();
    const Answer answer = solve(problem, options());
    RC_PRE(answer.status == Status::Infeasible);
    RC_ASSERT(answer.clash.proved);
    RC_ASSERT(!answer.clash.limits.empty());
    const std::vector<NamedLimit> all = namedLimits(problem);
    const TwinAnswer alone = twinSolve(without(problem, notNamed(all, answer.clash.limits)), kTwinLimit);
    RC_ASSERT(!alone.schedule);
    for (std::size_t i = 0; i < answer.clash.limits.size(); ++i) {
        std::vector<std::string> fewer = answer.clash.limits;
        fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
        const TwinAnswer twin = twinSolve(without(problem, notNamed(all, fewer)), kTwinLimit);
        RC_ASSERT(twin.schedule || !twin.finished);
    }
}

/// Each means of the engine by itself, so that one does not hide the faults of another.
RC_GTEST_PROP(PropertyOfTree, DecidesAsTheTwinDoes, ()) {
    const Problem problem = drawProblem();
    const TwinAnswer twin = twinSolve(problem, kTwinLimit);
    const Model model(problem);
    RC_PRE(twin.finished && !model.hopeless);
    Tree tree(model);
    RC_ASSERT(tree.search(1'000'000) == (twin.schedule ? TreeAnswer::Found : TreeAnswer::None));
    if (twin.schedule) {
        mustKeep(problem, tree.schedule());
    }
}

RC_GTEST_PROP(PropertyOfBuilder, FindsOnlyWhatThereIs, ()) {
    const Problem problem = drawProblem();
    const TwinAnswer twin = twinSolve(problem, kTwinLimit);
    const Model model(problem);
    RC_PRE(twin.finished && !model.hopeless);
    Builder builder(model, 1);
    const std::optional<Schedule> schedule = builder.run(5000);
    if (schedule) {
        RC_ASSERT(twin.schedule.has_value());
        mustKeep(problem, *schedule);
        mustKeep(problem, builder.compacted(*twin.schedule));
    }
}

RC_GTEST_PROP(PropertyOfEnergy, NeverRefutesWhatCanBeDone, ()) {
    const Problem problem = drawProblem();
    const TwinAnswer twin = twinSolve(problem, kTwinLimit);
    const Model model(problem);
    if (model.hopeless) {
        RC_ASSERT(!twin.schedule);
    } else if (isOverloaded(model)) {
        RC_ASSERT(!twin.schedule);
    }
}

RC_GTEST_PROP(PropertyOfLargerProblems, EveryScheduleKeepsItsLimits, ()) {
    Size size;
    size.activities = *rc::gen::inRange(10, 60);
    size.horizon = *rc::gen::inRange(60, 400);
    size.resources = *rc::gen::inRange(2, 10);
    size.workers = *rc::gen::inRange(2, 8);
    size.longest = *rc::gen::inRange(2, 12);
    size.lags = *rc::gen::inRange(0, 40);
    size.strictness = *rc::gen::inRange(0, 40);
    const Problem problem = randomProblem(*rc::gen::inRange<std::uint64_t>(0, 1'000'000'000), size);
    const Answer answer = solve(problem, {1, 5'000});
    RC_TAG(std::string(answer.status == Status::Proven     ? "feasible"
                       : answer.status == Status::Infeasible ? "infeasible"
                                                             : "out of work"));
    RC_ASSERT(answer.schedule.has_value() == (answer.status == Status::Proven));
    RC_ASSERT(answer.clash.limits.empty() == (answer.status == Status::Proven));
    if (answer.schedule) {
        mustKeep(problem, *answer.schedule);
    }
}

} // namespace
} // namespace piewright::schedule
