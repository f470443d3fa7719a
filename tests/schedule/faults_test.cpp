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
        {"resource \"both\" is both cumulative and a machine",
         [](Problem& p) { p.resources.push_back({"both", Cumulative{}, Machine{}}); }},
        {"resource \"idle\" is neither cumulative nor a machine",
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
        {"activity \"Mix\", uses resource number 7; there are 2",
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
        {"lag \"paste rests\" names activity number 2; there are 2",
         [](Problem& p) { p.lags[0].to = ActivityIndex{2}; }},
        {"lag \"paste rests\" names activity number -1; there are 2",
         [](Problem& p) { p.lags[0].from = ActivityIndex{-1}; }},
        {"lag \"paste rests\" has a length of", [](Problem& p) { p.lags[0].least = kNever + 1; }},
    };
    for (const Case& one : cases) {
        Problem problem = sound();
        one.spoil(problem);
        EXPECT_THAT(faultsIn(problem), ElementsAre(HasSubstr(one.told)));
    }
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
