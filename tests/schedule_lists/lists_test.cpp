// The list search against the complete side of the engine, which shares no code with it, and the checker.
#include "schedule/lists.h"

#include "schedule/check.h"
#include "schedule/prover.h"
#include "schedule_lists/random_project.h"

#include <gtest/gtest.h>

namespace piewright::schedule {
namespace {

struct Outcome {
    Standing standing;
    std::vector<Cost> told;
};

Outcome search(const Problem& problem, std::uint64_t seed, std::uint64_t work, std::uint64_t turn = 1'000) {
    Outcome outcome;
    const auto member = listSearch(problem, seed);
    if (!member) return outcome;
    Turn one;
    one.found = [&](const Schedule& schedule, Cost value) {
        EXPECT_TRUE(check(problem, schedule).empty()) << check(problem, schedule).front().what;
        EXPECT_EQ(value, latestEnd(schedule));
        EXPECT_TRUE(outcome.told.empty() || value < outcome.told.back());
        outcome.told.push_back(value);
    };
    one.work = turn;
    for (std::uint64_t done = 0; done < work;) {
        const std::uint64_t steps = member->run(one, outcome.standing);
        if (steps == 0) break;
        done += steps;
    }
    return outcome;
}

struct Tally {
    int solvable = 0;
    int best = 0; ///< found at the optimum
    int none = 0; ///< solvable, but nothing found
};

/// Every schedule keeps every limit, none is better than the proved optimum, none is found where there is none.
Tally compare(const Features& features, std::uint64_t seeds) {
    Tally tally;
    for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        Problem problem = randomProject(seed, features);
        problem.costs = makespan();
        EXPECT_TRUE(faultsIn(problem).empty()) << faultsIn(problem).front();
        Prover prover(problem);
        const Verdict verdict = prover.improve({});
        EXPECT_NE(verdict, Verdict::Unknown);
        const Outcome run = search(problem, seed, 10'000);
        if (verdict == Verdict::Refuted) {
            EXPECT_FALSE(run.standing.schedule);
            continue;
        }
        ++tally.solvable;
        if (!run.standing.schedule) {
            ++tally.none;
            continue;
        }
        const Tick optimum = latestEnd(*prover.best());
        EXPECT_GE(run.standing.value, optimum);
        if (run.standing.value == optimum) ++tally.best;
    }
    return tally;
}

// A serial schedule for some list is best where only the latest end counts (Kolisch 1996), so it is found in small
// cases.
TEST(ListSearch, FindsTheOptimumOfSmallProjects) {
    const Tally tally = compare({}, 150);
    EXPECT_GT(tally.solvable, 140);
    EXPECT_EQ(tally.best, tally.solvable);
}

TEST(ListSearch, FindsTheOptimumOfSmallProjectsWithSeveralModes) {
    const Tally tally = compare({false, false, true, 6}, 120);
    EXPECT_GT(tally.solvable, 110);
    EXPECT_EQ(tally.none, 0);
    EXPECT_GE(tally.best, tally.solvable * 97 / 100);
}

TEST(ListSearch, IsCloseToTheOptimumWithPeopleWhoHaveSkills) {
    const Tally tally = compare({false, true, false, 7}, 120);
    EXPECT_GT(tally.solvable, 100);
    EXPECT_EQ(tally.none, 0);
    EXPECT_GE(tally.best, tally.solvable * 90 / 100);
}

TEST(ListSearch, IsCloseToTheOptimumWithGreatestLagsAndWindows) {
    const Tally tally = compare({true, false, false, 7}, 200);
    EXPECT_GT(tally.solvable, 50);
    EXPECT_LT(tally.solvable, 200);
    EXPECT_LE(tally.none, tally.solvable / 50);
    EXPECT_GE(tally.best, tally.solvable * 95 / 100);
}

TEST(ListSearch, NeverBreaksALimitWithEverythingMixed) {
    const Tally tally = compare({true, true, false, 6}, 150);
    EXPECT_GT(tally.solvable, 30);
    EXPECT_GE(tally.best, tally.solvable * 80 / 100);
}

TEST(ListSearch, GivesTheSameAnswerForTheSameSeedAndTurns) {
    const Problem problem = randomProject(5, {false, true, true, 40});
    const Outcome one = search(problem, 7, 20'000);
    const Outcome other = search(problem, 7, 20'000);
    ASSERT_TRUE(one.standing.schedule);
    EXPECT_EQ(one.standing.schedule, other.standing.schedule);
    EXPECT_EQ(one.told, other.told);
}

TEST(ListSearch, TakesUpABetterScheduleAndNeverLosesIt) {
    const Problem problem = randomProject(11, {true, false, false, 7});
    const Outcome best = search(problem, 3, 20'000);
    ASSERT_TRUE(best.standing.schedule);
    const auto member = listSearch(problem, 99);
    Standing standing = best.standing;
    Turn turn;
    turn.work = 500;
    EXPECT_GT(member->run(turn, standing), 0U);
    EXPECT_LE(standing.value, best.standing.value);
    EXPECT_TRUE(check(problem, *standing.schedule).empty());
}

TEST(ListSearch, HasNothingToDoOnceTheProblemIsSettled) {
    const Problem problem = randomProject(5, {});
    const auto member = listSearch(problem, 1);
    Standing standing;
    standing.isHopeless = true;
    Turn turn;
    turn.work = 500;
    EXPECT_EQ(member->run(turn, standing), 0U);
}

TEST(ListSearch, EndsAtOnceWhenCancelled) {
    const Problem problem = randomProject(5, {});
    const auto member = listSearch(problem, 1);
    const std::atomic<bool> cancelled{true};
    Standing standing;
    Turn turn;
    turn.work = 1'000'000'000;
    turn.cancelled = &cancelled;
    EXPECT_LE(member->run(turn, standing), 1U);
}

TEST(ListSearch, LeavesOtherProblemsAlone) {
    const Problem plain = randomProject(5, {});
    ASSERT_NE(listSearch(plain, 1), nullptr);
    Problem problem = plain;
    problem.activities[0].isOptional = true;
    EXPECT_EQ(listSearch(problem, 1), nullptr);
    problem = plain;
    problem.costs.times.push_back({ActivityIndex{0}, Point::End, {{{0, 0, 1}}}});
    EXPECT_EQ(listSearch(problem, 1), nullptr);
    problem = plain;
    problem.resources.back().machine->setup = {{1}};
    problem.resources.back().machine->first = {1};
    EXPECT_EQ(listSearch(problem, 1), nullptr);
    problem = plain;
    problem.activities[0].modes[0].cost = 3;
    EXPECT_EQ(listSearch(problem, 1), nullptr);
    problem = plain;
    problem.resources.back().machine->together = 4;
    EXPECT_EQ(listSearch(problem, 1), nullptr);
    problem = plain;
    problem.resources.back().machine->firstCost = {2};
    problem.resources.back().machine->setupCost = {{0}};
    EXPECT_EQ(listSearch(problem, 1), nullptr);
    problem = plain;
    problem.resources.push_back({"flour", {}, {}, Reservoir{}});
    EXPECT_EQ(listSearch(problem, 1), nullptr);
}

TEST(ListSearch, ReadsTheCostOfTheMakespan) {
    Problem problem = randomProject(5, {});
    const Outcome plain = search(problem, 1, 5'000);
    problem.costs.extents.push_back({ExtentCost::Of::Last, {}, {}, {{{10, 100, 3}}}});
    const auto member = listSearch(problem, 1);
    ASSERT_NE(member, nullptr);
    Standing standing;
    Turn turn;
    turn.work = 5'000;
    static_cast<void>(member->run(turn, standing));
    // Piecewise linear: 100 at tick 10 and 3 for each tick after it.
    EXPECT_EQ(standing.value, 100 + 3 * (plain.standing.value - 10));
}

} // namespace
} // namespace piewright::schedule
