#include "schedule/generation.h"

#include "schedule/check.h"
#include "schedule_lists/random_project.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

namespace piewright::schedule {
namespace {

List inOrder(const Project& project) {
    List list(project.size);
    std::iota(list.begin(), list.end(), Item{0});
    std::sort(list.begin(), list.end(), [&](Item a, Item b) { return project.rank[a] < project.rank[b]; });
    return list;
}

Problem twoOnOneMachine() {
    Problem problem;
    problem.horizon = 100;
    problem.resources.push_back({"oven", {}, Machine{{}, {}, {{10, 20}}}});
    for (const Tick duration : {6, 5}) {
        problem.activities.push_back({"bake", {{duration, {{ResourceIndex{0}, 1, {}}}, {}, {}}}, 0, kNever, {}, {}});
    }
    return problem;
}

TEST(Generation, GoesRoundATimeAtWhichTheMachineIsAway) {
    const Problem problem = twoOnOneMachine();
    const auto project = asProject(problem);
    ASSERT_TRUE(project);
    Generator generator(*project);
    Plan plan;
    plan.ways.assign(2, 0);
    ASSERT_TRUE(generator.serial(List{0, 1}, 0, project->horizon, plan));
    // 6 ticks fit before 10, 5 more do not (6 + 5 > 10): they begin at 20.
    EXPECT_EQ(plan.starts, (std::vector<Tick>{0, 20}));
    EXPECT_EQ(plan.end, 25);
    ASSERT_TRUE(generator.parallel(std::vector<double>{0, 1}, plan));
    EXPECT_EQ(plan.starts, (std::vector<Tick>{0, 20}));
}

TEST(Generation, TakesOutWhatAGreatestLagHoldsBack) {
    // B starts at most 1 after A starts, but its machine is away until 20: A, placed first at 0, must move to 19.
    Problem problem;
    problem.horizon = 100;
    problem.resources.push_back({"oven", {}, Machine{{}, {}, {{0, 20}}}});
    problem.activities.push_back({"A", {{2, {}, {}, {}}}, 0, kNever, {}, {}});
    problem.activities.push_back({"B", {{3, {{ResourceIndex{0}, 1, {}}}, {}, {}}}, 0, kNever, {}, {}});
    problem.lags.push_back({ActivityIndex{0}, Point::Start, ActivityIndex{1}, Point::Start, 0, ""});
    problem.lags.push_back({ActivityIndex{1}, Point::Start, ActivityIndex{0}, Point::Start, -1, ""});
    const auto project = asProject(problem);
    ASSERT_TRUE(project);
    Generator generator(*project);
    Plan plan;
    plan.ways.assign(2, 0);
    ASSERT_TRUE(generator.serial(List{0, 1}, 0, project->horizon, plan));
    EXPECT_EQ(plan.starts, (std::vector<Tick>{19, 20}));
}

TEST(Generation, ContradictoryLagsAreNoProject) {
    Problem problem = twoOnOneMachine();
    problem.lags.push_back({ActivityIndex{0}, Point::Start, ActivityIndex{1}, Point::Start, 5, ""});
    problem.lags.push_back({ActivityIndex{1}, Point::Start, ActivityIndex{0}, Point::Start, -4, ""});
    EXPECT_FALSE(asProject(problem));
}

TEST(Generation, TimesAreDividedByWhatTheyHaveInCommon) {
    Problem problem = twoOnOneMachine();
    problem.activities[0].modes[0].duration = 10;
    const auto project = asProject(problem); // 10, 5 and 10 to 20
    ASSERT_TRUE(project);
    EXPECT_EQ(project->scale, 5);
    EXPECT_EQ(project->horizon, 20);
    Generator generator(*project);
    Plan plan;
    plan.ways.assign(2, 0);
    ASSERT_TRUE(generator.serial(List{0, 1}, 0, project->horizon, plan));
    EXPECT_TRUE(check(problem, asSchedule(problem, *project, plan)).empty());
    EXPECT_EQ(asSchedule(problem, *project, plan).placed[1].start, 20);
}

TEST(Generation, PeopleAreMovedBetweenNeedsUntilAllAreFilled) {
    // One does both, one only pastes. "Paste" asked first must not keep the one who alone does lids.
    Problem problem;
    problem.horizon = 10;
    problem.skills = {"paste", "lids"};
    problem.workers.push_back({"both", {SkillIndex{0}, SkillIndex{1}}, {{0, 10}}});
    problem.workers.push_back({"paste only", {SkillIndex{0}}, {{0, 10}}});
    problem.activities.push_back({"pie", {{3, {}, {{SkillIndex{0}, 1}, {SkillIndex{1}, 1}}, {}}}, 0, kNever, {}, {}});
    const auto project = asProject(problem);
    ASSERT_TRUE(project);
    People crew;
    People all;
    all.add(0);
    all.add(1);
    ASSERT_TRUE(choosePeople(*project, project->ways[0][0], all, crew));
    EXPECT_EQ(crew.count(), 2);
    EXPECT_EQ(inPlaces(*project, project->ways[0][0], crew, problem.activities[0].modes[0]),
              (std::vector<WorkerIndex>{WorkerIndex{1}, WorkerIndex{0}}));
    People alone;
    alone.add(0);
    EXPECT_FALSE(choosePeople(*project, project->ways[0][0], alone, crew));
}

TEST(Generation, ASerialAndAParallelScheduleKeepEveryLimit) {
    int built = 0;
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const Problem problem = randomProject(seed, {false, seed % 2 == 0, false, 12});
        const auto project = asProject(problem);
        if (!project) continue;
        Generator generator(*project);
        Plan plan;
        plan.ways.assign(project->size, 0);
        if (generator.serial(inOrder(*project), 0, project->horizon, plan)) {
            ++built;
            const auto violations = check(problem, asSchedule(problem, *project, plan));
            EXPECT_TRUE(violations.empty()) << violations.front().what;
        }
        if (generator.parallel(std::vector<double>(project->size, 0.0), plan)) {
            const auto violations = check(problem, asSchedule(problem, *project, plan));
            EXPECT_TRUE(violations.empty()) << violations.front().what;
        }
    }
    EXPECT_GT(built, 80);
}

TEST(Generation, AMirroredProjectIsTheSameWithTimeRunningBackwards) {
    for (const bool greatest : {false, true}) {
        for (std::uint64_t seed = 1; seed <= 60; ++seed) {
            SCOPED_TRACE("seed " + std::to_string(seed));
            const Problem problem = randomProject(seed, {greatest, true, false, 8});
            const auto project = asProject(problem);
            if (!project) continue;
            const Project back = mirrored(*project);
            Generator generator(back);
            Plan turned;
            turned.ways.assign(project->size, 0);
            if (!generator.serial(inOrder(back), 0, back.horizon, turned)) continue;
            Plan plan = turned;
            for (std::size_t a = 0; a < project->size; ++a) {
                plan.starts[a] = project->horizon - turned.starts[a] - project->ways[a].front().duration;
            }
            const auto violations = check(problem, asSchedule(problem, *project, plan));
            EXPECT_TRUE(violations.empty()) << violations.front().what;
        }
    }
}

} // namespace
} // namespace piewright::schedule
