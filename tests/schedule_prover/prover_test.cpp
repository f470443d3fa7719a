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

Problem endingBy(Problem problem, Tick latest) {
    problem.horizon = std::min(problem.horizon, latest);
    return problem;
}

struct Tally {
    int optima = 0;
    int contradictions = 0;
};

/// The optimum by the twin, one horizon after the other; the prover's decisions, optimum and bounds beside it.
void compare(const Size& size, std::uint64_t seeds, const ProverOptions& options, Tally& tally) {
    for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
        const Problem problem = randomProblem(seed, size);
        std::optional<Tick> least;
        bool isKnown = true;
        for (Tick latest = 0; latest <= problem.horizon && !least && isKnown; ++latest) {
            const TwinAnswer twin = twinSolve(endingBy(problem, latest), 3'000'000);
            isKnown = twin.finished;
            if (twin.schedule) least = latest;
        }
        if (!isKnown) continue;
        Prover prover(problem, options);
        const Verdict verdict = prover.improve({});
        ASSERT_EQ(verdict, least ? Verdict::Satisfied : Verdict::Refuted) << "seed " << seed;
        if (!least) {
            ++tally.contradictions;
            continue;
        }
        ++tally.optima;
        ASSERT_TRUE(check(problem, *prover.best()).empty())
            << "seed " << seed << ": " << check(problem, *prover.best()).front().what;
        ASSERT_EQ(latestEnd(*prover.best()), *least) << "seed " << seed;
        ASSERT_EQ(prover.bound(), *least) << "seed " << seed;

        Prover fromBelow(problem, options);
        ASSERT_EQ(fromBelow.refute({}), Verdict::Satisfied) << "seed " << seed;
        ASSERT_EQ(latestEnd(*fromBelow.best()), *least) << "seed " << seed;

        Prover asked(problem, options);
        for (const Tick latest : {*least - 1, *least, *least + 2, *least - 2}) {
            if (latest < 0) continue;
            ASSERT_EQ(asked.decide(latest, {}), latest >= *least ? Verdict::Satisfied : Verdict::Refuted)
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

TEST(Prover, KeepsAWarmStartAndBettersIt) {
    const Problem problem = six();
    Prover first(problem);
    ASSERT_EQ(first.decide(problem.horizon, {}), Verdict::Satisfied);
    Prover second(problem);
    second.hint(*first.best(), true);
    EXPECT_EQ(second.best(), first.best());
    std::vector<Tick> values;
    EXPECT_EQ(second.improve({},
                             [&](const Schedule& schedule, Tick latest) {
                                 EXPECT_TRUE(check(problem, schedule).empty());
                                 values.push_back(latest);
                             }),
              Verdict::Satisfied);
    EXPECT_TRUE(std::is_sorted(values.rbegin(), values.rend()));
    EXPECT_LE(latestEnd(*second.best()), latestEnd(*first.best()));
}

TEST(Prover, StopsAtItsLimitsAndGoesOnFromThere) {
    const Problem problem = ten();
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
