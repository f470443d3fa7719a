// Costs by sums written out.
#include "schedule/check.h"
#include "schedule/cost.h"
#include "schedule/state.h"

#include <gtest/gtest.h>

namespace piewright::schedule {
namespace {

constexpr WorkerIndex kAnn{0}, kBen{1}, kCat{2};

TEST(Curve, IsThatOfItsLastPieceBegunAndOfTheFirstBefore) {
    // 10 at 5, falling by 2 each tick; from 8 on it is 1 and rises by 3.
    const Curve curve{{{5, 10, -2}, {8, 1, 3}}};
    EXPECT_EQ(valueOf(curve, 5), 10);
    EXPECT_EQ(valueOf(curve, 7), 6);
    EXPECT_EQ(valueOf(curve, 8), 1);
    EXPECT_EQ(valueOf(curve, 12), 13); // 1 + 3 * 4
    EXPECT_EQ(valueOf(curve, 0), 20);  // 10 + 2 * 5
}

/// Three activities that Ann, Ben and Cat may do, one after the other unless moved.
struct Day : testing::Test {
    Day() {
        const SkillIndex bake = s.skill("bake");
        for (const char* name : {"Ann", "Ben", "Cat"}) s.worker(name, {bake}, {{0, 100}});
        oven = s.machine("oven");
        shelf = s.cumulative("shelf", 9);
        stock = s.reservoir("stock", {0, 0, 9});
        Mode mode;
        mode.duration = 10;
        mode.needs.push_back({bake, 1});
        mode.uses = {{shelf, 2, {}}};
        first = s.activity("first", mode);
        second = s.activity("second", mode);
        mode.duration = 5;
        mode.uses = {{shelf, 3, {}}};
        mode.flows = {{stock, Point::End, 1}};
        third = s.activity("third", {mode, mode});
        s[third].isOptional = true;
        s.problem.horizon = 100;
        schedule.placed = {{0, 10, 0, {kAnn}}, {10, 20, 0, {kBen}}, {30, 35, 0, {kAnn}}};
    }
    void leaveOut() { schedule.placed[at(third)] = {0, 0, kAbsent, {}}; }
    [[nodiscard]] Cost cost() const {
        EXPECT_TRUE(faultsIn(s.problem).empty());
        EXPECT_TRUE(check(s.problem, schedule).empty());
        return costOf(s.problem, schedule);
    }
    [[nodiscard]] Costs& costs() { return s.problem.costs; }

