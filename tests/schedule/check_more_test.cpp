// The checker on loads, stocks, pauses, what is left out and who stays: each limit broken on purpose.
#include "schedule/check.h"
#include "schedule/state.h"

#include <gmock/gmock.h>

namespace piewright::schedule {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::Field;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr ActivityIndex kPies{0}, kTarts{1}, kLate{2}, kMash{3}, kSauce{4};
constexpr WorkerIndex kAnn{0}, kBen{1};

/// Pies and tarts share a load of 4 in the oven, late pies follow after a setup of 5. Mash goes into a tub that holds
/// 2 to 6, sauce (which pauses) takes it out; sauce may be left out.
Problem small() {
    Statement s;
    const SkillIndex cook = s.skill("cook");
    s.worker("Ann", {cook}, {{0, 40}, {50, 100}});
    s.worker("Ben", {cook}, {{0, 100}});
    s.family("hot");
    s.family("mild");
    const ResourceIndex oven = s.machine("oven", {{0, 0}, {{5, 8}, {8, 5}}, {{90, 95}}, 4});
    const ResourceIndex tub = s.reservoir("tub", {2, 2, 6});
    s.activity("Pies", {20, {{oven, 2, FamilyIndex{0}}}, {}, {}});
    s.activity("Tarts", {10, {{oven, 2, FamilyIndex{0}}}, {}, {}});
    s.activity("Late", {20, {{oven, 3, FamilyIndex{0}}}, {}, {}});
    Mode mash{10, {}, {{cook, 1}}, {}};
    mash.flows = {{tub, Point::End, 4}};
    s.activity("Mash", mash);
    Mode sauce{20, {}, {{cook, 1}}, {}};
    sauce.flows = {{tub, Point::Start, -3}, {tub, Point::End, -1}};
    sauce.pauses = {{40, 50}, {80, 85}};
    s.activity("Sauce", sauce);
    s[kSauce].isOptional = true;
    s.after(kMash, kSauce, 5, "mash stands");
    s.problem.stays.push_back({kMash, kSauce, "one cook"});
    s.problem.implications.push_back({kSauce, kLate, "sauce goes with the late pies"});
    s.problem.horizon = 100;
    return s.problem;
}

/// Oven: 0-20 and 0-10, then 25-45. Mash 10-20: the tub rises to 6 at 20. Sauce 30-60, of which 40-50 is a pause: the
/// tub falls to 3 at 30, to 2 at 60.
Schedule right() {
    return {{{0, 20, 0, {}}, {0, 10, 0, {}}, {25, 45, 0, {}}, {10, 20, 0, {kAnn}}, {30, 60, 0, {kAnn}}}};
}

auto breach(Limit limit, std::vector<ActivityIndex> activities, const char* words) {
    return AllOf(Field(&Violation::limit, limit), Field(&Violation::activities, std::move(activities)),
                 Field(&Violation::what, HasSubstr(words)));
}

void move(Schedule& schedule, ActivityIndex activity, Tick start) {
    Placed& placed = schedule.placed[at(activity)];
    placed.end += start - placed.start;
    placed.start = start;
}

TEST(CheckMore, KeepsSilentAboutAScheduleThatKeepsEveryLimit) {
    ASSERT_THAT(faultsIn(small()), IsEmpty());
    EXPECT_THAT(check(small(), right()), IsEmpty());
}

TEST(CheckMore, WhatIsLeftOutBreaksNothing) {
    Schedule schedule = right();
    schedule.placed[at(kSauce)] = {0, 0, kAbsent, {}};
    EXPECT_THAT(check(small(), schedule), IsEmpty());
}

TEST(CheckMore, WhatMustBeDoneAndIsLeftOutIsTold) {
    Schedule schedule = right();
    schedule.placed[at(kTarts)] = {0, 0, kAbsent, {}};
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Shape, {kTarts}, "\"Tarts\" is left out, it must be done")));
}

TEST(CheckMore, WhatIsLeftOutHasNoTimeAndNobody) {
    Schedule schedule = right();
    schedule.placed[at(kSauce)] = {30, 60, kAbsent, {kAnn}};
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Shape, {kSauce}, "left out, but lasts from 30 to 60 and has 1 people")));
}

TEST(CheckMore, AnImplicationBrokenIsTold) {
    Problem problem = small();
    problem.activities[at(kLate)].isOptional = true;
    Schedule schedule = right();
    schedule.placed[at(kLate)] = {0, 0, kAbsent, {}};
    EXPECT_THAT(check(problem, schedule),
                ElementsAre(breach(Limit::Implication, {kSauce, kLate},
                                   "\"Sauce\" is done and \"Late\" is left out (sauce goes with the late pies)")));
    schedule.placed[at(kSauce)] = {0, 0, kAbsent, {}};
    EXPECT_THAT(check(problem, schedule), IsEmpty());
}

TEST(CheckMore, ALoadThatIsTooLargeIsTold) {
    Schedule schedule = right();
    move(schedule, kLate, 0);
    schedule.placed[at(kTarts)] = {45, 55, 0, {}};
    EXPECT_THAT(check(small(), schedule), ElementsAre(breach(Limit::Capacity, {kPies, kLate},
                                                             "\"oven\" has a load of 5 at 0, takes 4 together")));
}

