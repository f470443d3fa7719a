// Whole invented days: built, made cheaper, and mended after one thing has changed.
#include "schedule_improve/day.h"

#include "schedule/check.h"
#include "schedule/cost.h"
#include "schedule/repair.h"
#include "schedule/ruin.h"

#include <gmock/gmock.h>

namespace piewright::schedule {
namespace {

using testing::IsEmpty;

class InventedDay : public testing::Test {
  protected:
    Problem problem = inventedDay({20, 8, 3, 6}, 5);
    Model model{problem};

    Standing planned(std::uint64_t work) {
        Ruin ruin(model, 1);
        Standing standing;
        Turn turn;
        turn.work = work;
        ruin.run(turn, standing);
        return standing;
    }
};

TEST_F(InventedDay, HasNoFaults) { EXPECT_THAT(faultsIn(problem), IsEmpty()); }

TEST_F(InventedDay, BecomesAFifthCheaperThanTheFirstPlanWithinSomeWork) {
    Ruin ruin(model, 1);
    Standing standing;
    Cost first = 0;
    Turn turn;
    turn.work = 400'000;
    turn.found = [&](const Schedule&, Cost value) { first = first == 0 ? value : first; };
    ruin.run(turn, standing);
    ASSERT_TRUE(standing.schedule);
    EXPECT_THAT(check(problem, *standing.schedule), IsEmpty());
    EXPECT_EQ(standing.value, costOf(problem, *standing.schedule));
    EXPECT_LT(standing.value * 5, first * 4);
}

TEST_F(InventedDay, IsMendedAfterADelayWithFewMoved) {
    const Standing plan = planned(200'000);
    ASSERT_TRUE(plan.schedule);
    Problem later = problem;
    later.activities[0].release = plan.schedule->placed[0].start + 25;
    const Model changed(later);
    Repair repair(changed, *plan.schedule, 1);
    Standing mended;
    Turn turn;
    turn.work = 200'000;
    repair.run(turn, mended);
    ASSERT_TRUE(mended.schedule);
    EXPECT_THAT(check(later, *mended.schedule), IsEmpty());
    EXPECT_EQ(mended.value, costOf(later, *mended.schedule));
    EXPECT_GT(repair.moved(), 0U); // the first at least
    EXPECT_LT(repair.moved(), problem.activities.size() / 4);
}

TEST_F(InventedDay, EndsSoonAfterItIsCancelled) {
    std::atomic<bool> cancelled = true;
    Ruin ruin(model, 1);
    Standing standing;
    Turn turn;
    turn.work = 1'000'000'000;
    turn.cancelled = &cancelled;
    EXPECT_LT(ruin.run(turn, standing), 100'000U);
}

} // namespace
} // namespace piewright::schedule
