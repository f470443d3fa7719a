// Our own arithmetic throughout: the members below are made up, so that what they should come to is plain.
#include "schedule/portfolio.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <vector>

namespace piewright::schedule {
namespace {

/// A member that lowers the value (or raises the bound) by one each `stride` steps, down to (or up to) `goal`.
class Mover final : public Member {
  public:
    Mover(std::uint64_t stride, Cost goal, bool isImproving)
        : stride_(stride), goal_(goal), isImproving_(isImproving) {}

    std::uint64_t run(const Turn& turn, Standing& standing) override {
        std::uint64_t steps = 0;
        while (steps < turn.work && !standing.isSettled()) {
            ++steps;
            if (++count_ % stride_ != 0) continue;
            if (isImproving_ && standing.value > goal_) {
                standing.value = std::min<Cost>(standing.value, 1000) - 1;
                standing.schedule = Schedule{{Placed{static_cast<Tick>(standing.value), 0, 0, {}}}};
                turn.found(*standing.schedule, standing.value);
            } else if (!isImproving_ && standing.bound < goal_) {
                standing.bound = std::max<Cost>(standing.bound, 0) + 1;
            }
        }
        return steps;
    }

  private:
    std::uint64_t stride_;
    Cost goal_;
    bool isImproving_;
    std::uint64_t count_ = 0;
};

class Idle final : public Member {
  public:
    std::uint64_t run(const Turn& /*turn*/, Standing& /*standing*/) override { return 0; }
};

struct Outcome {
    Standing standing;
    std::uint64_t done = 0;
    std::vector<Cost> told;
};

Outcome run(int threads, std::uint64_t work, std::uint64_t stride, Cost goal) {
    Outcome outcome;
    Options options;
    options.threads = threads;
    options.improved = [&](const Improvement& one) { outcome.told.push_back(one.value); };
    Lane first, second;
    first.push_back(std::make_unique<Mover>(stride, goal, true));
    first.push_back(std::make_unique<Mover>(3, 900, true));
    second.push_back(std::make_unique<Mover>(7, 800, false));
    second.push_back(std::make_unique<Mover>(11, goal, true));
    Portfolio portfolio(std::move(first), std::move(second), options);
    outcome.done = portfolio.run(outcome.standing, work);
    return outcome;
}

TEST(Portfolio, TwoThreadsGiveTheAnswerOfOne) {
    for (const std::uint64_t work : {1ULL, 999ULL, 5'000ULL, 20'000ULL, 200'000ULL}) {
        for (const std::uint64_t stride : {1ULL, 13ULL, 200ULL}) {
            for (const Cost goal : {700, 810, 950}) {
                const Outcome one = run(1, work, stride, goal);
                const Outcome two = run(2, work, stride, goal);
                EXPECT_EQ(one.standing.value, two.standing.value);
                EXPECT_EQ(one.standing.bound, two.standing.bound);
                EXPECT_EQ(one.standing.schedule, two.standing.schedule);
                EXPECT_EQ(one.done, two.done);
            }
        }
    }
}

TEST(Portfolio, ImprovementsAreToldOnceEachAndOnlyGetBetter) {
    for (const int threads : {1, 2}) {
        const Outcome outcome = run(threads, 100'000, 5, 700);
        ASSERT_FALSE(outcome.told.empty());
        EXPECT_TRUE(std::is_sorted(outcome.told.rbegin(), outcome.told.rend()));
        EXPECT_EQ(std::adjacent_find(outcome.told.begin(), outcome.told.end()), outcome.told.end());
    }
}

TEST(Portfolio, EndsOnceValueAndBoundMeet) {
    const Outcome outcome = run(2, 100'000'000, 1, 700);
    EXPECT_TRUE(outcome.standing.isSettled());
    EXPECT_LT(outcome.done, 1'000'000U);
}

TEST(Portfolio, DoesNotGoBeyondItsWorkByMoreThanARound) {
    EXPECT_LE(run(1, 10'000, 200, 0).done, 10'001U);
    EXPECT_LE(run(2, 10'000, 200, 0).done, 10'001U);
}

TEST(Portfolio, EndsWhenNobodyHasAnythingToTry) {
    Lane first, second;
    first.push_back(std::make_unique<Idle>());
    first.push_back(std::make_unique<Idle>());
    second.push_back(std::make_unique<Idle>());
    Portfolio portfolio(std::move(first), std::move(second), {});
    Standing standing;
    EXPECT_EQ(portfolio.run(standing, 1'000'000), 0U);
    EXPECT_FALSE(standing.isSettled());
}

TEST(Portfolio, NothingIsBegunOnceCancelled) {
    std::atomic<bool> cancelled{true};
    Options options;
    options.cancelled = &cancelled;
    Lane first;
    first.push_back(std::make_unique<Mover>(1, 0, true));
    Portfolio portfolio(std::move(first), {}, options);
    Standing standing;
    EXPECT_EQ(portfolio.run(standing, 1'000'000), 0U);
    EXPECT_FALSE(standing.schedule);
}

} // namespace
} // namespace piewright::schedule
