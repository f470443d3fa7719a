// Why there is no schedule, told in the words that the problem came with.
#include "schedule/check.h"
#include "schedule/jobshop.h"
#include "schedule/limits.h"
#include "schedule/solve.h"
#include "schedule/state.h"

#include <gmock/gmock.h>

#include <algorithm>

namespace piewright::schedule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::Not;

Clash proved(const Problem& problem) {
    EXPECT_THAT(faultsIn(problem), IsEmpty());
    Answer answer = solve(problem, {});
    EXPECT_EQ(answer.status, Status::Infeasible);
    EXPECT_FALSE(answer.schedule.has_value());
    EXPECT_TRUE(answer.clash.proved);
    return std::move(answer.clash);
}

TEST(Clash, ALoopOfLagsIsToldInItsOrderTheGreatestLast) {
    Statement s;
    const ActivityIndex mix = s.activity("Mix", 10);
    const ActivityIndex rest = s.activity("Rest", 30);
    const ActivityIndex roll = s.activity("Roll", 10);
    s.after(mix, rest, 0, "paste rests after mixing");
    s.after(rest, roll, 0, "paste is rolled when rested");
    s.within(mix, roll, 20, "paste is rolled within 20 of mixing"); // but the rest takes 30
    s.problem.horizon = 1000;
    EXPECT_THAT(proved(s.problem).limits, ElementsAre("paste rests after mixing", "paste is rolled when rested",
                                                      "paste is rolled within 20 of mixing"));
}

TEST(Clash, AChainGoesFromTheReleaseOverTheLagsToTheDueTime) {
    Statement s;
    const ActivityIndex fetch = s.activity("Fetch", 10);
    const ActivityIndex cook = s.activity("Cook", 30);
    s[fetch].release = 100;
    s[fetch].releaseReason = "fish comes at 100";
    s.after(fetch, cook, 5, "fish is gutted first");
    s[cook].due = 140; // 100 + 10 + 5 + 30 = 145
    s[cook].dueReason = "stew is ready by 140";
    s.problem.horizon = 1000;
    EXPECT_THAT(proved(s.problem).limits,
                ElementsAre("fish comes at 100", "fish is gutted first", "stew is ready by 140"));
}

TEST(Clash, AReleaseThatMakesNoDifferenceIsNotTold) {
    Statement s;
    const ActivityIndex cook = s.activity("Cook", 30);
    s[cook].release = 5;
    s[cook].releaseReason = "the first hand comes at 5";
    s[cook].due = 20;
    s[cook].dueReason = "stew is ready by 20"; // hopeless from 0, too
    s.problem.horizon = 1000;
    EXPECT_THAT(proved(s.problem).limits, ElementsAre("stew is ready by 20"));
}

TEST(Clash, ModesThatEachMeetADifferentLoopAreAllTold) {
    Statement s;
    const ActivityIndex before = s.activity("Before", 0);
    const ActivityIndex bake = s.activity("Bake", std::vector<Mode>{{20, {}, {}, {}}, {60, {}, {}, {}}});
    const ActivityIndex after = s.activity("After", 0);
    s.atOnce(before, bake);
    s.atOnce(bake, after);
    s.after(before, after, 30, "bakes at least 30");
    s.within(before, after, 50, "bakes at most 50");
    s.problem.horizon = 1000;
    EXPECT_THAT(proved(s.problem).limits, testing::UnorderedElementsAre("bakes at least 30", "bakes at most 50"));
}

TEST(Clash, AMachineIsNamedWithWhatWantsItAtOnce) {
    Statement s;
    const ResourceIndex deck = s.machine("deck 2 of Oven A");
    const ResourceIndex mixer = s.machine("mixer");
    for (int b = 1; b <= 2; ++b) {
        const ActivityIndex bake = s.activity("bake " + std::to_string(b), Mode{35, {{deck, 1, {}}}, {}, {}});
        s[bake].due = 60; // 2 x 35 = 70
        s[bake].dueReason = "bake " + std::to_string(b) + " is out by 60";
    }
    s.activity("mix", Mode{10, {{mixer, 1, {}}}, {}, {}});
    s.problem.horizon = 1000;
    EXPECT_THAT(proved(s.problem).limits,
                ElementsAre("deck 2 of Oven A: one at a time", "bake 1 is out by 60", "bake 2 is out by 60"));
}

TEST(Clash, PeopleAreCounted) {
    Statement s;
    const SkillIndex paste = s.skill("paste");
    for (const char* name : {"Ann", "Ben"}) {
        s.worker(name, {paste}, {{0, 100}});
    }
    s.worker("Cat", {}, {{0, 100}});
    for (int i = 0; i < 3; ++i) {
        s.activity("mix " + std::to_string(i), Mode{40, {}, {{paste, 1}}, {}});
    }
    s.problem.horizon = 70; // 3 x 40 for two people in 70
    EXPECT_THAT(proved(s.problem).limits, ElementsAre("only 2 people can do \"paste\""));
}

