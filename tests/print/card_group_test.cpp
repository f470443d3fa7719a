// Which cards may share one column of names.
#include "print/paper_sheet.h"

#include <gtest/gtest.h>

namespace piewright::print {
namespace {

day::Plan threeOfMash() {
    day::WeighCard card;
    card.formula = "Mash";
    card.lines = {{"Potatoes", grams(20'000), {}, ""}, {"Milk", grams(1'600), {}, ""}};
    card.allergens = {"milk"};
    day::Plan plan;
    plan.cards.assign(3, card);
    return plan;
}

TEST(CardGroups, AreOfThreeOrMoreAlike) {
    day::Plan plan = threeOfMash();
    ASSERT_EQ(alikeCards(plan).size(), 1U);
    EXPECT_EQ(alikeCards(plan)[0].size(), 3U);
    plan.cards.pop_back();
    EXPECT_TRUE(alikeCards(plan).empty());
}

TEST(CardGroups, LeaveOutACardWhoseWeightsWouldStandBesideAnotherName) {
    day::Plan plan = threeOfMash();
    std::swap(plan.cards[1].lines[0], plan.cards[1].lines[1]);
    EXPECT_TRUE(alikeCards(plan).empty());
}

TEST(CardGroups, LeaveOutACardWithOtherAllergens) {
    day::Plan plan = threeOfMash();
    plan.cards[2].allergens = {"milk", "celery"};
    EXPECT_TRUE(alikeCards(plan).empty());
}

TEST(CardGroups, LeaveOutWhatMustHaveItsOwnTemperature) {
    day::Plan plan = threeOfMash();
    for (day::WeighCard& card : plan.cards) card.lines[1].at = celsius(70);
    EXPECT_TRUE(alikeCards(plan).empty());
}

} // namespace
} // namespace piewright::print
