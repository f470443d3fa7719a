#include "pastry/tin.h"
#include "pastry/tins.h"

#include <gtest/gtest.h>

namespace piewright::pastry {
namespace {

constexpr Density kPaste = Density::ofRaw(1'220'000); // 1.22 g/ml

book::Sheet sheet(Length thickness, Share trim = {}) {
    book::Sheet made;
    made.thickness = thickness;
    made.trim = trim;
    return made;
}

TEST(SheetWeight, IsAreaTimesThicknessTimesDensity) {
    // 0.01 m2 x 3 mm x 1200 kg/m3 = 36 g.
    EXPECT_EQ(sheetWeight(0.01, millimetres(3), Density::ofRaw(1'200'000)), grams(36));
}

TEST(Piece, BaseAndLidOfOneThicknessDifferInWeight) {
    // 19122.4 mm2 and 13273.2 mm2, 3.5 mm, 1.22 g/ml: 81.65 g and 56.68 g.
    const Piece base = basePiece(normalTin(), sheet(micrometres(3'500)), kPaste);
    const Piece lid = lidPiece(normalTin(), sheet(micrometres(3'500)), kPaste);
    EXPECT_NEAR(inGrams(base.onPie), 81.6525, 0.001);
    EXPECT_NEAR(inGrams(lid.onPie), 56.6767, 0.001);
}

TEST(Piece, CommonPracticeNoSource_BaseAndLidRolledAboutEquallyThickWeighDifferently) {
    // Common practice, no source: both about 3 mm; the base is heavier by a good part, not by a hair.
    const Piece base = basePiece(normalTin(), sheet(millimetres(3), percent(8)), kPaste);
    const Piece lid = lidPiece(normalTin(), sheet(micrometres(3'100), percent(8)), kPaste);
    EXPECT_GT(ratio(base.divided, lid.divided), 1.2);
    EXPECT_LT(ratio(base.divided, lid.divided), 2.0);
}

TEST(Piece, TrimIsOfTheDividedWeight) {
    // 56.677 g on the pie at 10 % trim: 62.974 g divided, 6.297 g cut off.
    const Piece lid = lidPiece(normalTin(), sheet(micrometres(3'500), percent(10)), kPaste);
    EXPECT_EQ(lid.onPie + lid.trim, lid.divided);
    EXPECT_NEAR(ratio(lid.trim, lid.divided), 0.1, 1e-5);
    EXPECT_NEAR(inGrams(lid.divided), 62.974, 0.001);
}

TEST(Piece, LidBlankWithoutTrimReachesTheOverhang) {
    const Piece lid = lidPiece(normalTin(), sheet(micrometres(3'500)), kPaste);
    EXPECT_EQ(lid.blankLength, millimetres(130)); // 120 + 2 x 5
    EXPECT_EQ(lid.blankWidth, millimetres(130));
}

TEST(Piece, RoundBaseBlankIsTheDiscOfTheLinedArea) {
    // 2 sqrt(19122.4 / pi) = 156.04 mm.
    const Piece base = basePiece(normalTin(), sheet(micrometres(3'500)), kPaste);
    EXPECT_NEAR(inMillimetres(base.blankLength), 156.04, 0.01);
    EXPECT_EQ(base.blankLength, base.blankWidth);
}

TEST(Piece, TrimmedBlankHoldsWhatIsDivided) {
    // 10 % trim: the blank's area is 1 / 0.9 of the lid's, its sides sqrt of that: 130 x 1.05409 = 137.03 mm.
    const Piece lid = lidPiece(normalTin(), sheet(micrometres(3'500), percent(10)), kPaste);
    EXPECT_NEAR(inMillimetres(lid.blankLength), 137.03, 0.01);
}

TEST(Piece, LongBlankKeepsTheTinsProportions) {
    const book::Tin tin = longTin(book::TinShape::Oval, millimetres(180), millimetres(120), millimetres(8),
                                  millimetres(45), millimetres(5));
    const Piece base = basePiece(tin, sheet(millimetres(3)), kPaste);
    // (180 + 10) : (120 + 10)
    EXPECT_NEAR(ratio(base.blankLength, base.blankWidth), 190.0 / 130.0, 1e-5);
    EXPECT_GT(base.blankLength, millimetres(190));
}

} // namespace
} // namespace piewright::pastry
