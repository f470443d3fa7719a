// The engine against a general solver: the least horizon that the one finds feasible is the other's least makespan.
#include "schedule/check.h"
#include "schedule/jobshop.h"
#include "schedule/minizinc.h"
#include "schedule/random_problem.h"
#include "schedule/solve.h"

#include <gmock/gmock.h>

namespace piewright::schedule {
namespace {

using testing::IsEmpty;

class AgainstMinizinc : public testing::Test {
  protected:
    void SetUp() override {
        if (!isMinizincThere()) {
            GTEST_SKIP() << "needs the programs minizinc and fzn-gecode (Debian: minizinc, flatzinc)";
        }
    }

    /// True when the other solver came to an end.
    static bool agrees(Problem problem) {
        const MinizincAnswer other = runMinizinc(asMinizinc(problem));
        if (!other.finished) {
            return false;
        }
        if (!other.makespan) {
            EXPECT_EQ(solve(problem, {}).status, Status::Infeasible);
            return true;
        }
        problem.horizon = *other.makespan;
        const Answer answer = solve(problem, {});
        EXPECT_EQ(answer.status, Status::Proven) << "there is a schedule that ends by " << *other.makespan;
        if (answer.schedule) {
            EXPECT_THAT(check(problem, *answer.schedule), IsEmpty());
        }
        if (problem.horizon == 0) {
            return true;
        }
        --problem.horizon;
        EXPECT_EQ(solve(problem, {}).status, Status::Infeasible) << "no schedule ends before " << *other.makespan;
        return true;
    }

    static void agreesOnMany(const Size& size, std::uint64_t firstSeed) {
        int settled = 0;
        constexpr int kMany = 30;
        for (std::uint64_t seed = firstSeed; seed < firstSeed + kMany; ++seed) {
            const Problem problem = randomProblem(seed, size);
            SCOPED_TRACE("seed " + std::to_string(seed));
            if (agrees(problem)) {
                ++settled;
            }
        }
        EXPECT_GE(settled, kMany * 3 / 4);
    }
};

TEST_F(AgainstMinizinc, TheSixBySixJobShopTakes55) {
    const MinizincAnswer other = runMinizinc(asMinizinc(asProblem(ft06(), 70)));
    ASSERT_TRUE(other.finished);
    EXPECT_EQ(other.makespan, 55);
}

TEST_F(AgainstMinizinc, OnCumulativesAndLags) {
    Size size;
    size.activities = 9;
    size.horizon = 50;
    size.resources = 3;
    size.workers = 0;
    size.longest = 7;
    size.lags = 8;
    size.strictness = 0; // nothing reserved: the global constraint
    agreesOnMany(size, 1000);
}

TEST_F(AgainstMinizinc, OnEveryFeature) {
    Size size;
    size.activities = 7;
    size.horizon = 35;
    size.resources = 3;
    size.workers = 4;
    size.longest = 6;
    size.lags = 4;
    size.strictness = 60;
    agreesOnMany(size, 2000);
}

} // namespace
} // namespace piewright::schedule
