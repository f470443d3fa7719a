// Published job shops: what is feasible is found, what is not is refuted.
#include "schedule/check.h"
#include "schedule/jobshop.h"
#include "schedule/solve.h"

#include <gmock/gmock.h>

namespace piewright::schedule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

void expectFeasible(const Problem& problem, std::uint64_t work) {
    const Answer answer = solve(problem, {1, work});
    ASSERT_EQ(answer.status, Status::Proven);
    EXPECT_THAT(check(problem, *answer.schedule), IsEmpty());
}

TEST(JobShop, TheDataHaveThePublishedBounds) {
    // Longest job 47 and busiest machine 43 of the 6x6; longest job 655 and busiest machine 631 of the 10x10 (widely
    // published; from memory).
    EXPECT_EQ(simpleBound(ft06()), 47);
    EXPECT_EQ(simpleBound(ft10()), 655);
}

TEST(JobShop, SixBySixIsFeasibleWithRoom) { expectFeasible(asProblem(ft06(), 70), 10'000); }

TEST(JobShop, SixBySixIsFoundAtItsOptimumOf55) { expectFeasible(asProblem(ft06(), 55), 200'000); }

TEST(JobShop, SixBySixIsRefutedAt54) {
    const Answer answer = solve(asProblem(ft06(), 54), {1, 500'000});
    EXPECT_EQ(answer.status, Status::Infeasible);
    EXPECT_TRUE(answer.clash.proved);
}

TEST(JobShop, SixBySixIsRefutedBelowItsLongestJobByThatJob) {
    const Answer answer = solve(asProblem(ft06(), 46), {});
    EXPECT_EQ(answer.status, Status::Infeasible);
    EXPECT_TRUE(answer.clash.proved);
    EXPECT_THAT(answer.clash.limits, ElementsAre("job 1 goes in its order", "all jobs are done by 46"));
}

TEST(JobShop, TenByTenIsFeasibleWithRoom) { expectFeasible(asProblem(ft10(), 1200), 100'000); }

TEST(JobShop, TenByTenIsFoundWithinAnEighthOfItsOptimumOf930) { expectFeasible(asProblem(ft10(), 1050), 8'000'000); }

TEST(JobShop, TenByTenIsRefutedBelowItsLongestJob) {
    const Answer answer = solve(asProblem(ft10(), 654), {});
    EXPECT_EQ(answer.status, Status::Infeasible);
    EXPECT_TRUE(answer.clash.proved);
    EXPECT_THAT(answer.clash.limits, ElementsAre("job 3 goes in its order", "all jobs are done by 654"));
}

TEST(JobShop, TenByTenIsRefutedAt800WhereNoSingleJobOrMachineTellsIt) {
    const Answer answer = solve(asProblem(ft10(), 800), {});
    EXPECT_EQ(answer.status, Status::Infeasible);
    EXPECT_TRUE(answer.clash.proved);
}

TEST(JobShop, OneBusyMachineIsRefutedByItsLoad) {
    // Busiest machine of the 6x6, with the jobs' orders given up: its six operations last 43 in all.
    Problem problem = asProblem(ft06(), 43);
    problem.lags.clear();
    expectFeasible(problem, 10'000);
    problem.horizon = 42;
    const Answer answer = solve(problem, {});
    EXPECT_EQ(answer.status, Status::Infeasible);
    EXPECT_TRUE(answer.clash.proved);
    EXPECT_THAT(answer.clash.limits, testing::Contains(testing::HasSubstr("one at a time")));
}

} // namespace
} // namespace piewright::schedule
