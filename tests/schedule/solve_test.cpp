#include "schedule/check.h"
#include "schedule/solve.h"
#include "schedule/state.h"

#include <gmock/gmock.h>

namespace piewright::schedule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(Solve, AnEmptyProblemHasAnEmptySchedule) {
    const Answer answer = solve({}, {});
    ASSERT_EQ(answer.status, Status::Feasible);
    EXPECT_TRUE(answer.schedule->placed.empty());
}

TEST(Solve, ALoopOfLagsIsToldInItsOrder) {
    Statement s;
    const ActivityIndex mix = s.activity("Mix", 10);
    const ActivityIndex rest = s.activity("Rest", 30);
    const ActivityIndex roll = s.activity("Roll", 10);
    s.after(mix, rest, 0, "paste rests after mixing");
    s.after(rest, roll, 0, "paste is rolled when rested");
    s.within(mix, roll, 20, "paste is rolled within 20 of mixing"); // but the rest takes 30
    s.problem.horizon = 1000;
    const Answer answer = solve(s.problem, {});
    EXPECT_EQ(answer.status, Status::Infeasible);
    EXPECT_TRUE(answer.clash.proved);
    EXPECT_THAT(answer.clash.limits, ElementsAre("paste rests after mixing", "paste is rolled when rested",
                                                 "paste is rolled within 20 of mixing"));
}

} // namespace
} // namespace piewright::schedule
