// The prover against the exhaustive twin, over random problems with every feature mixed.
#include "schedule/prover.h"

#include "schedule/check.h"
#include "schedule/random_problem.h"
#include "schedule/state.h"
#include "schedule/twin.h"
#include "schedule_prover/shops.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace piewright::schedule {
namespace {

struct Tally {
    int optima = 0;
    int contradictions = 0;
};

/// The least cost by the twin; the prover's decisions, optimum and bounds beside it.
void compare(const Size& size, std::uint64_t seeds, const ProverOptions& options, Tally& tally) {
    for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
        Problem problem = randomProblem(seed, size);
        problem.costs = makespan();
        const TwinAnswer twin = twinBest(problem, 300'000);
        if (!twin.finished) continue;
        Prover prover(problem, options);
        const Verdict verdict = prover.improve({});
        ASSERT_EQ(verdict, twin.schedule ? Verdict::Satisfied : Verdict::Refuted) << "seed " << seed;
        if (!twin.schedule) {
            ++tally.contradictions;
            continue;
        }
        ++tally.optima;
        ASSERT_TRUE(check(problem, *prover.best()).empty())
            << "seed " << seed << ": " << check(problem, *prover.best()).front().what;
        if (options.guardLimits) continue; // then no cost is looked at
        ASSERT_EQ(latestEnd(*prover.best()), twin.value) << "seed " << seed;
        ASSERT_EQ(prover.value(), twin.value) << "seed " << seed;
        ASSERT_EQ(prover.bound(), twin.value) << "seed " << seed;

        Prover fromBelow(problem, options);
        ASSERT_EQ(fromBelow.refute({}), Verdict::Satisfied) << "seed " << seed;
        ASSERT_EQ(latestEnd(*fromBelow.best()), twin.value) << "seed " << seed;

        Prover asked(problem, options);
        for (const Cost latest : {twin.value - 1, twin.value, twin.value + 2, twin.value - 2}) {
            if (latest < 0) continue;
            ASSERT_EQ(asked.decide(latest, {}), latest >= twin.value ? Verdict::Satisfied : Verdict::Refuted)
                << "seed " << seed << " by " << latest;
        }
    }
}

TEST(Prover, FindsTheOptimumOfTheTwinWithEveryFeatureMixed) {
    Tally tally;
    compare({4, 10, 3, 3, 4, 4}, 400, {}, tally);
    EXPECT_GT(tally.optima, 100);
    EXPECT_GT(tally.contradictions, 50);
}

TEST(Prover, FindsTheOptimumOfTheTwinWithoutPeople) {
    Tally tally;
    compare({5, 12, 3, 0, 4, 4}, 300, {}, tally);
    EXPECT_GT(tally.optima, 50);
}

TEST(Prover, FindsTheSameWithFewerMeans) {
    Tally tally;
    ProverOptions plain;
    plain.edgeFinding = false;
    plain.orderLiterals = false;
    compare({4, 10, 2, 2, 4, 4}, 300, plain, tally);
    ProverOptions guarded;
    guarded.guardLimits = true;
    compare({4, 10, 3, 3, 4, 4}, 300, guarded, tally);
    EXPECT_GT(tally.optima, 100);
    EXPECT_GT(tally.contradictions, 50);
}

TEST(Prover, TakesAnyScheduleForTheBestWhereNothingCosts) {
    const Problem problem = six();
    Prover prover(problem);
    EXPECT_EQ(prover.improve({}), Verdict::Satisfied);
    EXPECT_EQ(prover.bound(), 0);
    EXPECT_EQ(prover.value(), 0);
    EXPECT_TRUE(check(problem, *prover.best()).empty());
}

TEST(Prover, KeepsAWarmStartAndBettersIt) {
    Problem problem = six();
    problem.costs = makespan();
    Prover first(problem);
    ASSERT_EQ(first.decide(problem.horizon, {}), Verdict::Satisfied);
    Prover second(problem);
    second.hint(*first.best(), true);
    EXPECT_EQ(second.best(), first.best());
    std::vector<Cost> values;
    EXPECT_EQ(second.improve({},
                             [&](const Schedule& schedule, Cost value) {
                                 EXPECT_TRUE(check(problem, schedule).empty());
                                 values.push_back(value);
                             }),
              Verdict::Satisfied);
    EXPECT_TRUE(std::is_sorted(values.rbegin(), values.rend()));
    EXPECT_LE(latestEnd(*second.best()), latestEnd(*first.best()));
}

TEST(Prover, StopsAtItsLimitsAndGoesOnFromThere) {
    Problem problem = ten();
    problem.costs = makespan();
    Prover whole(problem);
    ProverLimits limits;
    limits.work = 200'000;
    const Verdict verdict = whole.improve(limits);
    Prover again(problem);
    EXPECT_EQ(again.improve(limits), verdict);
    EXPECT_EQ(again.work(), whole.work()); // the same work, the same answer
    EXPECT_EQ(again.best(), whole.best());
    const std::atomic<bool> cancelled{true};
    Prover stopped(problem);
    limits.cancelled = &cancelled;
    EXPECT_EQ(stopped.improve(limits), Verdict::Unknown);
}

TEST(Prover, SaysThatLagsContradictEachOther) {
    Statement s;
    const auto bake = s.activity("bake", 30);
    const auto cool = s.activity("cool", 20);
    s.after(bake, cool, 15, "rest the crust 15 min");
    s.within(bake, cool, 10, "in the chiller within 10 min");
    s.problem.horizon = 200;
    const Prover prover(s.problem);
    EXPECT_TRUE(prover.isHopeless());
    EXPECT_THAT(prover.clash(), testing::UnorderedElementsAre("rest the crust 15 min", "in the chiller within 10 min"));
}

} // namespace
} // namespace piewright::schedule
