// What solve() promises: statuses, bounds, beginnings, call-backs, and one answer whatever the number of threads.
#include "schedule/check.h"
#include "schedule/cost.h"
#include "schedule/jobshop.h"
#include "schedule/random_problem.h"
#include "schedule/solve.h"
#include "schedule/state.h"

#include <gmock/gmock.h>

#include <algorithm>

namespace piewright::schedule {
namespace {

/// Work for a day of the 10x10 of Fisher and Thompson 1963 (Muth and Thompson, Industrial Scheduling).
Problem tenByTen() {
    Problem problem = asProblem(ft10(), 3000);
    problem.costs = makespan();
    return problem;
}

/// Drawn with whatever the engine knows; the makespan to be made least, or a mixture of all costs.
Problem drawn(std::uint64_t seed) {
    Size size;
    size.activities = 6 + static_cast<int>(seed % 20);
    size.horizon = 40 + static_cast<Tick>(seed % 7) * 10;
    size.resources = 1 + static_cast<int>(seed % 4);
    size.workers = static_cast<int>(seed % 5);
    size.longest = 8;
    size.lags = static_cast<int>(seed % 9);
    size.strictness = 30;
    if (seed % 2 == 0) size.features = kEveryFeature;
    Problem problem = randomProblem(seed, size);
    if (seed % 2 == 1) problem.costs = makespan();
    return problem;
}

Answer solved(const Problem& problem, int threads, std::uint64_t work, std::uint64_t seed = 1) {
    Options options;
    options.seed = seed;
    options.work = work;
    options.threads = threads;
    return solve(problem, options);
}

void expectSame(const Answer& one, const Answer& two) {
    EXPECT_EQ(one.status, two.status);
    EXPECT_EQ(one.schedule, two.schedule);
    EXPECT_EQ(one.value, two.value);
    EXPECT_EQ(one.bound, two.bound);
    EXPECT_EQ(one.clash.limits, two.clash.limits);
    EXPECT_EQ(one.work, two.work);
}

TEST(Answer, TwoThreadsGiveTheAnswerOfOne) {
    for (std::uint64_t seed = 0; seed < 40; ++seed) {
        const Problem problem = drawn(seed);
        expectSame(solved(problem, 1, 30'000), solved(problem, 2, 30'000));
    }
    expectSame(solved(tenByTen(), 1, 200'000), solved(tenByTen(), 2, 200'000));
}

TEST(Answer, IsTheSameEveryTime) {
    const Problem problem = tenByTen();
    expectSame(solved(problem, 2, 100'000), solved(problem, 2, 100'000));
}

TEST(Answer, MoreWorkIsNeverWorse) {
    const Problem problem = tenByTen();
    Cost last = std::numeric_limits<Cost>::max();
    Cost bound = 0;
    for (const std::uint64_t work : {2'000ULL, 20'000ULL, 200'000ULL, 1'000'000ULL}) {
        const Answer answer = solved(problem, 2, work);
        ASSERT_TRUE(answer.schedule);
        EXPECT_LE(answer.value, last);
        EXPECT_GE(answer.bound, bound);
        EXPECT_LE(answer.bound, 930); // the optimum
        EXPECT_GE(answer.value, 930);
        last = answer.value;
        bound = answer.bound;
    }
}

TEST(Answer, TenByTenIsProvedAt930) {
    const Answer answer = solved(tenByTen(), 2, 30'000'000);
    EXPECT_EQ(answer.status, Status::Proven);
    EXPECT_EQ(answer.value, 930);
    EXPECT_EQ(answer.bound, 930);
}

TEST(Answer, ImprovementsAreToldAndCheck) {
    const Problem problem = tenByTen();
    Options options;
    options.work = 100'000;
    options.threads = 2;
    std::vector<Cost> told;
    options.improved = [&](const Improvement& one) {
        EXPECT_TRUE(check(problem, one.schedule).empty());
        EXPECT_EQ(costOf(problem, one.schedule), one.value);
        told.push_back(one.value);
    };
    const Answer answer = solve(problem, options);
    ASSERT_FALSE(told.empty());
    EXPECT_TRUE(std::is_sorted(told.rbegin(), told.rend()));
    EXPECT_EQ(told.back(), answer.value);
}

TEST(Answer, IsNeverWorseThanItsBeginning) {
    const Problem problem = tenByTen();
    const Answer good = solved(problem, 1, 400'000);
    Options options;
    options.begin = &*good.schedule;
    for (const std::uint64_t work : {1ULL, 100ULL, 10'000ULL}) {
        options.work = work;
        const Answer again = solve(problem, options);
        ASSERT_TRUE(again.schedule);
        EXPECT_LE(again.value, good.value);
    }
}

TEST(Answer, BeginningsThatBreakLimitsDoNoHarm) {
    Schedule nonsense;
    const Problem problem = tenByTen();
    Options options;
    options.work = 50'000;
    options.begin = &nonsense;
    EXPECT_TRUE(solve(problem, options).schedule);
    nonsense.placed.resize(problem.activities.size(), Placed{-5, 7, 12, {WorkerIndex{3}}});
    const Answer answer = solve(problem, options);
    ASSERT_TRUE(answer.schedule);
    EXPECT_TRUE(check(problem, *answer.schedule).empty());
}

TEST(Answer, CancelledItHandsOutWhatItHas) {
    const Problem problem = tenByTen();
    std::atomic<bool> cancelled{false};
    Options options;
    options.work = std::numeric_limits<std::uint64_t>::max();
    options.cancelled = &cancelled;
    for (const int threads : {1, 2}) {
        cancelled = false;
        options.threads = threads;
        options.improved = [&](const Improvement& one) { cancelled = one.value < 1100; };
        const Answer answer = solve(problem, options);
        EXPECT_EQ(answer.status, Status::Feasible);
        ASSERT_TRUE(answer.schedule);
        EXPECT_LT(answer.value, 1100);
    }
}

TEST(Answer, CancelledBeforeItBeganItSaysOutOfTime) {
    const std::atomic<bool> cancelled{true};
    Options options;
    options.cancelled = &cancelled;
    EXPECT_EQ(solve(tenByTen(), options).status, Status::OutOfTime);
}

TEST(Answer, ContradictoryLagsAreTheClash) {
    Statement s;
    const ActivityIndex mix = s.activity("mix", 10);
    const ActivityIndex rest = s.activity("rest", 30);
    const ActivityIndex pin = s.activity("pin", 5);
    s.after(mix, rest, 0, "mixed before it rests");
    s.after(rest, pin, 20, "chilled 20 before pinning");
    s.within(mix, pin, 45, "pinned within 45 of mixing");
    s.problem.horizon = 1000;
    s.problem.costs = makespan();
    const Answer answer = solve(s.problem, {}); // 30 + 20 = 50 > 45
    EXPECT_EQ(answer.status, Status::Infeasible);
    EXPECT_TRUE(answer.clash.proved);
    EXPECT_THAT(answer.clash.limits, testing::UnorderedElementsAre("mixed before it rests", "chilled 20 before pinning",
                                                                   "pinned within 45 of mixing"));
}

TEST(Answer, ALongLoopOfLagsIsToldWhole) {
    // 99 steps of 5 take 495 from the first start to the last; 490 is too little
    Statement s;
    std::vector<ActivityIndex> chain;
    for (int i = 0; i < 100; ++i) {
        chain.push_back(s.activity("step", 5));
        if (i > 0) s.after(chain[chain.size() - 2], chain.back(), 0, "step " + std::to_string(i));
    }
    s.problem.lags.push_back({chain.back(), Point::Start, chain.front(), Point::Start, -490, "fresh"});
    s.problem.horizon = 10'000;
    const Answer answer = solve(s.problem, {});
    EXPECT_EQ(answer.status, Status::Infeasible);
    EXPECT_TRUE(answer.clash.proved);
    EXPECT_EQ(answer.clash.limits.size(), 100U);
    EXPECT_THAT(answer.clash.limits, testing::Contains("fresh"));
}

} // namespace
} // namespace piewright::schedule
