// Classic job shops, solved and proved.
#include "schedule/check.h"
#include "schedule/prover.h"
#include "schedule/solve.h"

#include "schedule_prover/shops.h"

#include <gtest/gtest.h>

namespace piewright::schedule {
namespace {

TEST(JobShop, SixBySixEndsAt55) {
    Problem problem = six();
    problem.costs = makespan();
    Prover prover(problem);
    ASSERT_EQ(prover.improve({}), Verdict::Satisfied);
    EXPECT_EQ(latestEnd(*prover.best()), 55);
    EXPECT_EQ(prover.bound(), 55);
    EXPECT_TRUE(check(problem, *prover.best()).empty());
}

TEST(JobShop, TenByTenEndsAt930) {
    Problem problem = ten();
    problem.costs = makespan();
    Prover prover(problem);
    const Answer first = solve(problem, {1, 20'000});
    ASSERT_TRUE(first.schedule);
    prover.hint(*first.schedule, true);
    ASSERT_EQ(prover.improve({}), Verdict::Satisfied);
    EXPECT_EQ(latestEnd(*prover.best()), 930);
    EXPECT_EQ(prover.bound(), 930);
    EXPECT_TRUE(check(problem, *prover.best()).empty());
}

} // namespace
} // namespace piewright::schedule
