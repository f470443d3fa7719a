// Fisher and Thompson 1963 (in Muth, Thompson, eds., Industrial Scheduling): the 6x6 and 10x10 job shops, whose best
// makespans are 55 and 930 (Carlier, Pinson 1989, Management Science 35, for the latter).
#include "schedule/check.h"
#include "schedule/lists.h"
#include "schedule/prover.h"
#include "schedule/shop.h"
#include "schedule_lists/random_project.h"
#include "schedule_prover/shops.h"

#include <gtest/gtest.h>

namespace piewright::schedule {
namespace {

Standing search(const Problem& problem, std::uint64_t work) {
    const auto member = listSearch(problem, 1);
    Standing standing;
    Turn turn;
    turn.work = work;
    turn.found = [&](const Schedule& schedule, Cost) {
        EXPECT_TRUE(check(problem, schedule).empty()) << check(problem, schedule).front().what;
    };
    static_cast<void>(member->run(turn, standing));
    return standing;
}

TEST(Shop, SixBySixReachesItsOptimum) { EXPECT_EQ(search(six(), 100'000).value, 55); }

TEST(Shop, TenByTenComesWithinTwoPercentOfItsOptimum) {
    const Standing standing = search(ten(), 1'000'000);
    EXPECT_GE(standing.value, 930);
    EXPECT_LE(standing.value, 948); // 930 * 1.02 = 948.6
}

TEST(Shop, TakesMachinesThatAreAlwaysThereAndNothingElse) {
    const Problem problem = six();
    EXPECT_TRUE(Shop::takes(*asProject(problem)));
    Problem away = problem;
    away.resources[0].machine->away.push_back({3, 5});
    EXPECT_FALSE(Shop::takes(*asProject(away)));
    Problem room = problem;
    room.resources[0].machine.reset();
    room.resources[0].cumulative = Cumulative{2, {}};
    EXPECT_FALSE(Shop::takes(*asProject(room)));
    Problem greatest = problem;
    greatest.lags.push_back({ActivityIndex{1}, Point::Start, ActivityIndex{0}, Point::Start, -30, ""});
    EXPECT_FALSE(Shop::takes(*asProject(greatest)));
}

/// Jobs of three operations, each on one of up to three of three machines, with its own duration on each.
Problem flexible(std::uint64_t seed) {
    std::mt19937_64 engine(seed);
    const auto roll = [&](int from, int to) {
        return from + static_cast<int>(engine() % static_cast<std::uint64_t>(to - from + 1));
    };
    Statement s;
    for (int m = 0; m < 3; ++m) s.machine("machine " + std::to_string(m));
    for (int job = 0; job < 3; ++job) {
        std::optional<ActivityIndex> before;
        for (int o = 0; o < 3; ++o) {
            Activity activity;
            activity.name = "operation";
            const int first = roll(0, 2);
            const int count = roll(1, 3);
            for (int m = 0; m < count; ++m) {
                Mode mode;
                mode.duration = roll(1, 9);
                mode.uses.push_back({nth<ResourceIndex>(static_cast<std::size_t>((first + m) % 3)), 1, {}});
                activity.modes.push_back(std::move(mode));
            }
            s.problem.horizon += 9;
            s.problem.activities.push_back(std::move(activity));
            const ActivityIndex now = nth<ActivityIndex>(s.problem.activities.size() - 1);
            if (before) s.after(*before, now, roll(0, 2));
            before = now;
        }
    }
    return s.problem;
}

TEST(Shop, FindsTheOptimumOfSmallFlexibleShops) {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        Problem problem = flexible(seed);
        ASSERT_TRUE(faultsIn(problem).empty());
        problem.costs = makespan();
        Prover prover(problem);
        ASSERT_EQ(prover.improve({}), Verdict::Satisfied);
        EXPECT_EQ(search(problem, 30'000).value, latestEnd(*prover.best()));
    }
}

} // namespace
} // namespace piewright::schedule
