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
    ASSERT_EQ(answer.status, Status::Proven);
    EXPECT_TRUE(answer.schedule->placed.empty());
}

TEST(Solve, AnActivityWithoutNeedsStartsAtOnce) {
    Statement s;
    const ActivityIndex a = s.activity("a", 10);
    s[a].release = 3;
    s.problem.horizon = 100;
    const Answer answer = solve(s.problem, {});
    ASSERT_EQ(answer.status, Status::Proven);
    EXPECT_THAT(answer.schedule->placed, ElementsAre(Placed{3, 13, 0, {}}));
}

TEST(Solve, ActivitiesOfNoDurationMeetAtOneTick) {
    // Both on one machine without setups at tick 5, which is also the end of one activity and the start of another.
    Statement s;
    const ResourceIndex machine = s.machine("machine");
    const auto on = [&](Tick duration) { return Mode{duration, {{machine, 1, {}}}, {}, {}}; };
    const ActivityIndex before = s.activity("before", on(5));
    const ActivityIndex one = s.activity("one", on(0));
    const ActivityIndex other = s.activity("other", on(0));
    const ActivityIndex after = s.activity("after", on(5));
    for (const ActivityIndex middle : {one, other}) {
        s.after(before, middle, 0);
        s.after(middle, after, 0);
    }
    s.problem.horizon = 10;
    const Answer answer = solve(s.problem, {});
    ASSERT_EQ(answer.status, Status::Proven);
    EXPECT_THAT(check(s.problem, *answer.schedule), IsEmpty());
    EXPECT_EQ(answer.schedule->placed[at(one)].start, 5);
    EXPECT_EQ(answer.schedule->placed[at(other)].start, 5);
}

TEST(Solve, AVeryLongHorizonAndVeryLongTimesAreNoTrouble) {
    Statement s;
    const ResourceIndex machine = s.machine("machine", {{kNever / 4, 0}, {{0, kNever / 4}, {kNever / 4, 0}}, {}});
    const ActivityIndex a = s.activity("a", Mode{kNever / 4, {{machine, 1, FamilyIndex{0}}}, {}, {}});
    const ActivityIndex b = s.activity("b", Mode{kNever / 4, {{machine, 1, FamilyIndex{1}}}, {}, {}});
    s.after(a, b, kNever / 4);
    s.problem.horizon = kNever;
    ASSERT_THAT(faultsIn(s.problem), IsEmpty());
    Answer answer = solve(s.problem, {});
    ASSERT_EQ(answer.status, Status::Proven);
    EXPECT_THAT(check(s.problem, *answer.schedule), IsEmpty());
    s.after(b, a, kNever);
    EXPECT_EQ(solve(s.problem, {}).status, Status::Infeasible);
    s.problem.lags.pop_back();
    s.within(a, b, kNever / 4 - 1);
    answer = solve(s.problem, {});
    EXPECT_EQ(answer.status, Status::Infeasible); // and not after counting up to kNever
}

TEST(Solve, OrdersThatContradictALagAreRefutedWithoutCountingUp) {
    // Two on a machine, tied by greatest lags so that neither can be first, in a horizon of hundreds of millions of
    // ticks.
    Statement s;
    const ResourceIndex machine = s.machine("machine");
    const ActivityIndex a = s.activity("a", Mode{10, {{machine, 1, {}}}, {}, {}});
    const ActivityIndex b = s.activity("b", Mode{10, {{machine, 1, {}}}, {}, {}});
    s.problem.lags.push_back({a, Point::Start, b, Point::Start, -9, "a starts at most 9 after b"});
    s.problem.lags.push_back({b, Point::Start, a, Point::Start, -9, "b starts at most 9 after a"});
    s.problem.horizon = kNever;
    const Answer answer = solve(s.problem, {});
    EXPECT_EQ(answer.status, Status::Infeasible);
    EXPECT_THAT(answer.clash.limits,
                ElementsAre("machine: one at a time", "a starts at most 9 after b", "b starts at most 9 after a"));
}

TEST(Solve, WithoutWorkNothingIsFoundNorClaimed) {
    Statement s;
    const ResourceIndex machine = s.machine("machine");
    for (int i = 0; i < 8; ++i) {
        s.activity("a", Mode{10, {{machine, 1, {}}}, {}, {}});
    }
    s.problem.horizon = 80;
    const Answer answer = solve(s.problem, {1, 0});
    EXPECT_EQ(answer.status, Status::OutOfTime);
    EXPECT_FALSE(answer.clash.proved);
}

TEST(Solve, AnotherSeedMayGiveAnotherScheduleButNeverAWrongOne) {
    Statement s;
    const SkillIndex any = s.skill("any");
    for (const char* name : {"Ann", "Ben"}) {
        s.worker(name, {any}, {{0, 60}});
    }
    for (int i = 0; i < 6; ++i) {
        s.activity("job", Mode{20, {}, {{any, 1}}, {}});
    }
    s.problem.horizon = 60;
    for (std::uint64_t seed = 0; seed < 20; ++seed) {
        const Answer answer = solve(s.problem, {seed, 10'000});
        ASSERT_EQ(answer.status, Status::Proven);
        EXPECT_THAT(check(s.problem, *answer.schedule), IsEmpty());
    }
}

} // namespace
} // namespace piewright::schedule
