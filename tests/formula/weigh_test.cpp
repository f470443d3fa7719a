#include "formula/weigh.h"

#include "formula/formulas.h"

#include <gmock/gmock.h>
#include <numeric>

namespace piewright::formula {
namespace {

using testing::ElementsAre;

std::vector<Mass> weighedOf(const WeighedBatch& batch) {
    std::vector<Mass> masses;
    masses.reserve(batch.lines.size());
    for (const WeighedLine& line : batch.lines) masses.push_back(line.weighed);
    return masses;
}

TEST(Weigh, ScalesTwoFloursThatMakeOneHundredPercent) {
    // 18 kg / 180 % = 100 g a per cent: 7, 3, 5 and 3 kg.
    const WeighedBatch batch = weigh(basePaste(), kilograms(18), grams(5));
    EXPECT_THAT(weighedOf(batch), ElementsAre(kilograms(7), kilograms(3), kilograms(5), kilograms(3)));
    EXPECT_EQ(batch.in, kilograms(18));
    EXPECT_EQ(batch.out, kilograms(18));
    EXPECT_EQ(batch.wanted, kilograms(18));
    EXPECT_EQ(batch.roundingError, Mass{});
}

TEST(Weigh, ScalesWrittenWeights) {
    book::Formula sauce = named("sauce", book::Basis::Weight);
    sauce.lines = {weightLine(StuffId("water"), kilograms(4)), weightLine(StuffId("flour"), grams(400)),
                   weightLine(StuffId("parsley"), grams(100))};
    EXPECT_EQ(writtenInput(sauce), grams(4500));
    // 9 kg is twice what is written.
    EXPECT_THAT(weighedOf(weigh(sauce, kilograms(9), grams(5))), ElementsAre(kilograms(8), grams(800), grams(200)));
}

TEST(Weigh, UndoesLossesLastFirst) {
    book::Formula paste = basePaste();
    paste.losses = {fixedLost("bowl", grams(200)), shareLost("trim", percent(10))};
    // In: 9 kg / 0.9 = 10 kg, and 0.2 kg in the bowl: 10.2 kg.
    EXPECT_EQ(inputFor(paste, kilograms(9)), grams(10'200));
    const WeighedBatch batch = weigh(paste, kilograms(9), milligrams(1));
    EXPECT_EQ(batch.in, grams(10'200));
    ASSERT_EQ(batch.lost.size(), 2U);
    EXPECT_EQ(batch.lost[0].at, "bowl");
    EXPECT_EQ(batch.lost[0].mass, grams(200));
    EXPECT_EQ(batch.lost[1].at, "trim");
    EXPECT_EQ(batch.lost[1].mass, kilograms(1));
    EXPECT_EQ(batch.out, kilograms(9));
}

TEST(Weigh, OrderOfLossesMatters) {
    book::Formula paste = basePaste();
    paste.losses = {shareLost("trim", percent(10)), fixedLost("bowl", grams(200))};
    // In: (9 + 0.2) / 0.9 = 10.2222 kg, not 10.2.
    EXPECT_EQ(inputFor(paste, kilograms(9)), milligrams(10'222'222));
}

TEST(Weigh, EveryBatchLosesItsFixedMass) {
    book::Formula paste = basePaste();
    paste.losses = {fixedLost("bowl", grams(200))};
    EXPECT_EQ(inputFor(paste, kilograms(18), 1), grams(18'200));
    EXPECT_EQ(inputFor(paste, kilograms(18), 3), grams(18'600));
}

TEST(Weigh, NothingNeedsNothing) {
    book::Formula paste = basePaste();
    paste.losses = {fixedLost("bowl", grams(200))};
    EXPECT_EQ(inputFor(paste, Mass{}), Mass{});
    EXPECT_EQ(outputFor(paste, grams(150)), Mass{}); // all of it stays in the bowl
}

TEST(Weigh, RoundsToTheScaleAndTellsTheError) {
    // 1 kg / 180 %: 388.889, 166.667, 277.778, 166.667 g -> 390, 165, 280, 165 g = 1000 g.
    const WeighedBatch batch = weigh(basePaste(), kilograms(1), grams(5));
    EXPECT_THAT(weighedOf(batch), ElementsAre(grams(390), grams(165), grams(280), grams(165)));
    EXPECT_EQ(batch.roundingError, Mass{});
    // 500 g: 194.444, 83.333, 138.889, 83.333 -> 200, 80, 140, 80 g on a scale of 20 g.
    const WeighedBatch coarse = weigh(basePaste(), grams(500), grams(20));
    EXPECT_THAT(weighedOf(coarse), ElementsAre(grams(200), grams(80), grams(140), grams(80)));
    EXPECT_EQ(coarse.in, grams(500));
    // 510 g: 198.333, 85, 141.667, 85 -> 200, 80, 140, 80: 10 g short.
    const WeighedBatch near = weigh(basePaste(), grams(510), grams(20));
    EXPECT_EQ(near.roundingError, grams(-10));
    EXPECT_EQ(near.out, grams(500));
}

TEST(Weigh, NeverRoundsALineToNothing) {
    book::Formula gravy = named("gravy", book::Basis::Weight);
    gravy.lines = {weightLine(StuffId("stock"), kilograms(10)), weightLine(StuffId("salt"), grams(21)),
                   weightLine(StuffId("pepper"), milligrams(4'260)), weightLine(StuffId("mace"), milligrams(30)),
                   weightLine(StuffId("none"), Mass{})};
    const WeighedBatch batch = weigh(gravy, writtenInput(gravy), grams(50));
    // 21 g is under half of 50 g: to the gram; 4.26 g to the tenth; 0.03 g is the least a hand weighs, 0.1 g.
    EXPECT_THAT(weighedOf(batch), ElementsAre(kilograms(10), grams(21), milligrams(4'300), milligrams(100), Mass{}));
    EXPECT_EQ(batch.roundingError, milligrams(40 + 70));
}

TEST(Weigh, BuysMoreThanItPreparesByThePreparationLoss) {
    book::Formula mash = named("mash", book::Basis::Weight);
    mash.lines = {weightLine(StuffId("potato"), kilograms(8), percent(20), "peeled"),
                  weightLine(StuffId("butter"), grams(400))};
    const WeighedBatch batch = weigh(mash, grams(8'400), grams(5));
    EXPECT_EQ(batch.lines[0].weighed, kilograms(8));
    EXPECT_EQ(batch.lines[0].bought, kilograms(10)); // 8 / (1 - 0.2)
    EXPECT_EQ(batch.lines[0].prepName, "peeled");
    EXPECT_EQ(batch.lines[1].bought, batch.lines[1].weighed);
}

TEST(LineMasses, SumExactlyWhateverTheProportions) {
    book::Formula thirds = named("thirds", book::Basis::Weight);
    thirds.lines = {weightLine(StuffId("a"), grams(1)), weightLine(StuffId("b"), grams(1)),
                    weightLine(StuffId("c"), grams(1))};
    // 100 mg in three: 33, 34, 33.
    EXPECT_THAT(lineMasses(thirds, milligrams(100)), ElementsAre(milligrams(33), milligrams(34), milligrams(33)));
}

TEST(Weigh, CommonPracticeNoSource_FifteenSacksOfPotatoes) {
    // Common practice, no source: 15 sacks of 25 kg in a busy day, about 20 % lost in peeling.
    // 375 kg bought, 300 kg into the pans; pans of 30 kg: 10 pans of 30 kg.
    book::Formula boiled = named("boiled-potatoes", book::Basis::Weight);
    boiled.lines = {weightLine(StuffId("potato"), kilograms(20), percent(20), "peeled")};
    book::Book book;
    add(book, boiled);
    const Mass peeled = kilograms(300);
    EXPECT_EQ(boughtFor(book, boiled.id, peeled).at(StuffId("potato")), kilograms(25) * 15);
    const auto pans = split(boiled, peeled, std::nullopt, kilograms(30));
    ASSERT_TRUE(pans.ok());
    EXPECT_EQ(pans->count, 10);
    EXPECT_EQ(weigh(boiled, pans->each, grams(100)).lines[0].bought, grams(37'500)); // a sack and a half a pan
}

} // namespace
} // namespace piewright::formula
