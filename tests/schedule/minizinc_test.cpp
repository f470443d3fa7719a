// The engine and its complete side against a general solver: the same least cost.
#include "schedule/check.h"
#include "schedule/jobshop.h"
#include "schedule/minizinc.h"
#include "schedule/prover.h"
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
    static bool agrees(const Problem& problem) {
        const MinizincAnswer other = runMinizinc(asMinizinc(problem));
        if (!other.finished) {
            return false;
        }
        const Answer answer = solve(problem, {});
        Prover prover(problem);
        const Verdict verdict = prover.improve({});
        if (!other.value) {
            EXPECT_EQ(answer.status, Status::Infeasible);
            EXPECT_EQ(verdict, Verdict::Refuted);
            return true;
        }
        EXPECT_EQ(verdict, Verdict::Satisfied);
        EXPECT_EQ(prover.value(), *other.value);
        EXPECT_EQ(answer.status, Status::Proven);
        EXPECT_EQ(answer.value, *other.value);
        if (answer.schedule) {
            EXPECT_THAT(check(problem, *answer.schedule), IsEmpty());
        }
        return true;
    }

    static void agreesOnMany(const Size& size, std::uint64_t firstSeed) {
        int settled = 0;
        constexpr int kMany = 15;
        for (std::uint64_t seed = firstSeed; seed < firstSeed + kMany; ++seed) {
            Problem problem = randomProblem(seed, size);
            if ((size.features & ~unsigned{kEveryLimit}) == 0) {
                problem.costs = makespan();
            }
            SCOPED_TRACE("seed " + std::to_string(seed));
            if (agrees(problem)) {
                ++settled;
            }
        }
        EXPECT_GE(settled, kMany * 3 / 4);
    }
};

TEST_F(AgainstMinizinc, TheSixBySixJobShopTakes55) {
    Problem problem = asProblem(ft06(), 70);
    problem.costs = makespan();
    const MinizincAnswer other = runMinizinc(asMinizinc(problem));
    ASSERT_TRUE(other.finished);
    EXPECT_EQ(other.value, 55);
}

TEST_F(AgainstMinizinc, OnCumulativesAndLags) {
    Size size;
    size.activities = 8;
    size.horizon = 40;
    size.resources = 3;
    size.workers = 0;
    size.longest = 7;
    size.lags = 8;
    size.strictness = 0; // nothing reserved: the global constraint
    agreesOnMany(size, 1000);
}

TEST_F(AgainstMinizinc, OnMachinesAndPeople) {
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

TEST_F(AgainstMinizinc, OnLoadsStocksPausesAndWhatMayBeLeftOut) {
    Size size;
    size.activities = 5;
    size.horizon = 18;
    size.resources = 3;
    size.workers = 3;
    size.longest = 5;
    size.lags = 3;
    size.strictness = 40;
    size.features = kEveryLimit;
    agreesOnMany(size, 3000);
}

TEST_F(AgainstMinizinc, OnEveryCostButThatOfSetups) {
    Size size;
    size.activities = 4;
    size.horizon = 14;
    size.resources = 2;
    size.workers = 3;
    size.longest = 5;
    size.lags = 2;
    size.strictness = 40;
    size.features = kEveryFeature & ~unsigned{kSetupCosts};
    agreesOnMany(size, 4000);
}

} // namespace
} // namespace piewright::schedule
