#include "pastry/heads.h"

#include <gmock/gmock.h>

namespace piewright::pastry {
namespace {

using testing::AllOf;
using testing::HasSubstr;

book::Gear divider(int pieces) {
    book::Gear gear;
    gear.name = "Hand divider";
    gear.kind = book::GearKind::Divider;
    gear.pieces = pieces;
    return gear;
}

TEST(Heads, CommonPracticeNoSource_TwoThousandPiesFromHeadsOfSeventyTwo) {
    // Common practice, no source: a head of 72 pieces, about 2,000 pies a day. 28 x 72 = 2016, 16 over; base and lid
    // alike.
    const auto base = headsFor(2'000, grams(82), divider(72));
    const auto lid = headsFor(2'000, grams(57), divider(72));
    ASSERT_TRUE(base.ok() && lid.ok());
    EXPECT_EQ(base->heads, 28);
    EXPECT_EQ(base->surplus, 16);
    EXPECT_EQ(lid->heads, 28);
    EXPECT_EQ(lid->surplus, 16);
    EXPECT_EQ(base->headWeight, grams(5'904)); // 72 x 82
}

TEST(Heads, WholeHeadsLeaveNothingOver) {
    const auto heads = headsFor(144, grams(80), divider(72));
    ASSERT_TRUE(heads.ok());
    EXPECT_EQ(heads->heads, 2);
    EXPECT_EQ(heads->surplus, 0);
    EXPECT_EQ(headsFor(145, grams(80), divider(72))->heads, 3);
    EXPECT_EQ(headsFor(145, grams(80), divider(72))->surplus, 71);
}

TEST(Heads, NoPiecesNoHeads) {
    const auto heads = headsFor(0, grams(80), divider(36));
    ASSERT_TRUE(heads.ok());
    EXPECT_EQ(heads->heads, 0);
    EXPECT_EQ(heads->surplus, 0);
}

TEST(Heads, OutsideTheDividerNamesThePiecesThatFit) {
    book::Gear gear = divider(30);
    gear.least = kilograms(1);
    gear.most = kilograms(3);
    EXPECT_TRUE(headsFor(30, grams(100), gear).ok()); // 3 kg, just inside
    const auto heavy = headsFor(30, grams(110), gear);
    ASSERT_FALSE(heavy.ok());
    // Pieces of 1000 / 30 = 33.33 g, up to a milligram, to 100 g.
    EXPECT_THAT(toText(heavy.problems().findings),
                AllOf(HasSubstr("Hand divider"), HasSubstr("3.3 kg"), HasSubstr("at most 3 kg"), HasSubstr("33.3"),
                      HasSubstr("100 g")));
    EXPECT_FALSE(headsFor(30, grams(33), gear).ok());
    EXPECT_TRUE(headsFor(30, milligrams(33'334), gear).ok());
}

TEST(Heads, ADividerWithoutPiecesIsRefused) { EXPECT_FALSE(headsFor(30, grams(80), divider(0)).ok()); }

} // namespace
} // namespace piewright::pastry
