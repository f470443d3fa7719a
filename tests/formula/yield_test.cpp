#include "formula/yield.h"

#include "formula/formulas.h"

#include <gtest/gtest.h>

namespace piewright::formula {
namespace {

TEST(Kept, IsTheRatioOfWhatStaysInTheFood) {
    // USDA SR28 beef chuck for stew: protein 21.75 g raw, 32.41 g braised (NDB 23093, 23090): 67.1 %.
    EXPECT_NEAR(asFraction(keptInCooking(21.75, 32.41)), 0.671089, 1e-6);
    EXPECT_EQ(keptInCooking(1, 1), kWhole);
}

TEST(ShareOfInput, IsOfAllThatGoesIn) {
    // Bloom test: 7.5 g gelatine in 105 g water is 6.667 % w/w.
    book::Formula jelly = named("jelly", book::Basis::Weight);
    jelly.lines = {weightLine(StuffId("gelatine"), milligrams(7'500)), weightLine(StuffId("water"), grams(105))};
    EXPECT_EQ(shareOfInput(jelly, StuffId("gelatine")), Share::ofRaw(66'667));
}

TEST(ShareOfInput, OfAPasteIsNotItsBakersPercent) {
    // Suet is 50 % of the flour and 50 / 180 of the paste.
    EXPECT_EQ(shareOfInput(basePaste(), StuffId("suet")), Share::ofRaw(277'778));
}

TEST(ShareOfInput, CountsAllLinesOfOneStuff) {
    book::Formula mash = named("mash", book::Basis::Weight);
    mash.lines = {weightLine(StuffId("milk"), grams(20)), weightLine(StuffId("potato"), grams(60)),
                  weightLine(StuffId("milk"), grams(20))};
    EXPECT_EQ(shareOfInput(mash, StuffId("milk")), percent(40));
    EXPECT_EQ(shareOfInput(mash, FormulaId("milk")), Share{});
}

} // namespace
} // namespace piewright::formula
