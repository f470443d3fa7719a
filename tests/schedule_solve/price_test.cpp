// What limits cost, on problems small enough for the sums to be done by hand.
#include "schedule/check.h"
#include "schedule/easing.h"
#include "schedule/limits.h"
#include "schedule/price.h"
#include "schedule/random_problem.h"
#include "schedule/state.h"
#include "schedule/twin.h"

#include <gtest/gtest.h>

namespace piewright::schedule {
namespace {

std::vector<Price> pricesAt(const Problem& problem, Cost value, Tick step) {
    const Answer answer = solve(problem, {});
    EXPECT_EQ(answer.status, Status::Proven);
    EXPECT_EQ(answer.value, value);
    return pricesOf(problem, answer, {}, step);
}

TEST(Price, OneMachineMoreSavesTheSecondTurn) {
    // Two of 10 on one machine end at 20; on two machines at 10
    Statement s;
    const ResourceIndex oven = s.machine("oven");
    for (int i = 0; i < 2; ++i) s.activity("bake", Mode{10, {{oven, 1, {}}}, {}, {}});
    s.problem.horizon = 100;
    s.problem.costs = makespan();
    const std::vector<Price> prices = pricesAt(s.problem, 20, 1);
    ASSERT_EQ(prices.size(), 1U);
    EXPECT_EQ(prices[0].limit, "oven: one at a time");
    EXPECT_EQ(prices[0].saved, 10);
    EXPECT_TRUE(prices[0].isProven);
}

TEST(Price, DearestFirst) {
    // Chill 10, then at least 5, then bake: released at 7, so 7 + 10 + 5 + 20 = 42. Three ticks less of the wait save
    // 3; so does a release three earlier. Room for one more of the cold saves nothing.
    Statement s;
    const ResourceIndex cold = s.cumulative("cold room", 1);
    const ActivityIndex chill = s.activity("chill", Mode{10, {{cold, 1, {}}}, {}, {}});
    const ActivityIndex bake = s.activity("bake", 20);
    s.after(chill, bake, 5, "rests first");
    s[chill].release = 7;
    s[chill].releaseReason = "comes at seven";
    s.problem.horizon = 100;
    s.problem.costs = makespan();
    const std::vector<Price> prices = pricesAt(s.problem, 42, 3);
    ASSERT_EQ(prices.size(), 2U);
    EXPECT_EQ(prices[0].saved, 3);
    EXPECT_EQ(prices[1].saved, 3);
}

TEST(Price, SkillPresenceAndReservation) {
    // Two of 8 by the one who can, from 10 on: 26. Another person: 8 from 0 for one of them, the other 10..18, or both
    // by the newcomer 0..16: 16 at best. There 4 sooner: 22.
    Statement s;
    const SkillIndex crimp = s.skill("crimp");
    s.worker("Ada", {crimp}, {{10, 100}});
    for (int i = 0; i < 2; ++i) s.activity("crimp", Mode{8, {}, {{crimp, 1}}, {}});
    s.problem.horizon = 100;
    s.problem.costs = makespan();
    const std::vector<Price> prices = pricesAt(s.problem, 26, 4);
    ASSERT_EQ(prices.size(), 2U);
    EXPECT_EQ(prices[0].limit, "only 1 person can do \"crimp\"");
    EXPECT_EQ(prices[0].saved, 10);
    EXPECT_EQ(prices[1].limit, "Ada is there only at times");
    EXPECT_EQ(prices[1].saved, 4);
}

TEST(Easing, KeepsEveryScheduleAndHasNoFaults) {
    int looked = 0;
    for (std::uint64_t seed = 0; seed < 400; ++seed) {
        const Problem problem = randomProblem(seed, {});
        const TwinAnswer twin = twinSolve(problem, 300'000);
        if (!twin.schedule) continue;
        for (const NamedLimit& limit : namedLimits(problem)) {
            const std::optional<Problem> easier = eased(problem, limit, 2);
            if (!easier) continue;
            ++looked;
            const auto faults = faultsIn(*easier);
            EXPECT_TRUE(faults.empty()) << seed << ' ' << limit.words << ": " << faults.front();
            Schedule schedule = *twin.schedule;
            const auto violations = check(*easier, schedule);
            EXPECT_TRUE(violations.empty()) << seed << ' ' << limit.words << ": " << violations.front().what;
        }
    }
    EXPECT_GT(looked, 500);
}

} // namespace
} // namespace piewright::schedule