TEST(Clash, MoreHandsAtOnceThanThereAreIsToldAtOnce) {
    Statement s;
    const SkillIndex lift = s.skill("lift");
    s.worker("Ann", {lift}, {{0, 100}});
    s.activity("lift the cauldron", Mode{5, {}, {{lift, 2}}, {}});
    s.problem.horizon = 100;
    EXPECT_THAT(proved(s.problem).limits, ElementsAre("only 1 person can do \"lift\""));
}

TEST(Clash, AShiftIsNamed) {
    Statement s;
    const SkillIndex oven = s.skill("oven");
    s.worker("Ann", {oven}, {{50, 100}});
    const ActivityIndex light = s.activity("light", Mode{10, {}, {{oven, 1}}, {}});
    s[light].due = 40;
    s[light].dueReason = "the oven is lit by 40";
    s.problem.horizon = 100;
    EXPECT_THAT(proved(s.problem).limits,
                ElementsAre("only 1 person can do \"oven\"", "Ann is there only at times", "the oven is lit by 40"));
}

TEST(Clash, ANamedPersonWantedTwiceIsNamed) {
    Statement s;
    const WorkerIndex ann = s.worker("Ann", {}, {{0, 200}});
    for (const char* name : {"break", "talk with the miller"}) {
        const ActivityIndex activity = s.activity(name, Mode{20, {}, {}, {ann}});
        s[activity].release = 90;
        s[activity].releaseReason = std::string(name) + " not before 90";
        s[activity].due = 120;
        s[activity].dueReason = std::string(name) + " by 120";
    }
    s.problem.horizon = 200;
    EXPECT_THAT(proved(s.problem).limits,
                ElementsAre("Ann does one thing at a time", "break not before 90", "talk with the miller not before 90",
                            "break by 120", "talk with the miller by 120"));
}

TEST(Clash, AnOvenThatNeedsTimeToHeatIsTold) {
    Statement s;
    const FamilyIndex hot = s.family("hot");
    const ResourceIndex deck = s.machine("deck 1", {{45}, {{0}}, {}});
    const ActivityIndex bake = s.activity("bake", Mode{35, {{deck, 1, hot}}, {}, {}});
    s[bake].due = 60;
    s[bake].dueReason = "pies by 60";
    s.problem.horizon = 200;
    EXPECT_THAT(proved(s.problem).limits,
                ElementsAre("deck 1: one at a time", "deck 1: takes time to set up", "pies by 60"));
}

TEST(Clash, AShelfThatIsPartlyTakenIsTold) {
    Statement s;
    const ResourceIndex rack = s.cumulative("rack", 10, {{{0, 50}, 7}});
    const ActivityIndex cool = s.activity("cool", Mode{30, {{rack, 5, {}}}, {}, {}});
    s[cool].due = 60;
    s[cool].dueReason = "cold by 60";
    s.problem.horizon = 200;
    EXPECT_THAT(proved(s.problem).limits,
                ElementsAre("rack: room for 10", "rack: partly taken at times", "cold by 60"));
}

TEST(Clash, AMachineThatIsAwayIsTold) {
    Statement s;
    const ResourceIndex mixer = s.machine("mixer", {{}, {}, {{0, 50}}});
    const ActivityIndex mix = s.activity("mix", Mode{20, {{mixer, 1, {}}}, {}, {}});
    s[mix].due = 60;
    s[mix].dueReason = "paste by 60";
    s.problem.horizon = 200;
    EXPECT_THAT(proved(s.problem).limits,
                ElementsAre("mixer: one at a time", "mixer: can't be used all the time", "paste by 60"));
}

TEST(Clash, WhatNeedsNoTellingIsToldWhenThereIsNothingElse) {
    Statement s;
    s.activity("cook", 30);
    s.problem.horizon = 20;
    EXPECT_THAT(proved(s.problem).limits, ElementsAre("what there is to do takes longer than the time there is, 20"));
    s.problem.horizonReason = "all is done by 20";
    EXPECT_THAT(proved(s.problem).limits, ElementsAre("all is done by 20"));
}

TEST(Clash, WhenTheWorkRunsOutItNamesLimitsThatCouldGiveWay) {
    // 950 is feasible but hard; nothing is found with so little work.
    const Problem problem = asProblem(ft10(), 950);
    const Answer answer = solve(problem, {1, 60'000});
    ASSERT_EQ(answer.status, Status::OutOfTime);
    EXPECT_FALSE(answer.schedule.has_value());
    EXPECT_FALSE(answer.clash.proved);
    ASSERT_THAT(answer.clash.limits, Not(IsEmpty()));
    EXPECT_LE(answer.work, 70'000U); // the budget, and what the last step had begun
    // Given up together they let a schedule exist.
    std::vector<NamedLimit> gone;
    for (const NamedLimit& limit : namedLimits(problem)) {
        if (std::count(answer.clash.limits.begin(), answer.clash.limits.end(), limit.words) > 0) {
            gone.push_back(limit);
        }
    }
    EXPECT_EQ(gone.size(), answer.clash.limits.size());
    EXPECT_EQ(solve(without(problem, gone), {}).status, Status::Proven);
}

} // namespace
} // namespace piewright::schedule
