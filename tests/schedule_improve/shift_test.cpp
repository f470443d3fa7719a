// The pass over times alone, against dynamic programming over all times of an order that is given.
#include "schedule/shift.h"

#include "schedule/check.h"
#include "schedule/cost.h"
#include "schedule/state.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <random>
#include <vector>

namespace piewright::schedule {
namespace {

/// A chain of activities, each with a convex cost of its end, at least and perhaps at most so long after the one
/// before.
struct Chain {
    Statement s;
    std::vector<Tick> durations, least, most;
    Tick horizon = 0;
};

Chain drawChain(std::mt19937_64& random) {
    const auto draw = [&](int from, int to) {
        return from + static_cast<int>(random() % static_cast<std::uint64_t>(to - from + 1));
    };
    Chain chain;
    const int count = draw(1, 8);
    chain.horizon = 12 * count;
    chain.s.problem.horizon = chain.horizon;
    for (int i = 0; i < count; ++i) {
        chain.durations.push_back(draw(1, 5));
        const ActivityIndex activity = chain.s.activity("link " + std::to_string(i), chain.durations.back());
        const Tick from = draw(0, chain.horizon);
        const Tick to = from + draw(0, 4);
        const Cost early = draw(0, 5);
        // 0 from `from` to `to`, dearer the farther away.
        chain.s.problem.costs.times.push_back(
            {activity, Point::End, {{{0, early * from, -early}, {from, 0, 0}, {to, 0, draw(0, 6)}}}});
        chain.least.push_back(draw(0, 2));
        chain.most.push_back(draw(0, 2) == 0 ? chain.least.back() + draw(0, 4) : chain.horizon);
        if (i == 0) continue;
        const auto before = static_cast<ActivityIndex>(i - 1);
        chain.s.after(before, activity, chain.least.back());
        if (chain.most.back() < chain.horizon) chain.s.within(before, activity, chain.most.back());
    }
    return chain;
}

/// The least that the chain can cost: by activity and end, in the order of the chain.
Cost leastCost(const Chain& chain) {
    constexpr Cost kNone = Cost{1} << 40;
    const auto horizon = static_cast<std::size_t>(chain.horizon);
    std::vector<Cost> best;
    for (std::size_t i = 0; i < chain.durations.size(); ++i) {
        std::vector<Cost> next(horizon + 1, kNone);
        for (Tick end = chain.durations[i]; end <= chain.horizon; ++end) {
            Cost before = i == 0 ? 0 : kNone;
            for (Tick past = 0; i > 0 && past <= chain.horizon; ++past) {
                const Tick gap = end - chain.durations[i] - past;
                if (gap >= chain.least[i] && gap <= chain.most[i])
                    before = std::min(before, best[static_cast<std::size_t>(past)]);
            }
            if (before < kNone) {
                next[static_cast<std::size_t>(end)] = before + valueOf(chain.s.problem.costs.times[i].curve, end);
            }
        }
        best = std::move(next);
    }
    return *std::min_element(best.begin(), best.end());
}

RC_GTEST_PROP(PropertyOfShift, FindsTheBestTimesOfAGivenOrderWhereCostsAreConvex, ()) {
    std::mt19937_64 random(*rc::gen::inRange<std::uint64_t>(0, 1'000'000));
    const Chain chain = drawChain(random);
    const Problem& problem = chain.s.problem;
    const Model model(problem);
    RC_ASSERT(!model.hopeless);
    Draft draft(model);
    for (std::size_t u = 0; u < model.units.size(); ++u) RC_ASSERT(draft.putEarliest(u));
    Shift shift(model);
    shift.run(draft);
    const Schedule schedule{draft.board().placed()};
    RC_ASSERT(check(problem, schedule).empty());
    RC_ASSERT(draft.total() == costOf(problem, schedule));
    RC_ASSERT(draft.total() == leastCost(chain));
}

// One person, paid 4 a tick from first to last, does two things of 5: one wants to end at 20 (1 a tick either way), the
// other may be at any time. Side by side: 10 x 4 = 40, and nothing for the times. Apart as built: 0-5 and 15-20.
TEST(Shift, BringsWhatIsPaidForTogether) {
    Statement s;
    s.problem.horizon = 40;
    const SkillIndex any = s.skill("any");
    const WorkerIndex ann = s.worker("Ann", {any}, {{0, 40}});
    const ActivityIndex one = s.activity("one", Mode{5, {}, {{any, 1}}, {}});
    const ActivityIndex other = s.activity("other", Mode{5, {}, {{any, 1}}, {}});
    s.problem.costs.extents.push_back({ExtentCost::Of::Length, {}, ann, {{{0, 0, 4}}}});
    s.problem.costs.times.push_back({other, Point::End, {{{0, 20, -1}, {20, 0, 1}}}});
    const Model model(s.problem);
    Draft draft(model);
    const std::vector<Placed> first{{0, 5, 0, {ann}}};
    const std::vector<Placed> second{{15, 20, 0, {ann}}};
    ASSERT_TRUE(draft.put(model.unitOf[at(one)], first));
    ASSERT_TRUE(draft.put(model.unitOf[at(other)], second));
    EXPECT_EQ(draft.total(), 80);
    EXPECT_TRUE(Shift(model).run(draft));
    EXPECT_EQ(draft.total(), 40);
    EXPECT_EQ(draft.board().placed(at(one)).start, 10);
    EXPECT_EQ(draft.board().placed(at(other)).end, 20);
}

} // namespace
} // namespace piewright::schedule
