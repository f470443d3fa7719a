// What faultsIn says of a problem that makes no sense.
#include "schedule/state.h"

#include <gmock/gmock.h>

#include <functional>

namespace piewright::schedule {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// One of everything, without fault.
Problem sound() {
    Statement s;
    const SkillIndex paste = s.skill("paste");
    const WorkerIndex ann = s.worker("Ann", {paste}, {{0, 60}, {70, 200}});
    s.worker("Ben", {paste}, {{0, 60}});
    const FamilyIndex hot = s.family("hot");
    s.family("mild");
    const ResourceIndex bench = s.cumulative("bench", 3, {{{30, 40}, 1}});
    const ResourceIndex deck = s.machine("deck", {{10, 5}, {{0, 8}, {12, 0}}, {{100, 110}}});
    const ActivityIndex mix = s.activity("Mix", {10, {{bench, 2, {}}, {deck, 1, hot}}, {{paste, 1}}, {ann}});
    const ActivityIndex roll = s.activity("Roll", 5);
    s.after(mix, roll, 5, "paste rests");
    const ResourceIndex stock = s.reservoir("stock", {4, 1, 9});
    const ResourceIndex oven = s.machine("oven", {});
    Machine& loads = *s.problem.resources[at(oven)].machine;
    loads.together = 4;
    loads.firstCost = {1, 2};
    loads.setupCost = {{0, 3}, {7, 0}};
    Mode bake;
    bake.duration = 20;
    bake.uses.push_back({oven, 3, hot});
    bake.flows.push_back({stock, Point::End, 2});
    bake.pauses = {{40, 50}, {60, 70}};
    s.activity("Bake", bake);
    s.problem.stays.push_back({mix, roll, "same hands"});
    s.problem.implications.push_back({roll, mix, "no roll without mix"});
    Costs& costs = s.problem.costs;
    costs.times.push_back({mix, Point::End, {{{0, 0, 1}, {50, 60, 2}}}});
    costs.extents.push_back({ExtentCost::Of::Last, stock, {}, {{{0, 0, 1}}}});
    costs.extents.push_back({ExtentCost::Of::Length, {}, ann, {{{0, 0, 1}}}});
    costs.loads.push_back({bench, {10, 20}, 1, 3});
    costs.work.push_back({ann, {{{0, 0, 0}, {40, 0, 2}}}});
    costs.handOvers.push_back({mix, roll, 5});
    costs.before.push_back({mix, 12, 0, {ann}, 1, 20, 4});
    s.problem.horizon = 100;
    return s.problem;
}

struct Case {
    const char* told;
    std::function<void(Problem&)> spoil;
};

TEST(Faults, ASoundProblemHasNone) { EXPECT_THAT(faultsIn(sound()), IsEmpty()); }

TEST(Faults, EachIsToldInOneSentenceWithNames) {
    const std::vector<Case> cases{
        {"the horizon -1 lies outside 0 to", [](Problem& p) { p.horizon = -1; }},
        {"the horizon", [](Problem& p) { p.horizon = kNever + 1; }},
        {"resource \"both\" is more than one of cumulative, machine and reservoir",
         [](Problem& p) { p.resources.push_back({"both", Cumulative{}, Machine{}}); }},
        {"resource \"idle\" is neither cumulative nor a machine nor a reservoir",
         [](Problem& p) { p.resources.push_back({"idle", {}, {}}); }},
        {"resource \"pan\" has capacity -1, below 0",
         [](Problem& p) { p.resources.push_back({"pan", Cumulative{-1, {}}, {}}); }},
        {"resource \"bench\" has a span from 40 to 40, which holds no time",
         [](Problem& p) { p.resources[0].cumulative->reserved[0].span.from = 40; }},
        {"resource \"bench\" has -2 reserved, below 0",
         [](Problem& p) { p.resources[0].cumulative->reserved[0].amount = -2; }},
        {"resource \"deck\" has a span from 110 to 100, which holds no time",
         [](Problem& p) { p.resources[1].machine->away[0] = {110, 100}; }},
        {"resource \"deck\" has a span from 0 to",
         [](Problem& p) { p.resources[1].machine->away[0] = {0, kNever + 1}; }},
        {"resource \"deck\" has first setups for 2 families; its setups must be a square table of that size",
         [](Problem& p) { p.resources[1].machine->setup[1].pop_back(); }},
        {"resource \"deck\" has a setup of -1, outside 0 to",
         [](Problem& p) { p.resources[1].machine->setup[1][0] = -1; }},
        {"resource \"deck\" has a setup of -3, outside 0 to",
         [](Problem& p) { p.resources[1].machine->first[1] = -3; }},
        {"takes 100 to its first setup for \"hot\" but only 17 by way of \"mild\"", // 5 + 12
         [](Problem& p) { p.resources[1].machine->first[0] = 100; }},
        {"takes 30 from \"hot\" to \"hot\" but only 20 by way of \"mild\"", // 8 + 12
         [](Problem& p) { p.resources[1].machine->setup[0][0] = 30; }},
        {"worker \"Ann\" has skill number 1; there are 1",
         [](Problem& p) { p.workers[0].skills.push_back(SkillIndex{1}); }},
        {"worker \"Ann\" has skill number -1; there are 1",
         [](Problem& p) { p.workers[0].skills.push_back(SkillIndex{-1}); }},
        {"worker \"Ann\" is present until 60 and then from 60; spans must be in order and apart",
         [](Problem& p) { p.workers[0].present[1].from = 60; }},
        {"worker \"Ben\" has a span from 60 to 0, which holds no time",
         [](Problem& p) { p.workers[1].present[0] = {60, 0}; }},
        {"activity \"Roll\" has no mode; it must have at least one", [](Problem& p) { p.activities[1].modes.clear(); }},
        {"activity \"Roll\" has release -1, outside 0 to", [](Problem& p) { p.activities[1].release = -1; }},
        {"activity \"Roll\" is due at", [](Problem& p) { p.activities[1].due = kNever + 1; }},
        {"activity \"Roll\", has duration -5, outside 0 to",
         [](Problem& p) { p.activities[1].modes[0].duration = -5; }},
        {"activity \"Roll\", mode 1, has duration -5, outside 0 to",
         [](Problem& p) { p.activities[1].modes.push_back({-5, {}, {}, {}}); }},
        {"activity \"Mix\", uses resource number 7; there are 4",
         [](Problem& p) { p.activities[0].modes[0].uses[0].resource = ResourceIndex{7}; }},
        {"activity \"Mix\", uses \"bench\" twice",
         [](Problem& p) { p.activities[0].modes[0].uses.push_back({ResourceIndex{0}, 1, {}}); }},
        {"activity \"Mix\", uses 4 of \"bench\", outside 0 to 3",
         [](Problem& p) { p.activities[0].modes[0].uses[0].amount = 4; }},
        {"activity \"Mix\", uses -1 of \"bench\", outside 0 to 3",
         [](Problem& p) { p.activities[0].modes[0].uses[0].amount = -1; }},
        {"activity \"Mix\", uses 2 of machine \"deck\"; must be 1",
         [](Problem& p) { p.activities[0].modes[0].uses[1].amount = 2; }},
        {"activity \"Mix\", has family number 2 on \"deck\", which has 2",
         [](Problem& p) { p.activities[0].modes[0].uses[1].family = FamilyIndex{2}; }},
        {"activity \"Mix\", needs skill number 1; there are 1",
         [](Problem& p) { p.activities[0].modes[0].needs[0].skill = SkillIndex{1}; }},
        {"activity \"Mix\", needs 0 people for \"paste\"; at least 1",
         [](Problem& p) { p.activities[0].modes[0].needs[0].count = 0; }},
        {"activity \"Mix\", names skill \"paste\" twice",
         [](Problem& p) { p.activities[0].modes[0].needs.push_back({SkillIndex{0}, 1}); }},
        {"activity \"Mix\", names worker number 2; there are 2",
         [](Problem& p) { p.activities[0].modes[0].team[0] = WorkerIndex{2}; }},
        {"activity \"Mix\", names worker \"Ann\" twice",
         [](Problem& p) { p.activities[0].modes[0].team.push_back(WorkerIndex{0}); }},
        {"lag \"paste rests\" names activity number 3; there are 3",
         [](Problem& p) { p.lags[0].to = ActivityIndex{3}; }},
        {"lag \"paste rests\" names activity number -1; there are 3",
         [](Problem& p) { p.lags[0].from = ActivityIndex{-1}; }},
        {"resource \"stock\" has 4 in it at first, outside 5 to 9",
         [](Problem& p) { p.resources[2].reservoir->least = 5; }},
        {"resource \"stock\" has 4 in it at first, outside 1 to 3",
         [](Problem& p) { p.resources[2].reservoir->most = 3; }},
        {"resource \"many\" is more than one of",
         [](Problem& p) { p.resources.push_back({"many", Cumulative{}, {}, Reservoir{}}); }},
        {"resource \"oven\" takes 0 together; at least 1",
         [](Problem& p) {
             p.resources[3].machine->together = 0;
             p.activities[2].modes[0].uses.clear();
         }},
        {"resource \"oven\" has costs of first setups for 2 families; its costs of setups must be a square table",
         [](Problem& p) { p.resources[3].machine->setupCost[0].pop_back(); }},
        {"resource \"oven\" has a setup that costs -7, below 0",
         [](Problem& p) { p.resources[3].machine->setupCost[1][0] = -7; }},
        {"resource \"oven\" has a setup that costs -1, below 0",
         [](Problem& p) { p.resources[3].machine->firstCost[1] = -1; }},
        {"resource \"deck\" has setups for 2 families and costs of them for 1",
         [](Problem& p) {
             p.resources[1].machine->firstCost = {0};
             p.resources[1].machine->setupCost = {{0}};
         }},
        {"activity \"Bake\", puts 5 into a load of \"oven\", outside 0 to 4",
         [](Problem& p) { p.activities[2].modes[0].uses[0].amount = 5; }},
        {"activity \"Bake\", puts -1 into a load of \"oven\", outside 0 to 4",
         [](Problem& p) { p.activities[2].modes[0].uses[0].amount = -1; }},
        {"activity \"Bake\", has family number 2 on \"oven\", which has 2",
         [](Problem& p) { p.activities[2].modes[0].uses[0].family = FamilyIndex{2}; }},
        {"activity \"Bake\", has no duration on \"oven\", whose setups cost something",
         [](Problem& p) {
             p.activities[2].modes[0].duration = 0;
             p.activities[2].modes[0].pauses.clear();
         }},
        {"activity \"Bake\", uses \"stock\", a reservoir; it can only flow in or out",
         [](Problem& p) { p.activities[2].modes[0].uses.push_back({ResourceIndex{2}, 1, {}}); }},
        {"activity \"Bake\", flows to \"bench\", which is no reservoir",
         [](Problem& p) { p.activities[2].modes[0].flows[0].resource = ResourceIndex{0}; }},
        {"activity \"Bake\", flows to resource number 4; there are 4",
         [](Problem& p) { p.activities[2].modes[0].flows[0].resource = ResourceIndex{4}; }},
        {"activity \"Roll\", has pauses but no duration",
         [](Problem& p) {
             p.activities[1].modes[0].duration = 0;
             p.activities[1].modes[0].pauses = {{1, 2}};
         }},
        {"activity \"Bake\", pauses until 50 and then from 50; pauses must be in order and apart",
         [](Problem& p) { p.activities[2].modes[0].pauses[1].from = 50; }},
        {"activity \"Bake\", has a span from 70 to 70, which holds no time",
         [](Problem& p) { p.activities[2].modes[0].pauses[1].from = 70; }},
        {"stay \"same hands\" names activity number 3; there are 3",
         [](Problem& p) { p.stays[0].to = ActivityIndex{3}; }},
        {"implication \"no roll without mix\" names activity number -1; there are 3",
         [](Problem& p) { p.implications[0].given = ActivityIndex{-1}; }},
        {"time cost 0 names activity number 3; there are 3",
         [](Problem& p) { p.costs.times[0].activity = ActivityIndex{3}; }},
        {"time cost 0 has a curve without pieces", [](Problem& p) { p.costs.times[0].curve.pieces.clear(); }},
        {"time cost 0 has a piece from 0 after one from 0; they must ascend",
         [](Problem& p) { p.costs.times[0].curve.pieces[1].from = 0; }},
        {"time cost 0 has a piece from", [](Problem& p) { p.costs.times[0].curve.pieces[1].from = kNever + 1; }},
        {"extent cost 0 names a resource and a worker; at most one of them",
         [](Problem& p) { p.costs.extents[0].worker = WorkerIndex{0}; }},
        {"extent cost 0 names resource number 4; there are 4",
         [](Problem& p) { p.costs.extents[0].resource = ResourceIndex{4}; }},
        {"extent cost 1 names worker number 2; there are 2",
         [](Problem& p) { p.costs.extents[1].worker = WorkerIndex{2}; }},
        {"extent cost 1 has a curve without pieces", [](Problem& p) { p.costs.extents[1].curve.pieces.clear(); }},
        {"load cost 0 names resource number 9; there are 4",
         [](Problem& p) { p.costs.loads[0].resource = ResourceIndex{9}; }},
        {"load cost 0 names \"deck\", which is not cumulative",
         [](Problem& p) { p.costs.loads[0].resource = ResourceIndex{1}; }},
        {"load cost 0 has a span from 20 to 20; it must hold some time",
         [](Problem& p) { p.costs.loads[0].span.from = 20; }},
        {"what load cost 0 leaves free is -1, below 0", [](Problem& p) { p.costs.loads[0].above = -1; }},
        {"load cost 0 per tick is -1, below 0", [](Problem& p) { p.costs.loads[0].perTick = -1; }},
        {"work cost 0 names worker number 2; there are 2", [](Problem& p) { p.costs.work[0].worker = WorkerIndex{2}; }},
        {"work cost 0 has a curve without pieces", [](Problem& p) { p.costs.work[0].curve.pieces.clear(); }},
        {"hand-over 0 names activity number 3; there are 3",
         [](Problem& p) { p.costs.handOvers[0].from = ActivityIndex{3}; }},
        {"cost of hand-over 0 is -5, below 0", [](Problem& p) { p.costs.handOvers[0].cost = -5; }},
        {"previous place 0 names activity number -1; there are 3",
         [](Problem& p) { p.costs.before[0].activity = ActivityIndex{-1}; }},
        {"previous place 0 of \"Mix\" names mode 1; there are 1", [](Problem& p) { p.costs.before[0].mode = 1; }},
        {"previous place 0 of \"Mix\" names mode -2; there are 1", [](Problem& p) { p.costs.before[0].mode = -2; }},
        {"previous place 0 has a start of", [](Problem& p) { p.costs.before[0].start = kNever + 1; }},
        {"previous place 0 names worker number 2; there are 2",
         [](Problem& p) { p.costs.before[0].workers[0] = WorkerIndex{2}; }},
        {"cost per tick of previous place 0 is -1, below 0", [](Problem& p) { p.costs.before[0].perTick = -1; }},
        {"cost of another mode of previous place 0 is -1, below 0",
         [](Problem& p) { p.costs.before[0].otherMode = -1; }},
        {"cost per person of previous place 0 is -1, below 0", [](Problem& p) { p.costs.before[0].perPerson = -1; }},
        {"the costs may come to a sum beyond counting, above 536870912",
         [](Problem& p) { p.costs.times[0].curve.pieces[0].perTick = std::numeric_limits<Cost>::min(); }},
        {"lag \"paste rests\" has a length of", [](Problem& p) { p.lags[0].least = kNever + 1; }},
    };
    for (const Case& one : cases) {
        Problem problem = sound();
        one.spoil(problem);
        EXPECT_THAT(faultsIn(problem), ElementsAre(HasSubstr(one.told)));
    }
}

TEST(Faults, AllCostsTogetherComeToNoMoreThanTheKernelCanCount) {
    // Mix ends by 100: at worst 60 + 2 * 50 = 160. Last of stock 100. Length of Ann 100. Bench: 10 ticks, 3 - 1 = 2
    // over at 3 each: 30. Ann's work: 2 * (100 - 40) = 120. Hand-over of nobody (Roll has no people): 0. Before: 88
    // ticks at 1, 20, and 2 people at 4: 116. Setups: one user, dearest 7. In all 160 + 100 + 100 + 60 + 120 + 116 + 7
    // = 663.
    Problem problem = sound();
    problem.activities[1].modes[0].cost = kMostCost - 633;
    EXPECT_THAT(faultsIn(problem), IsEmpty());
    problem.activities[1].modes[0].cost = -(kMostCost - 632); // a gain counts as well
    EXPECT_THAT(faultsIn(problem), ElementsAre(HasSubstr("the costs may come to 536870913, above 536870912")));
}

TEST(Faults, AllAreToldAtOnce) {
    Problem problem = sound();
    problem.horizon = -1;
    problem.activities[1].modes.clear();
    problem.lags[0].to = ActivityIndex{9};
    EXPECT_THAT(faultsIn(problem), ElementsAre(HasSubstr("horizon"), HasSubstr("Roll"), HasSubstr("paste rests")));
}

} // namespace
} // namespace piewright::schedule
