// The sheets as text.
#include "print/columns.h"
#include "print/sample_plan.h"
#include "print/sheet.h"
#include "print/weighed.h"
#include "wire/random_plan.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

namespace piewright {
namespace {

using ::testing::HasSubstr;

std::vector<std::string> lines(const std::string& text) {
    std::vector<std::string> all;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) all.push_back(line);
    return all;
}

void fits(const day::Plan& plan, int width) {
    for (const std::string& line : lines(print::asText(plan, {}, width)))
        EXPECT_LE(print::columnsOf(line), static_cast<std::size_t>(width)) << line;
}

TEST(TextSheet, OfTheFridayIsAsItWasLookedAt) {
    const std::string file = std::string(PIEWRIGHT_SOURCE) + "/tests/print/data/friday.txt";
    const std::string text = print::asText(testing::fridayPlan());
    if (std::getenv("GOLDEN_UPDATE") != nullptr) std::ofstream(file) << text;
    std::ifstream stream(file);
    std::ostringstream golden;
    golden << stream.rdbuf();
    EXPECT_EQ(text, golden.str()) << "GOLDEN_UPDATE=1 rewrites the file; look at the difference before you commit it";
}

TEST(TextSheet, KeepsToItsWidth) {
    for (const int width : {20, 40, 60, 72, 80, 100, 132, 200}) {
        SCOPED_TRACE(width);
        fits(testing::fridayPlan(), width);
        fits(testing::emptyPlan(), width);
        fits(testing::oneHandPlan(), width);
        fits(testing::crowdedPlan(), width);
    }
}

TEST(TextSheet, OfAnyPlanKeepsToItsWidth) {
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        SCOPED_TRACE(seed);
        fits(testing::randomPlan(seed), 80);
        fits(testing::randomPlan(seed), 33);
    }
}

TEST(TextSheet, ATinyOrNegativeWidthIsTakenAsTwenty) {
    EXPECT_EQ(print::asText(testing::oneHandPlan(), {}, -5), print::asText(testing::oneHandPlan(), {}, 20));
}

TEST(TextSheet, HasTheSheetsAskedFor) {
    const day::Plan plan = testing::fridayPlan();
    const std::string ovens = print::asText(plan, {false, false, true});
    EXPECT_THAT(ovens, HasSubstr("Oven A, deck 1"));
    EXPECT_THAT(ovens, HasSubstr("Friday 27 November 2026"));
    EXPECT_THAT(ovens, ::testing::Not(HasSubstr("Tasks by time")));
    EXPECT_THAT(print::asText(plan, {false, true, false}), HasSubstr("Contains: cereals containing gluten (wheat)"));
}

TEST(TextSheet, OfWhatIsWeighedOutHasPiecesCardsAndNeeds) {
    const day::Plan plan = testing::fridayPlan();
    const std::string text =
        print::asText(day::WeighedOut{"432 Beef and onion pie", plan.pieces, plan.cards, plan.needed}, 100);
    EXPECT_THAT(text, ::testing::StartsWith("432 Beef and onion pie\n"));
    for (const char* wanted : {"Heads, pieces and gauge", "11.8 kg  Plain flour", "4 × sack of 25 kg"})
        EXPECT_THAT(text, HasSubstr(wanted));
}

TEST(TextSheet, SaysWhenTheZoneIsNotKnown) {
    day::Plan plan = testing::oneHandPlan();
    plan.zone = "Europe/Harrowmouth";
    EXPECT_THAT(print::asText(plan),
                HasSubstr("! The time zone Europe/Harrowmouth is not known here: all times are in UTC."));
}

TEST(TextSheet, LetsNoControlCharacterThrough) {
    day::Plan plan = testing::oneHandPlan();
    plan.house = "Quay\x1B[2J\r\nPies\xFF";
    plan.tasks[0].what = "We\x07igh";
    const std::string text = print::asText(plan);
    for (const char c : text) EXPECT_TRUE(c == '\n' || static_cast<unsigned char>(c) >= 0x20) << static_cast<int>(c);
    EXPECT_THAT(text, HasSubstr("Quay [2J Pies\uFFFD"));
}

TEST(TextSheet, DoesNotClaimThatFoodIsSafe) {
    for (const day::Plan& plan : {testing::fridayPlan(), testing::emptyPlan()})
        EXPECT_THAT(print::asText(plan), HasSubstr("Plan made from book and sales; probe the food."));
    EXPECT_THAT(print::asText(testing::fridayPlan()), HasSubstr("A plan does not make food safe."));
}

} // namespace
} // namespace piewright
