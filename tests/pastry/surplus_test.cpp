#include "pastry/heads.h"

#include <gmock/gmock.h>

namespace piewright::pastry {
namespace {

using testing::HasSubstr;

const FormulaId kBase("base-paste");
const FormulaId kLid("lid-paste");
constexpr Seconds kTomorrow = std::chrono::hours(18);

/// Base paste takes a tenth of its own and of lid paste back; lid paste takes nothing.
book::Book pastes(std::optional<Seconds> keeps) {
    book::Book book;
    book::Formula base;
    base.id = kBase;
    base.keeps = keeps;
    base.reworkMost = percent(10);
    base.reworkFrom = kLid;
    book::Formula lid;
    lid.id = kLid;
    lid.keeps = keeps;
    book.formulas = {{kBase, base}, {kLid, lid}};
    return book;
}

TEST(Surplus, IsKeptWhenThePasteKeepsLongEnough) {
    const auto goes = whereSurplusGoes(pastes(std::chrono::hours(24)), kLid, 16, grams(57), kTomorrow, {});
    ASSERT_EQ(goes.size(), 1U);
    EXPECT_EQ(goes[0].goes, SurplusGoes::Kept);
    EXPECT_EQ(goes[0].pieces, 16);
    EXPECT_EQ(goes[0].mass, grams(57) * 16);
}

TEST(Surplus, IsKeptToTheVeryEndOfItsTime) {
    EXPECT_EQ(whereSurplusGoes(pastes(kTomorrow), kLid, 1, grams(57), kTomorrow, {})[0].goes, SurplusGoes::Kept);
    EXPECT_NE(whereSurplusGoes(pastes(kTomorrow - Seconds(1)), kLid, 1, grams(57), kTomorrow, {})[0].goes,
              SurplusGoes::Kept);
}

TEST(Surplus, IsReworkedIntoThePasteThatTakesIt) {
    // 10 % of 20 kg = 2 kg: all 16 x 57 = 912 g.
    const auto goes =
        whereSurplusGoes(pastes(std::chrono::hours(6)), kLid, 16, grams(57), kTomorrow, {{kBase, kilograms(20)}});
    ASSERT_EQ(goes.size(), 1U);
    EXPECT_EQ(goes[0].goes, SurplusGoes::Reworked);
    EXPECT_EQ(goes[0].into, kBase);
    EXPECT_EQ(goes[0].pieces, 16);
}

TEST(Surplus, OverTheReworkLimitIsDiscardedAndSaysSo) {
    // 10 % of 6 kg = 600 g: 10 pieces of 57 g; 6 are thrown away.
    const auto goes =
        whereSurplusGoes(pastes(std::chrono::hours(6)), kLid, 16, grams(57), kTomorrow, {{kBase, kilograms(6)}});
    ASSERT_EQ(goes.size(), 2U);
    EXPECT_EQ(goes[0].goes, SurplusGoes::Reworked);
    EXPECT_EQ(goes[0].pieces, 10);
    EXPECT_EQ(goes[1].goes, SurplusGoes::Discarded);
    EXPECT_EQ(goes[1].pieces, 6);
    EXPECT_THAT(goes[1].why, HasSubstr("over the limit"));
}

TEST(Surplus, APasteThatTakesNoneGetsNone) {
    // Lid paste is made today, but takes nothing back: base surplus can't go there.
    const auto goes =
        whereSurplusGoes(pastes(std::chrono::hours(6)), kBase, 16, grams(82), kTomorrow, {{kLid, kilograms(20)}});
    ASSERT_EQ(goes.size(), 1U);
    EXPECT_EQ(goes[0].goes, SurplusGoes::Discarded);
    EXPECT_THAT(goes[0].why, HasSubstr("no paste of the day takes it back"));
}

TEST(Surplus, GoesIntoItsOwnPasteFirst) {
    book::Book book = pastes(std::chrono::hours(6));
    book::Formula other;
    other.id = FormulaId("a-paste"); // before base-paste by name
    other.reworkMost = percent(10);
    other.reworkFrom = kBase;
    book.formulas.emplace(other.id, other);
    const auto goes =
        whereSurplusGoes(book, kBase, 16, grams(100), kTomorrow, {{kBase, kilograms(10)}, {other.id, kilograms(10)}});
    ASSERT_EQ(goes.size(), 2U); // 10 and 6
    EXPECT_EQ(goes[0].into, kBase);
    EXPECT_EQ(goes[0].pieces, 10);
    EXPECT_EQ(goes[1].into, other.id);
    EXPECT_EQ(goes[1].pieces, 6);
}

TEST(Surplus, WithoutAKeepingTimeIsNotKeptForAnotherDay) {
    const auto goes = whereSurplusGoes(pastes(std::nullopt), kLid, 16, grams(57), kTomorrow, {});
    ASSERT_EQ(goes.size(), 1U);
    EXPECT_EQ(goes[0].goes, SurplusGoes::Discarded);
    EXPECT_THAT(goes[0].why, HasSubstr("no time it keeps"));
}

TEST(Surplus, NoneGoesNowhere) {
    EXPECT_TRUE(whereSurplusGoes(pastes(std::nullopt), kLid, 0, grams(57), kTomorrow, {}).empty());
}

} // namespace
} // namespace piewright::pastry
