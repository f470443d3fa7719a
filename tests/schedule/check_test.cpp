// A schedule that keeps every limit is broken on purpose, in each way there is, and the checker must say so.
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

constexpr ActivityIndex kMix{0}, kRoll{1}, kBake{2}, kTart{3}, kBreak{4};
constexpr WorkerIndex kAnn{0}, kBen{1}, kCat{2};

/// Mix and roll share a bench of 3 (1 reserved from 30 to 40); two bakes of two families share an oven with setups,
/// away from 100 to 110.
Problem small() {
    Statement s;
    const SkillIndex paste = s.skill("paste");
    const SkillIndex oven = s.skill("oven");
    s.worker("Ann", {paste, oven}, {{0, 60}, {70, 200}});
    s.worker("Ben", {paste}, {{0, 200}});
    s.worker("Cat", {oven}, {{0, 200}});
    s.family("hot");
    s.family("mild");
    const ResourceIndex bench = s.cumulative("bench", 3, {{{30, 40}, 1}});
    const ResourceIndex deck = s.machine("deck 1", {{10, 5}, {{0, 8}, {12, 0}}, {{100, 110}}});
    s.activity("Mix", {10, {{bench, 2, {}}}, {{paste, 1}}, {}});
    s.activity("Roll", {20, {{bench, 1, {}}}, {{paste, 2}}, {}});
    s.activity("Bake", {30, {{deck, 1, FamilyIndex{0}}}, {{oven, 1}}, {}});
    s.activity("Tart", {20, {{deck, 1, FamilyIndex{1}}}, {}, {}});
    s.activity("Break", std::vector<Mode>{{15, {}, {}, {kCat}}, {10, {}, {}, {kCat}}});
    s[kMix].release = 2;
    s[kBake].due = 80;
    s.after(kMix, kRoll, 5, "paste rests");
    s.within(kMix, kRoll, 10, "paste dries out");
    s.problem.horizon = 160;
    return s.problem;
}

/// Mix 2-12, roll 17-37, bake 40-70 (first 10), tart 78-98 (setup 8 after the bake), break 75-90.
Schedule right() {
    return {{{2, 12, 0, {kAnn}}, {17, 37, 0, {kBen, kAnn}}, {40, 70, 0, {kCat}}, {78, 98, 0, {}}, {75, 90, 0, {kCat}}}};
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

TEST(Check, KeepsSilentAboutAScheduleThatKeepsEveryLimit) {
    ASSERT_THAT(faultsIn(small()), IsEmpty());
    EXPECT_THAT(check(small(), right()), IsEmpty());
}

TEST(Check, AMissingActivityIsTold) {
    Schedule schedule = right();
    schedule.placed.pop_back();
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Shape, {}, "4 activities are placed, there are 5")));
}

TEST(Check, AModeThatIsNotThereIsTold) {
    Schedule schedule = right();
    schedule.placed[at(kBreak)].mode = 2;
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Shape, {kBreak}, "\"Break\" is in mode 2, it has 2")));
}

TEST(Check, AnEndThatIsNotStartPlusDurationIsTold) {
    Schedule schedule = right();
    schedule.placed[at(kBreak)].mode = 1; // takes 10, is placed for 15
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Shape, {kBreak}, "lasts from 75 to 90, its duration is 10")));
}

TEST(Check, AWrongNumberOfPeopleIsTold) {
    Schedule schedule = right();
    schedule.placed[at(kRoll)].workers.pop_back();
    EXPECT_THAT(check(small(), schedule), ElementsAre(breach(Limit::Shape, {kRoll}, "has 1 people, it takes 2")));
}

TEST(Check, APersonWhoIsNotThereAtAllIsTold) {
    Schedule schedule = right();
    schedule.placed[at(kMix)].workers = {WorkerIndex{3}};
    EXPECT_THAT(check(small(), schedule), ElementsAre(breach(Limit::Shape, {kMix}, "worker number 3, there are 3")));
}

TEST(Check, SomeoneElseInTheTeamIsTold) {
    Schedule schedule = right();
    schedule.placed[at(kBreak)].workers = {kBen};
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Shape, {kBreak}, "worker number 1 where its team has number 2")));
}

TEST(Check, AStartBeforeTheReleaseIsTold) {
    Schedule schedule = right();
    move(schedule, kMix, 1);
    move(schedule, kRoll, 16);
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Release, {kMix}, "\"Mix\" starts at 1, may not before 2")));
}

TEST(Check, AnEndAfterTheDueTimeIsTold) {
    Schedule schedule = right();
    move(schedule, kBake, 51); // ends 81; then 8 of setup: tart from 112, past `away`
    move(schedule, kTart, 112);
    move(schedule, kBreak, 90);
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Due, {kBake}, "\"Bake\" ends at 81, is due at 80")));
}

TEST(Check, AnEndAfterTheHorizonIsTold) {
    Schedule schedule = right();
    move(schedule, kBreak, 146);
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Horizon, {kBreak}, "\"Break\" ends at 161, everything must by 160")));
}

