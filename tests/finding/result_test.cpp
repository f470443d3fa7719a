#include "finding/result.h"

#include <gtest/gtest.h>
#include <memory>

namespace piewright {
namespace {

Result<int> half(int n) {
    if (n % 2 != 0) return Problems::one(Fault::Input, std::to_string(n) + " is odd", "an even number");
    return n / 2;
}

TEST(Result, HoldsAValueOrTheReasons) {
    const auto good = half(6);
    EXPECT_TRUE(good.ok());
    EXPECT_TRUE(static_cast<bool>(good));
    EXPECT_EQ(*good, 3);
    const auto bad = half(7);
    EXPECT_FALSE(bad.ok());
    EXPECT_EQ(bad.problems().fault, Fault::Input);
    ASSERT_EQ(bad.problems().findings.size(), 1U);
    EXPECT_EQ(toText(bad.problems().findings[0]), "7 is odd; want an even number");
}

TEST(Result, GivesUpItsValueByMove) {
    Result<std::unique_ptr<int>> result(std::make_unique<int>(5));
    ASSERT_TRUE(result.ok());
    const std::unique_ptr<int> taken = std::move(result).value();
    EXPECT_EQ(*taken, 5);
}

TEST(Result, MayBeChangedInPlace) {
    auto result = half(6);
    *result += 1;
    EXPECT_EQ(result.value(), 4);
}

TEST(Fault, ValuesAreExitCodes) {
    EXPECT_EQ(static_cast<int>(Fault::Ours), 1);
    EXPECT_EQ(static_cast<int>(Fault::Input), 2);
    EXPECT_EQ(static_cast<int>(Fault::World), 3);
}

TEST(Problems, OneTakesAPlace) {
    const Problems problems = Problems::one(Fault::World, "disk full", {}, {"plan.json", 0, 0, {}});
    EXPECT_EQ(toText(problems.findings), "plan.json: disk full\n");
}

} // namespace
} // namespace piewright