TEST(CheckMore, ALoadThatIsNotBegunAtOnceIsTold) {
    Schedule schedule = right();
    move(schedule, kTarts, 1);
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Capacity, {kPies, kTarts},
                                   "\"oven\" does one load at a time, \"Pies\" takes it from 0 to 20 and \"Tarts\" "
                                   "from 1 to 11")));
}

TEST(CheckMore, ALoadOfTwoFamiliesIsTold) {
    Problem problem = small();
    problem.activities[at(kTarts)].modes[0].uses[0].family = FamilyIndex{1};
    EXPECT_THAT(check(problem, right()),
                ElementsAre(breach(Limit::Capacity, {kPies, kTarts}, "\"oven\" does one load at a time")));
}

TEST(CheckMore, ASetupAfterTheLongestOfALoadIsTold) {
    Schedule schedule = right();
    move(schedule, kLate, 24);
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Setup, {kPies, kLate},
                                   "\"oven\" needs 5 between \"Pies\" and \"Late\", there is 4")));
}

TEST(CheckMore, AStockThatRunsShortIsTold) {
    Problem problem = small();
    problem.lags.clear();
    Schedule schedule = right();
    move(schedule, kMash, 65); // 2 - 3 from 30 on, 2 - 3 - 1 from 60, then 2 at 75
    EXPECT_THAT(check(problem, schedule),
                ElementsAre(breach(Limit::Level, {kSauce}, "\"tub\" holds -1 at 30, must hold at least 2"),
                            breach(Limit::Level, {kSauce}, "\"tub\" holds -2 at 60, must hold at least 2")));
}

TEST(CheckMore, AStockThatOverflowsIsTold) {
    Problem problem = small();
    problem.resources[1].reservoir->most = 5;
    EXPECT_THAT(check(problem, right()),
                ElementsAre(breach(Limit::Level, {kMash}, "\"tub\" holds 6 at 20, must hold at most 5")));
}

TEST(CheckMore, WhatFlowsInAndOutAtOneMomentCountsTogether) {
    Problem problem = small();
    problem.resources[1].reservoir->most = 3; // 2 + 4 - 3 at the moment when mash ends and sauce starts
    problem.lags.clear();
    Schedule schedule = right();
    move(schedule, kMash, 20);
    EXPECT_THAT(check(problem, schedule), IsEmpty());
}

TEST(CheckMore, AStartWithinAPauseIsTold) {
    Schedule schedule = right();
    schedule.placed[at(kSauce)] = {45, 70, 0, {kAnn}}; // 20 ticks from 50 on
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Pause, {kSauce}, "\"Sauce\" starts at 45, within its pause from 40 to 50")));
}

TEST(CheckMore, AnEndThatForgetsAPauseIsTold) {
    Schedule schedule = right();
    schedule.placed[at(kSauce)].end = 50;
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Shape, {kSauce},
                                   "lasts from 30 to 50, 10 of it outside pauses, its duration is 20")));
}

TEST(CheckMore, AnEndPutOffOverAPauseIsTold) {
    Schedule schedule = right();
    schedule.placed[at(kSauce)] = {60, 83, 0, {kAnn}}; // done by 80
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Shape, {kSauce}, "\"Sauce\" ends at 83, it was done by 80")));
}

TEST(CheckMore, AMachineIsNotAwayDuringAPause) {
    Problem problem = small();
    problem.activities[at(kLate)].modes[0].pauses = {{30, 35}};
    problem.resources[0].machine->away = {{30, 35}};
    Schedule schedule = right();
    schedule.placed[at(kLate)].end = 50;
    EXPECT_THAT(check(problem, schedule), ElementsAre(breach(Limit::Away, {kLate}, "can't be used from 30 to 35")));
}

TEST(CheckMore, APersonIsThereOutsideThePauses) {
    Problem problem = small();
    problem.workers[0].present = {{0, 40}, {51, 100}};
    EXPECT_THAT(check(problem, right()),
                ElementsAre(breach(Limit::Presence, {kSauce}, "\"Ann\" does \"Sauce\" from 50 to 60")));
}

TEST(CheckMore, APersonIsTiedDuringAPause) {
    Statement s;
    s.problem = small();
    s.activity("Call", {5, {}, {}, {kAnn}});
    Schedule schedule = right();
    schedule.placed.push_back({50, 55, 0, {kAnn}});
    EXPECT_THAT(check(s.problem, schedule), ElementsAre(breach(Limit::DoubleBooked, {kSauce, ActivityIndex{5}},
                                                               "\"Ann\" does \"Sauce\" from 30 to 60 and \"Call\"")));
}

TEST(CheckMore, APersonWhoDoesNotStayIsTold) {
    Schedule schedule = right();
    schedule.placed[at(kSauce)].workers = {kBen};
    EXPECT_THAT(check(small(), schedule), ElementsAre(breach(Limit::Stay, {kMash, kSauce},
                                                             "\"Ben\" does \"Sauce\" and not \"Mash\" (one cook)")));
}

} // namespace
} // namespace piewright::schedule
