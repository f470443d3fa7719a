// The complete searches and the neighbourhoods as members that take turns, against the prover alone and against plain
// enumeration.
#include "schedule/improver.h"
#include "schedule/neighbourhoods.h"
#include "schedule/partial_order.h"
#include "schedule/refuter.h"

#include "schedule/check.h"
#include "schedule/prover.h"
#include "schedule/random_problem.h"
#include "schedule_prover/shops.h"

#include <gtest/gtest.h>

namespace piewright::schedule {
namespace {

Problem forMakespan(Problem problem) {
    problem.costs = makespan();
    return problem;
}

struct Told {
    std::vector<Cost> values;
    Turn turn(const Problem& problem, std::uint64_t work) {
        Turn turn;
        turn.work = work;
        turn.found = [&](const Schedule& schedule, Cost value) {
            EXPECT_TRUE(check(problem, schedule).empty());
            EXPECT_EQ(value, latestEnd(schedule));
            EXPECT_TRUE(values.empty() || value < values.back());
            values.push_back(value);
        };
        return turn;
    }
};

/// Turns until it has nothing more to try; what it knows by then.
Standing exhaust(const Problem& problem, Member& member, int turns) {
    Standing standing;
    Told told;
    const Turn turn = told.turn(problem, 2000);
    while (turns-- > 0 && member.run(turn, standing) > 0) {
    }
    return standing;
}

TEST(Members, AgreeWithTheProverFromAboveAndFromBelow) {
    int optima = 0;
    int contradictions = 0;
    for (std::uint64_t seed = 1; seed <= 150; ++seed) {
        const Problem problem = forMakespan(randomProblem(seed, {6, 16, 3, 3, 4, 4, 60}));
        Prover prover(problem);
        const Verdict verdict = prover.improve({});
        Improver improver(problem);
        Refuter refuter(problem);
        for (Member* member : {static_cast<Member*>(&improver), static_cast<Member*>(&refuter)}) {
            const Standing standing = exhaust(problem, *member, 1000);
            ASSERT_TRUE(standing.isSettled()) << "seed " << seed;
            ASSERT_EQ(standing.isHopeless, verdict == Verdict::Refuted) << "seed " << seed;
            if (verdict == Verdict::Refuted) continue;
            ASSERT_EQ(standing.value, latestEnd(*prover.best())) << "seed " << seed;
            ASSERT_EQ(standing.bound, standing.value) << "seed " << seed;
        }
        (verdict == Verdict::Refuted ? contradictions : optima)++;
    }
    EXPECT_GE(optima, 40);
    EXPECT_GE(contradictions, 10);
}

TEST(Neighbourhoods, NeverSayWhatTheProverDoesNotAndMostlyFindTheOptimum) {
    int optima = 0;
    int found = 0;
    for (std::uint64_t seed = 1; seed <= 80; ++seed) {
        const Problem problem = forMakespan(randomProblem(seed, {7, 20, 3, 3, 4, 4, 60}));
        Prover prover(problem);
        const Verdict verdict = prover.improve({});
        Neighbourhoods neighbourhoods(problem, seed);
        const Standing standing = exhaust(problem, neighbourhoods, 20);
        if (verdict == Verdict::Refuted) {
            ASSERT_FALSE(standing.schedule) << "seed " << seed;
            continue;
        }
        ++optima;
        ASSERT_FALSE(standing.isHopeless) << "seed " << seed;
        ASSERT_LE(standing.bound, latestEnd(*prover.best())) << "seed " << seed;
        ASSERT_GE(standing.value, latestEnd(*prover.best())) << "seed " << seed;
        if (standing.value == latestEnd(*prover.best())) ++found;
    }
    EXPECT_GE(optima, 20);
    EXPECT_GE(found, optima * 9 / 10);
}

TEST(Neighbourhoods, ImproveAJobShopStepByStepAndTheSameWayTwice) {
    // Ten by ten: 930 is the optimum (Fisher, Thompson 1963; Carlier, Pinson 1989).
    const Problem problem = forMakespan(ten());
    std::vector<Cost> first;
    for (int time = 0; time < 2; ++time) {
        Neighbourhoods neighbourhoods(problem, 7);
        Standing standing;
        Told told;
        const Turn turn = told.turn(problem, 50'000);
        for (int i = 0; i < 4; ++i) neighbourhoods.run(turn, standing);
        ASSERT_TRUE(standing.schedule);
        EXPECT_GE(standing.value, 930);
        EXPECT_LE(standing.bound, 930);
        if (time == 0) first = told.values;
        EXPECT_EQ(told.values, first);
    }
    EXPECT_GE(first.size(), 3U); // it does more than find a first schedule
}

TEST(Neighbourhoods, StopWhenCancelled) {
    const Problem problem = forMakespan(ten());
    Neighbourhoods neighbourhoods(problem, 1);
    const std::atomic<bool> cancelled{true};
    Turn turn;
    turn.work = 1'000'000'000;
    turn.cancelled = &cancelled;
    Standing standing;
    neighbourhoods.run(turn, standing);
    EXPECT_FALSE(standing.schedule);
}

TEST(PartialOrder, LetsNoMoreRunTogetherThanThereIsRoomFor) {
    int looked = 0;
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
        const Problem problem = forMakespan(randomProblem(seed, {7, 20, 3, 0, 4, 3, 60}));
        Prover prover(problem);
        if (prover.improve({}) != Verdict::Satisfied) continue;
        ++looked;
        const Schedule& schedule = *prover.best();
        const std::size_t n = problem.activities.size();
        std::vector<char> isKept(n, 1);
        isKept[seed % n] = 0;
        Dice dice(seed);
        const auto orders = partialOrder(problem, schedule, isKept, dice);
        std::vector<std::vector<char>> before(n, std::vector<char>(n, 0));
        for (const auto& [one, other] : orders) {
            ASSERT_TRUE(isKept[one] != 0 && isKept[other] != 0) << "seed " << seed;
            ASSERT_LE(schedule.placed[one].end, schedule.placed[other].start) << "seed " << seed;
            before[one][other] = 1;
        }
        for (std::size_t k = 0; k < n; ++k) {
            for (std::size_t i = 0; i < n; ++i) {
                for (std::size_t j = 0; j < n; ++j) {
                    if (before[i][k] != 0 && before[k][j] != 0) before[i][j] = 1;
                }
            }
        }
        // Every set of which no two are ordered may run at once.
        for (std::size_t set = 0; set < (std::size_t{1} << n); ++set) {
            bool isFree = true;
            std::vector<int> used(problem.resources.size(), 0);
            for (std::size_t i = 0; i < n && isFree; ++i) {
                if (((set >> i) & 1U) == 0) continue;
                isFree = isKept[i] != 0 && schedule.placed[i].start < schedule.placed[i].end;
                for (std::size_t j = 0; j < n; ++j) {
                    isFree = isFree && (((set >> j) & 1U) == 0 || before[i][j] == 0);
                }
                const Mode& mode = problem.activities[i].modes[static_cast<std::size_t>(schedule.placed[i].mode)];
                for (const Use& use : mode.uses) used[at(use.resource)] += use.amount;
            }
            if (!isFree) continue;
            for (std::size_t r = 0; r < used.size(); ++r) {
                const Resource& resource = problem.resources[r];
                ASSERT_LE(used[r], resource.cumulative ? resource.cumulative->capacity : 1) << "seed " << seed;
            }
        }
    }
    EXPECT_GE(looked, 50);
}

} // namespace
} // namespace piewright::schedule
