#include "formula/formulas.h"
#include "formula/weigh.h"

#include <gmock/gmock.h>

namespace piewright::formula {
namespace {

using testing::AllOf;
using testing::HasSubstr;

std::string said(const Result<BatchSplit>& result) { return toText(result.problems().findings); }

TEST(Split, TakesTheFewestEqualBatches) {
    // 50 kg in a mixer of at most 20 kg: 3 of 16.667 kg, never 20 + 20 + 10.
    const auto mixes = split(basePaste(), kilograms(50), kilograms(5), kilograms(20));
    ASSERT_TRUE(mixes.ok());
    EXPECT_EQ(mixes->count, 3);
    EXPECT_EQ(mixes->each, milligrams(16'666'667));
}

TEST(Split, NeverLeavesATinyLastMix) {
    // One gram over two full mixes: three equal ones.
    const auto mixes = split(basePaste(), grams(40'001), kilograms(5), kilograms(20));
    ASSERT_TRUE(mixes.ok());
    EXPECT_EQ(mixes->count, 3);
    EXPECT_EQ(mixes->each, grams(13'333) + milligrams(667));
}

TEST(Split, FullBatchesStayFull) {
    const auto mixes = split(basePaste(), kilograms(40), kilograms(5), kilograms(20));
    ASSERT_TRUE(mixes.ok());
    EXPECT_EQ(mixes->count, 2);
    EXPECT_EQ(mixes->each, kilograms(20));
}

TEST(Split, BoundsWhatGoesInNotWhatComesOut) {
    book::Formula stew = named("stew", book::Basis::Weight);
    stew.lines = {weightLine(StuffId("beef"), kilograms(10))};
    stew.losses = {shareLost("cooking", percent(30))};
    // 28 kg out is 40 kg in: one kettle of 40 kg takes it, one of 39 kg does not.
    EXPECT_EQ(split(stew, kilograms(28), std::nullopt, kilograms(40))->count, 1);
    EXPECT_EQ(split(stew, kilograms(28), std::nullopt, kilograms(39))->count, 2);
}

TEST(Split, CountsTheFixedLossOfEveryBatch) {
    book::Formula paste = basePaste();
    paste.losses = {fixedLost("bowl", grams(500))};
    // 39 kg: 2 x (19.5 + 0.5) = 2 full mixes of 20 kg; 39.1 kg needs a third.
    EXPECT_EQ(split(paste, kilograms(39), std::nullopt, kilograms(20))->count, 2);
    EXPECT_EQ(split(paste, grams(39'100), std::nullopt, kilograms(20))->count, 3);
}

TEST(Split, TooLittleForAVesselMakesItsLeast) {
    book::Formula paste = basePaste();
    paste.losses = {shareLost("trim", percent(10))};
    // 2 kg asked for, the mixer takes no less than 5 kg in: 4.5 kg come out, 2.5 kg are surplus.
    const auto mixes = split(paste, kilograms(2), kilograms(5), kilograms(20));
    ASSERT_TRUE(mixes.ok());
    EXPECT_EQ(mixes->count, 1);
    EXPECT_EQ(mixes->each, grams(4'500));
}

TEST(Split, NamesTheGapThatNoEqualBatchesFit) {
    // Least 15, most 20: 21 kg is over one batch and under two (2 x 10.5).
    const auto mixes = split(basePaste(), kilograms(21), kilograms(15), kilograms(20));
    ASSERT_FALSE(mixes.ok());
    EXPECT_EQ(mixes.problems().fault, Fault::Input);
    EXPECT_THAT(said(mixes), AllOf(HasSubstr("base-paste"), HasSubstr("1 batch of 21 kg"), HasSubstr("most of 20 kg"),
                                   HasSubstr("2 batches of 10.5 kg"), HasSubstr("least of 15 kg"),
                                   HasSubstr("at most 20 kg or at least 30 kg")));
}

TEST(Split, NextThatSplitsLeavesTheGapUpwards) {
    EXPECT_EQ(nextThatSplits(basePaste(), kilograms(21), kilograms(15), kilograms(20)), kilograms(30));
    EXPECT_EQ(nextThatSplits(basePaste(), kilograms(30), kilograms(15), kilograms(20)), kilograms(30));
    EXPECT_EQ(nextThatSplits(basePaste(), kilograms(2), kilograms(15), kilograms(20)), kilograms(2));
    EXPECT_EQ(nextThatSplits(basePaste(), kilograms(21), std::nullopt, std::nullopt), kilograms(21));
}

TEST(Split, NothingIsNoBatch) {
    const auto mixes = split(basePaste(), Mass{}, kilograms(5), kilograms(20));
    ASSERT_TRUE(mixes.ok());
    EXPECT_EQ(mixes->count, 0);
}

TEST(Split, WithoutAMostOneBatchTakesAll) {
    EXPECT_EQ(split(basePaste(), kilograms(900), kilograms(5), std::nullopt)->count, 1);
}

TEST(Split, RefusesAVesselThatTheFixedLossFills) {
    book::Formula paste = basePaste();
    paste.losses = {fixedLost("bowl", kilograms(2))};
    const auto mixes = split(paste, kilograms(1), std::nullopt, kilograms(2));
    ASSERT_FALSE(mixes.ok());
    EXPECT_THAT(said(mixes), HasSubstr("all lost"));
}

TEST(Split, RefusesMoreBatchesThanADayCouldHold) {
    const auto mixes = split(basePaste(), kilograms(1'000'000), std::nullopt, grams(1));
    ASSERT_FALSE(mixes.ok());
    EXPECT_THAT(said(mixes), HasSubstr("more than 10000 batches"));
}

TEST(Split, RefusesALeastOverTheMost) {
    const auto mixes = split(basePaste(), kilograms(10), kilograms(9), kilograms(8));
    ASSERT_FALSE(mixes.ok());
    EXPECT_THAT(said(mixes), HasSubstr("over its most"));
}

} // namespace
} // namespace piewright::formula
