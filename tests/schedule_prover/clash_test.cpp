// Clashes told in the user's words: they must clash indeed, and none may be spared.
#include "schedule/core.h"

#include "schedule/random_problem.h"
#include "schedule/state.h"
#include "schedule/twin.h"

#include <gmock/gmock.h>

namespace piewright::schedule {
namespace {

using testing::UnorderedElementsAre;

TEST(Clash, NamesTheOvenAndTheTwoWhoNeedIt) {
    Statement s;
    Mode bake;
    bake.duration = 30;
    bake.uses.push_back({s.machine("oven"), 1, {}});
    const auto pies = s.activity("pies", bake);
    const auto tart = s.activity("tart", bake);
    const auto mash = s.activity("mash", 20);
    s[pies].due = 50;
    s[pies].dueReason = "pies by 50";
    s[tart].due = 50; // 30 + 30 = 60 > 50
    s[tart].dueReason = "tart by 50";
    s[mash].due = 40;
    s[mash].dueReason = "mash by 40";
    s.problem.horizon = 200;
    s.problem.horizonReason = "shop shuts";
    const Clash clash = findClash(s.problem, {});
    EXPECT_TRUE(clash.proved);
    EXPECT_THAT(clash.limits, UnorderedElementsAre("oven", "pies by 50", "tart by 50"));
}

TEST(Clash, NamesThePersonWhoIsAway) {
    Statement s;
    const auto skill = s.skill("crimp");
    s.worker("Ada", {skill}, {{0, 40}});
    Mode crimp;
    crimp.duration = 30;
    crimp.needs.push_back({skill, 1});
    const auto lids = s.activity("lids", crimp);
    s[lids].release = 20; // 20 + 30 = 50 > 40
    s[lids].releaseReason = "lids not before 20";
    s.problem.horizon = 100;
    s.problem.horizonReason = "shop shuts";
    EXPECT_THAT(findClash(s.problem, {}).limits, UnorderedElementsAre("Ada", "lids not before 20"));
}

TEST(Clash, OfLagsIsTheLoop) {
    Statement s;
    const auto a = s.activity("a", 10);
    const auto b = s.activity("b", 10);
    const auto c = s.activity("c", 10);
    s.after(a, b, 5, "b after a");
    s.within(a, b, 3, "b soon after a");
    s.after(b, c, 5, "c after b");
    s.problem.horizon = 500;
    const Clash clash = findClash(s.problem, {});
    EXPECT_TRUE(clash.proved);
    EXPECT_THAT(clash.limits, UnorderedElementsAre("b after a", "b soon after a"));
}

TEST(Clash, IsEmptyWhereThereIsASchedule) {
    Statement s;
    s.activity("a", 10);
    s.problem.horizon = 10;
    const Clash clash = findClash(s.problem, {});
    EXPECT_FALSE(clash.proved);
    EXPECT_TRUE(clash.limits.empty());
}

/// The problem with only some of its named limits on time, and all of its resources and people.
Problem only(Problem problem, const std::vector<std::string>& limits) {
    const auto isIn = [&](const std::string& limit) {
        return limit.empty() || std::find(limits.begin(), limits.end(), limit) != limits.end();
    };
    std::erase_if(problem.lags, [&](const Lag& lag) { return !isIn(lag.reason); });
    for (Activity& activity : problem.activities) {
        if (!isIn(activity.releaseReason)) activity.release = 0;
        if (!isIn(activity.dueReason)) activity.due = kNever;
    }
    for (std::size_t r = 0; r < problem.resources.size(); ++r) {
        if (isIn(problem.resources[r].name)) continue;
        for (Activity& activity : problem.activities) {
            for (Mode& mode : activity.modes) {
                std::erase_if(mode.uses, [&](const Use& use) { return at(use.resource) == r; });
            }
        }
    }
    return problem;
}

TEST(Clash, OfRandomProblemsClashesIndeedAndNoneCanBeSpared) {
    int clashes = 0;
    for (std::uint64_t seed = 1; seed <= 400; ++seed) {
        const Problem problem = randomProblem(seed, {4, 8, 3, 0, 4, 4});
        const TwinAnswer whole = twinSolve(problem, 2'000'000);
        const Clash clash = findClash(problem, {});
        if (!whole.finished) continue;
        ASSERT_EQ(clash.proved, !whole.schedule) << "seed " << seed;
        if (!clash.proved) continue;
        ++clashes;
        const TwinAnswer kept = twinSolve(only(problem, clash.limits), 5'000'000);
        ASSERT_FALSE(kept.schedule) << "seed " << seed;
        for (std::size_t i = 0; i < clash.limits.size(); ++i) {
            std::vector<std::string> fewer = clash.limits;
            fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
            const TwinAnswer spared = twinSolve(only(problem, fewer), 5'000'000);
            ASSERT_TRUE(spared.schedule || !spared.finished) << "seed " << seed << ": " << clash.limits[i];
        }
    }
    EXPECT_GT(clashes, 40);
}

} // namespace
} // namespace piewright::schedule