TEST(Check, ALeastLagCutShortIsTold) {
    Schedule schedule = right();
    move(schedule, kRoll, 16);
    EXPECT_THAT(
        check(small(), schedule),
        ElementsAre(breach(Limit::Lag, {kMix, kRoll},
                           "the start of \"Roll\" at 16 is 4 after the end of \"Mix\" at 12, must be at least 5 "
                           "(paste rests)")));
}

TEST(Check, AGreatestLagOverrunIsTold) {
    Schedule schedule = right();
    move(schedule, kRoll, 23);
    EXPECT_THAT(
        check(small(), schedule),
        ElementsAre(breach(Limit::Lag, {kMix, kRoll},
                           "the start of \"Roll\" at 23 is 11 after the end of \"Mix\" at 12, may be at most 10 "
                           "(paste dries out)")));
}

TEST(Check, TooMuchOfACumulativeIsTold) {
    Problem problem = small();
    problem.activities[at(kRoll)].modes[0].uses[0].amount = 3; // with the 1 reserved at 30: 4 of 3
    EXPECT_THAT(check(problem, right()),
                ElementsAre(breach(Limit::Capacity, {kRoll}, "\"bench\" has 4 at 30, its capacity is 3")));
    problem = small();
    problem.lags.clear();
    problem.activities[at(kMix)].modes[0].needs.clear();
    Schedule schedule = right();
    schedule.placed[at(kMix)].workers.clear();
    move(schedule, kMix, 25); // 2 + 1 at 25, and 1 more reserved at 30
    EXPECT_THAT(check(problem, schedule),
                ElementsAre(breach(Limit::Capacity, {kMix, kRoll}, "\"bench\" has 4 at 30, its capacity is 3")));
}

TEST(Check, TwoOnAMachineAtOnceAreTold) {
    Schedule schedule = right();
    move(schedule, kTart, 69);
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Capacity, {kBake, kTart},
                                   "does one at a time, \"Bake\" takes it from 40 to 70 and \"Tart\" from 69 to 89")));
}

TEST(Check, AnActivityOfNoDurationInsideAnotherOnAMachineIsTold) {
    Problem problem = small();
    problem.activities[at(kTart)].modes[0].duration = 0;
    problem.resources[1].machine->setup = {{0, 0}, {0, 0}};
    Schedule schedule = right();
    schedule.placed[at(kTart)] = {55, 55, 0, {}};
    EXPECT_THAT(check(problem, schedule), ElementsAre(breach(Limit::Capacity, {kBake, kTart}, "from 55 to 55")));
    schedule.placed[at(kTart)] = {40, 40, 0, {}};
    EXPECT_THAT(check(problem, schedule), IsEmpty());
    schedule.placed[at(kTart)] = {70, 70, 0, {}};
    EXPECT_THAT(check(problem, schedule), IsEmpty());
}

TEST(Check, ASetupCutShortIsTold) {
    Schedule schedule = right();
    move(schedule, kTart, 77);
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Setup, {kBake, kTart},
                                   "\"deck 1\" needs 8 between \"Bake\" and \"Tart\", there is 7")));
    move(schedule, kTart, 9); // ends 29; from mild to hot takes 12, there are 11
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Setup, {kBake, kTart},
                                   "\"deck 1\" needs 12 between \"Tart\" and \"Bake\", there is 11")));
}

TEST(Check, AFirstSetupCutShortIsTold) {
    Schedule schedule = right();
    move(schedule, kTart, 4);
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Setup, {kTart}, "set up first at 5 for \"Tart\", which starts at 4")));
}

TEST(Check, AMachineUsedWhileAwayIsTold) {
    Schedule schedule = right();
    move(schedule, kTart, 81);
    EXPECT_THAT(
        check(small(), schedule),
        ElementsAre(breach(Limit::Away, {kTart}, "can't be used from 100 to 110, \"Tart\" takes it from 81 to 101")));
}

TEST(Check, APersonAtWorkWhileNotThereIsTold) {
    Schedule schedule = right();
    schedule.placed[at(kBake)].workers = {kAnn};
    EXPECT_THAT(
        check(small(), schedule),
        ElementsAre(breach(Limit::Presence, {kBake},
                           "\"Ann\" does \"Bake\" from 40 to 70, is there only from 0 to 60 and from 70 to 200")));
}

TEST(Check, APersonWithoutTheSkillIsTold) {
    Schedule schedule = right();
    schedule.placed[at(kMix)].workers = {kCat};
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::Skill, {kMix}, "needs 1 people for \"paste\", has 0, not \"Cat\"")));
}

TEST(Check, APersonInTwoPlacesAtOnceIsTold) {
    Schedule schedule = right();
    move(schedule, kBreak, 60);
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::DoubleBooked, {kBake, kBreak},
                                   "\"Cat\" does \"Bake\" from 40 to 70 and \"Break\" from 60 to 75")));
}

TEST(Check, APersonInTwoPlacesOfOneActivityIsTold) {
    Schedule schedule = right();
    schedule.placed[at(kRoll)].workers = {kBen, kBen};
    EXPECT_THAT(check(small(), schedule),
                ElementsAre(breach(Limit::DoubleBooked, {kRoll}, "\"Ben\" fills 2 places of \"Roll\", may fill 1")));
}

} // namespace
} // namespace piewright::schedule
