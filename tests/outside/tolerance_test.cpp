#include "outside/tolerance.h"

#include <gtest/gtest.h>
#include <limits>

namespace piewright::outside {
namespace {

bool judged(const char* tolerance, const char* expected, double computed) {
    return within(toleranceIn(tolerance).value(), expected, computed);
}

TEST(Tolerance, AbsoluteIsInclusiveOnBothSides) {
    EXPECT_TRUE(judged("abs:0.5", "25", 25.5));
    EXPECT_TRUE(judged("abs:0.5", "25", 24.5));
    EXPECT_FALSE(judged("abs:0.5", "25", 25.500001));
    EXPECT_TRUE(judged("abs:0.1", "0.2", 0.1 + 0.2)); // 0.30000000000000004
}

TEST(Tolerance, RelativeIsOfTheExpected) {
    EXPECT_TRUE(judged("rel:0.01", "-200", -202));
    EXPECT_FALSE(judged("rel:0.01", "-200", -202.1));
    EXPECT_TRUE(judged("rel:0.01", "0", 0));
    EXPECT_FALSE(judged("rel:0.01", "0", 0.001));
}

TEST(Tolerance, RangeHasBothEndsInside) {
    EXPECT_TRUE(judged("range:25..40", "25..40", 25));
    EXPECT_TRUE(judged("range:25..40", "25..40", 40));
    EXPECT_FALSE(judged("range:25..40", "30", 41));
    EXPECT_TRUE(judged("range:-5..-1", "", -3));
}

TEST(Tolerance, ExactIsTheSameNumberOrTheSameText) {
    EXPECT_TRUE(judged("exact", "26", 26));
    EXPECT_FALSE(judged("exact", "26", 26.001));
    EXPECT_FALSE(judged("exact", "method", 26));
    EXPECT_TRUE(within(toleranceIn("exact").value(), "yes", std::string("yes")));
    EXPECT_FALSE(within(toleranceIn("exact").value(), "yes", std::string("no")));
    EXPECT_FALSE(within(toleranceIn("abs:1").value(), "yes", std::string("yes")));
}

TEST(Tolerance, NothingThatIsNoNumberPasses) {
    for (const char* tolerance : {"abs:1000", "rel:1000", "range:-1000..1000", "exact"}) {
        EXPECT_FALSE(judged(tolerance, "1", std::numeric_limits<double>::quiet_NaN())) << tolerance;
        EXPECT_FALSE(judged(tolerance, "1", std::numeric_limits<double>::infinity())) << tolerance;
    }
}

TEST(Tolerance, OtherTextsAreNone) {
    for (const char* wrong : {"", "abs", "abs:", "abs:-1", "abs:x", "rel:nan", "range:1", "range:2..1", "range:..",
                              "Exact", "exact ", "info:"})
        EXPECT_FALSE(toleranceIn(wrong).has_value()) << wrong;
}

TEST(Tolerance, AbsoluteAndRelativeWantANumber) {
    EXPECT_FALSE(judgeable(*toleranceIn("abs:1"), "20..48"));
    EXPECT_FALSE(judgeable(*toleranceIn("rel:1"), ""));
    EXPECT_FALSE(judgeable(*toleranceIn("exact"), ""));
    EXPECT_TRUE(judgeable(*toleranceIn("exact"), "yes"));
    EXPECT_TRUE(judgeable(*toleranceIn("range:1..2"), "1..2"));
    EXPECT_TRUE(judgeable(*toleranceIn("info"), ""));
}

} // namespace
} // namespace piewright::outside
