// Shapes that a bakehouse day is made of. Ticks are minutes.
#include "schedule/bakehouse.h"
#include "schedule/check.h"
#include "schedule/solve.h"
#include "schedule/state.h"

#include <gmock/gmock.h>

namespace piewright::schedule {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::Ge;
using testing::IsEmpty;
using testing::Le;
using testing::Not;

Schedule feasible(const Problem& problem, const Options& options = {}) {
    EXPECT_THAT(faultsIn(problem), IsEmpty());
    Answer answer = solve(problem, options);
    EXPECT_EQ(answer.status, Status::Proven);
    if (!answer.schedule) {
        return {};
    }
    EXPECT_THAT(check(problem, *answer.schedule), IsEmpty());
    return *std::move(answer.schedule);
}

Mode by(Tick duration, SkillIndex skill, int people = 1) { return {duration, {}, {{skill, people}}, {}}; }

TEST(Bakehouse, OneHandWorksWhileThePanBoilsUnattended) {
    // Put on 5, boil 25, drain 5, and 20 of something else, by one hand in 35: it must go into the boil.
    Statement s;
    const SkillIndex any = s.skill("any");
    s.worker("Ann", {any}, {{0, 35}});
    const ActivityIndex putOn = s.activity("put on", by(5, any));
    const ActivityIndex boil = s.activity("boil", 25);
    const ActivityIndex drain = s.activity("drain", by(5, any));
    const ActivityIndex other = s.activity("line tins", by(20, any));
    s.atOnce(putOn, boil);
    s.atOnce(boil, drain);
    s.problem.horizon = 35;
    const Schedule schedule = feasible(s.problem);
    EXPECT_THAT(schedule.placed[at(other)].start, AllOf(Ge(5), Le(10)));
    EXPECT_EQ(schedule.placed[at(boil)].start, schedule.placed[at(putOn)].end);
    EXPECT_EQ(schedule.placed[at(drain)].start, schedule.placed[at(boil)].end);
}

TEST(Bakehouse, TwoPeopleAreTogetherOnlyWhereTheirShiftsMeet) {
    Statement s;
    const SkillIndex lid = s.skill("lid");
    s.worker("Ann", {lid}, {{0, 100}});
    s.worker("Ben", {lid}, {{60, 160}});
    const ActivityIndex pair = s.activity("lid together", by(40, lid, 2));
    s.problem.horizon = 160;
    const Schedule schedule = feasible(s.problem);
    EXPECT_EQ(schedule.placed[at(pair)], (Placed{60, 100, 0, {WorkerIndex{0}, WorkerIndex{1}}}));
}

TEST(Bakehouse, ABreakKeepsItsWindowAndWorkGoesRoundIt) {
    // Ann alone: three jobs of 40 from 0 to 140, and a break of 20 that begins at 40 at the earliest and ends by 100.
    Statement s;
    const SkillIndex any = s.skill("any");
    const WorkerIndex ann = s.worker("Ann", {any}, {{0, 140}});
    for (const char* name : {"one", "two", "three"}) {
        s.activity(name, by(40, any));
    }
    const ActivityIndex rest = s.activity("break", Mode{20, {}, {}, {ann}});
    s[rest].release = 40;
    s[rest].due = 100;
    s.problem.horizon = 140;
    const Schedule schedule = feasible(s.problem);
    // The jobs leave no gap: the break is where one or two of them are done.
    EXPECT_THAT(schedule.placed[at(rest)].start, testing::AnyOf(40, 80));
}

TEST(Bakehouse, AnOvenHeatsUpFirstAndChangesItsTemperatureOnce) {
    // 45 to heat; hot, hot, mild: 45 + 35 + 35 + 20 (change) + 30 = 165. Mild first would be 35 + 30 + 15 + 35 + 35 =
    // 150.
    Statement s;
    const FamilyIndex hot = s.family("hot");
    const FamilyIndex mild = s.family("mild");
    const ResourceIndex deck = s.machine("deck", {{45, 35}, {{0, 20}, {15, 0}}, {}});
    const ActivityIndex first = s.activity("pies", Mode{35, {{deck, 1, hot}}, {}, {}});
    const ActivityIndex tart = s.activity("tarts", Mode{30, {{deck, 1, mild}}, {}, {}});
    const ActivityIndex second = s.activity("more pies", Mode{35, {{deck, 1, hot}}, {}, {}});
    s.problem.horizon = 150;
    Schedule schedule = feasible(s.problem);
    EXPECT_EQ(schedule.placed[at(tart)].start, 35);
    EXPECT_THAT((std::vector{schedule.placed[at(first)].start, schedule.placed[at(second)].start}),
                testing::UnorderedElementsAre(80, 115)); // 35 + 30 + 15
    s[first].due = 80;                                   // now pies come first
    s.problem.horizon = 165;
    schedule = feasible(s.problem);
    EXPECT_EQ(schedule.placed[at(first)].start, 45);
    EXPECT_EQ(schedule.placed[at(tart)].start, 135); // 45 + 35 + 35 + 20
    s.problem.horizon = 164;
    EXPECT_EQ(solve(s.problem, {}).status, Status::Infeasible);
}

TEST(Bakehouse, AnOvenHeatsUpWhileItMayNotBeUsed) {
    Statement s;
    const FamilyIndex hot = s.family("hot");
    const ResourceIndex deck = s.machine("deck", {{30}, {{0}}, {{10, 40}}});
    const ActivityIndex bake = s.activity("bake", Mode{35, {{deck, 1, hot}}, {}, {}});
    s.problem.horizon = 75;
    EXPECT_EQ(feasible(s.problem).placed[at(bake)].start, 40);
}

TEST(Bakehouse, BatchesOverlapWhenTheirRestsHaveALeastAndAMost) {
    // One hand; four batches: mix 10, rest 20 to 30, roll 15. Work alone is 4 x 25 = 100. In order a batch at a time it
    // would be 4 x (10 + 20 + 15) = 180; mixing goes on while others rest, so 130 will do.
    Statement s;
    const SkillIndex any = s.skill("any");
    s.worker("Ann", {any}, {{0, 130}});
    for (int b = 0; b < 4; ++b) {
        const ActivityIndex mix = s.activity("mix", by(10, any));
        const ActivityIndex roll = s.activity("roll", by(15, any));
        s.after(mix, roll, 20);
        s.within(mix, roll, 30);
    }
    s.problem.horizon = 130;
    const Schedule schedule = feasible(s.problem);
    EXPECT_EQ(schedule.placed.size(), 8U);
}

TEST(Bakehouse, WhoCanDoMoreIsKeptFree) {
    Statement s;
    const SkillIndex paste = s.skill("paste");
    const SkillIndex oven = s.skill("oven");
    const WorkerIndex ann = s.worker("Ann", {paste, oven}, {{0, 60}});
    const WorkerIndex ben = s.worker("Ben", {paste}, {{0, 60}});
    const ActivityIndex mix = s.activity("mix", by(60, paste));
    const ActivityIndex bake = s.activity("bake", by(60, oven));
    s.problem.horizon = 60;
    const Schedule schedule = feasible(s.problem);
    EXPECT_THAT(schedule.placed[at(mix)].workers, ElementsAre(ben));
    EXPECT_THAT(schedule.placed[at(bake)].workers, ElementsAre(ann));
}

TEST(Bakehouse, WhoBeganGoesOn) {
    Statement s;
    const SkillIndex any = s.skill("any");
    s.worker("Ann", {any}, {{0, 200}});
    const WorkerIndex ben = s.worker("Ben", {any}, {{0, 200}});
    const ActivityIndex begin = s.activity("begin", Mode{10, {}, {}, {ben}});
    const ActivityIndex goOn = s.activity("go on", by(10, any));
    s.after(begin, goOn, 5);
    s.problem.horizon = 200;
    EXPECT_THAT(feasible(s.problem).placed[at(goOn)].workers, ElementsAre(ben));
}

TEST(Bakehouse, AnEarlierModeIsPreferredAtTheSameStart) {
    Statement s;
    const ResourceIndex one = s.machine("deck 1");
    const ResourceIndex two = s.machine("deck 2");
    for (const char* name : {"a", "b"}) {
        s.activity(name, std::vector<Mode>{{30, {{one, 1, {}}}, {}, {}}, {30, {{two, 1, {}}}, {}, {}}});
    }
    s.problem.horizon = 100;
    const Schedule schedule = feasible(s.problem);
    EXPECT_EQ(schedule.placed[0], (Placed{0, 30, 0, {}}));
    EXPECT_EQ(schedule.placed[1], (Placed{0, 30, 1, {}})); // the start counts before the mode
}

TEST(Bakehouse, AShelfPartlyTakenHasLessRoom) {
    Statement s;
    const ResourceIndex rack = s.cumulative("rack", 10, {{{0, 50}, 7}});
    const ActivityIndex big = s.activity("cool", Mode{30, {{rack, 5, {}}}, {}, {}});
    s.problem.horizon = 80;
    EXPECT_EQ(feasible(s.problem).placed[at(big)].start, 50);
}

TEST(Bakehouse, AWholeDayOfTwoHundredActivitiesIsPlanned) {
    const Problem problem = bakehouseDay(20, 10, 6);
    ASSERT_GE(problem.activities.size(), 200U);
    const Answer answer = solve(problem, {});
    ASSERT_EQ(answer.status, Status::Proven);
    EXPECT_THAT(check(problem, *answer.schedule), IsEmpty());
    EXPECT_LE(answer.work, 20'000U); // counted, not timed: some 1,200 when this was written
    EXPECT_EQ(solve(problem, {}).schedule, answer.schedule);
}

TEST(Bakehouse, OtherSeedsPlanTheDayToo) {
    const Problem problem = bakehouseDay(24, 8, 6);
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        feasible(problem, {seed, 2'000'000});
    }
}

TEST(Bakehouse, ADayThatNobodyCanBakeSaysSo) {
    Problem problem = bakehouseDay(20, 10, 6);
    for (Worker& worker : problem.workers) {
        std::erase(worker.skills, SkillIndex{2});
    }
    const Answer answer = solve(problem, {});
    EXPECT_EQ(answer.status, Status::Infeasible);
    EXPECT_THAT(answer.clash.limits, ElementsAre("nobody can do \"oven\""));
    EXPECT_TRUE(answer.clash.proved);
}

TEST(Bakehouse, ADayWithOneDeckNamesTheDeck) {
    Problem problem = bakehouseDay(20, 10, 6);
    for (Activity& activity : problem.activities) {
        if (activity.modes.size() > 1) {
            activity.modes.resize(1);
        }
    }
    const Answer answer = solve(problem, {});
    EXPECT_EQ(answer.status, Status::Infeasible);
    EXPECT_TRUE(answer.clash.proved);
    EXPECT_THAT(answer.clash.limits, Contains("deck 1 of oven A: one at a time"));
    EXPECT_THAT(answer.clash.limits, Not(Contains(testing::HasSubstr("mixer"))));
    EXPECT_LE(answer.clash.limits.size(), 20U);
}

TEST(Bakehouse, PiesReadyTooEarlyNameTheChainOfRestsThatMakesThemLate) {
    Problem problem = bakehouseDay(20, 10, 6);
    for (Activity& activity : problem.activities) {
        if (activity.name != "unload 1") {
            continue;
        }
        activity.release = 0;
        activity.due =
            120; // mix 12, rest 20, divide 6, rest 15, pin 12, fill 8, lid 10, load 3, bake 35, unload 3 = 124
    }
    const Answer answer = solve(problem, {});
    EXPECT_EQ(answer.status, Status::Infeasible);
    EXPECT_TRUE(answer.clash.proved);
    EXPECT_THAT(answer.clash.limits,
                ElementsAre("paste rests 20 before dividing", "heads rest 15", "loaded pies bake at once",
                            "baked pies come out at once", "pies 1 are ready by 200"));
}

} // namespace
} // namespace piewright::schedule