    Statement s;
    ResourceIndex oven{}, shelf{}, stock{};
    ActivityIndex first{}, second{}, third{};
    Schedule schedule;
};

TEST_F(Day, CostsNothingWhereNothingIsAsked) { EXPECT_EQ(cost(), 0); }

TEST_F(Day, ItsMakespanIsTheLastEnd) {
    costs() = makespan();
    EXPECT_EQ(cost(), 35);
    leaveOut();
    EXPECT_EQ(cost(), 20);
}

TEST_F(Day, ModesAndAbsencesCostWhatTheySay) {
    s[first].modes[0].cost = 7;
    s[third].modes[0].cost = -2;
    s[third].modes[1].cost = 4;
    s[third].absentCost = 9;
    EXPECT_EQ(cost(), 7 - 2);
    schedule.placed[at(third)].mode = 1;
    EXPECT_EQ(cost(), 7 + 4);
    leaveOut();
    EXPECT_EQ(cost(), 7 + 9);
}

TEST_F(Day, TimesCostByTheirCurves) {
    costs().times.push_back({second, Point::Start, {{{0, 0, 1}}}});          // 10
    costs().times.push_back({third, Point::End, {{{0, 0, 0}, {30, 5, 2}}}}); // 5 + 2 * 5
    EXPECT_EQ(cost(), 25);
    leaveOut();
    EXPECT_EQ(cost(), 10);
}

TEST_F(Day, ExtentsAreOfAllOrOfAResourceOrAPerson) {
    const Curve ticks{{{0, 0, 1}}};
    costs().extents.push_back({ExtentCost::Of::First, {}, kBen, ticks}); // 10
    EXPECT_EQ(cost(), 10);
    costs().extents = {{ExtentCost::Of::Length, {}, kAnn, ticks}}; // 0 to 35
    EXPECT_EQ(cost(), 35);
    costs().extents = {{ExtentCost::Of::Last, {}, kAnn, ticks}, {ExtentCost::Of::Length, {}, {}, ticks}};
    EXPECT_EQ(cost(), 35 + 35);
    costs().extents = {{ExtentCost::Of::First, stock, {}, ticks}, {ExtentCost::Of::Length, shelf, {}, ticks}};
    EXPECT_EQ(cost(), 30 + 35);
    leaveOut();
    EXPECT_EQ(cost(), 0 + 20);
}

TEST_F(Day, ExtentsOfNobodyAndNothingCostNothing) {
    const Curve flat{{{0, 50, 0}}};
    costs().extents = {{ExtentCost::Of::Last, {}, kCat, flat}, {ExtentCost::Of::Length, oven, {}, flat}};
    EXPECT_EQ(cost(), 0);
}

TEST_F(Day, LoadsCostTickByTickWhatGoesAbove) {
    // On the shelf 2 from 0 to 20, 3 from 30 to 35. Above 1: 1 in 5..20, 2 in 30..33.
    costs().loads.push_back({shelf, {5, 33}, 1, 4});
    EXPECT_EQ(cost(), 4 * (15 * 1 + 3 * 2));
    // Second at once with the first: 4 from 5 to 10.
    schedule.placed[at(second)] = {5, 15, 0, {kBen}};
    EXPECT_EQ(cost(), 4 * (5 * 3 + 5 * 1 + 3 * 2));
}

TEST_F(Day, WorkIsAddedUpByPersonWithoutPauses) {
    costs().work.push_back({kAnn, {{{0, 0, 1}, {12, 12, 3}}}}); // 10 + 5 = 15 ticks: 12 + 3 * 3
    costs().work.push_back({kCat, {{{0, 8, 1}}}});              // none: 8
    EXPECT_EQ(cost(), 21 + 8);
    s[third].modes[0].pauses = {{32, 40}};
    schedule.placed[at(third)].end = 43; // 30, 31, then 40, 41, 42
    EXPECT_EQ(cost(), 21 + 8);
}

TEST_F(Day, HandOversCountWhoIsNew) {
    costs().handOvers = {{first, second, 3}, {first, third, 5}};
    EXPECT_EQ(cost(), 3);
    schedule.placed[at(third)].workers = {kCat};
    EXPECT_EQ(cost(), 3 + 5);
    leaveOut();
    EXPECT_EQ(cost(), 3);
}

TEST_F(Day, DistanceFromAPreviousPlanIsOfStartModeAndPeople) {
    costs().before.push_back({second, 13, 0, {kAnn}, 2, 50, 7});     // 3 earlier: 6, Ben is new: 7
    costs().before.push_back({third, 28, 1, {kAnn}, 2, 50, 7});      // 2 later: 4, other mode 50
    costs().before.push_back({first, 0, 0, {kAnn, kBen}, 2, 50, 7}); // Ben no more: nothing
    EXPECT_EQ(cost(), 6 + 7 + 4 + 50);
    leaveOut();
    EXPECT_EQ(cost(), 6 + 7 + 50);
    costs().before[1].mode = kAbsent;
    EXPECT_EQ(cost(), 6 + 7);
    schedule.placed[at(third)] = {30, 35, 0, {kCat}};
    EXPECT_EQ(cost(), 6 + 7 + 50);
}

TEST_F(Day, SetupsCostFromLoadToLoad) {
    Machine& machine = *s.problem.resources[at(oven)].machine;
    machine.together = 4;
    machine.firstCost = {10, 20};
    machine.setupCost = {{1, 5}, {6, 2}};
    s[first].modes[0].uses = {{oven, 2, FamilyIndex{0}}};
    s[second].modes[0].uses = {{oven, 2, FamilyIndex{0}}};
    s[third].modes[0].uses = {{oven, 2, FamilyIndex{1}}};
    EXPECT_EQ(cost(), 10 + 1 + 5);
    schedule.placed[at(second)] = {0, 10, 0, {kBen}}; // one load with the first
    EXPECT_EQ(cost(), 10 + 5);
    leaveOut();
    EXPECT_EQ(cost(), 10);
}

} // namespace
} // namespace piewright::schedule
