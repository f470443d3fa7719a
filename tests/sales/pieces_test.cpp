#include "sales/fold.h"
#include "sales/pieces.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace piewright::sales {
namespace {

using Kind = Pieces::Kind;

int whole(std::string_view text, bool decimalComma = false) {
    const Pieces pieces = parsePieces(text, decimalComma);
    EXPECT_EQ(pieces.kind, Kind::Whole) << text;
    return pieces.count;
}

TEST(Pieces, TheWaysATillWritesTwo) {
    for (const char* text : {"2", "2.0", "2,0", "2.00", "+2", " 2 ", "02", "2.", "00000002"})
        EXPECT_EQ(whole(text), 2) << text;
}

TEST(Pieces, TheWaysATillWritesAReturnOfThree) {
    for (const char* text : {"-3", "3-", "(3)", "-3.0", "(3,0)",
                             "\xE2\x88\x92"
                             "3",
                             "- 3", "( 3 )"})
        EXPECT_EQ(whole(text), -3) << text;
}

TEST(Pieces, Thousands) {
    for (const char* text : {"1,234", "1,234.00", "1.234,00", "1 234", "1'234", "1 234,0",
                             "1\xC2\xA0"
                             "234",
                             "1\xE2\x80\xAF"
                             "234"})
        EXPECT_EQ(whole(text), 1234) << text;
    EXPECT_EQ(whole("1.234", true), 1234);
    EXPECT_EQ(whole("2,000", true), 2); // a decimal comma, three decimals
    EXPECT_EQ(whole("2,000", false), 2000);
    EXPECT_EQ(whole("2.000", false), 2);
    EXPECT_EQ(whole("99,999"), 99999);
}

TEST(Pieces, APartOfAPieceIsNotRounded) {
    for (const char* text : {"1.5", "1,5", "0.25", "-0.5", ".5", "1.234,50"})
        EXPECT_EQ(parsePieces(text, false).kind, Kind::Part) << text;
    EXPECT_EQ(parsePieces("1.234", false).kind, Kind::Part);
    EXPECT_EQ(parsePieces("1,234", true).kind, Kind::Part);
}

TEST(Pieces, AbsurdAmounts) {
    EXPECT_EQ(whole("100000"), 100'000);
    for (const char* text : {"100001", "-100001", "99999999999999999999999999", "1.000.000", "5012345678900"})
        EXPECT_EQ(parsePieces(text, true).kind, Kind::Absurd) << text;
}

TEST(Pieces, NoNumber) {
    for (const char* text : {"", " ", "-", "()", "two", "2x", "2 pcs", "1,23,4", "1..2", "12 34", "1,2345,678", "(3",
                             "--3", "1e3", ",", "1 234 5", "£2", "'123", "1.234'567"})
        EXPECT_EQ(parsePieces(text, false).kind, Kind::NotANumber) << text;
}

RC_GTEST_PROP(PiecesProperty, EveryWholeNumberIsReadBackInEveryDress, ()) {
    const int n = *rc::gen::inRange(-100'000, 100'001);
    const std::string digits = std::to_string(std::abs(n));
    std::string grouped;
    for (std::size_t i = 0; i < digits.size(); ++i) {
        if (i > 0 && (digits.size() - i) % 3 == 0) grouped += '.';
        grouped += digits[i];
    }
    const std::string body = *rc::gen::element(digits, digits + ",0", digits + ",00", grouped + ",00");
    const std::string text = n >= 0 ? body : *rc::gen::element("-" + body, body + "-", "(" + body + ")");
    const Pieces pieces = parsePieces(text, true);
    RC_ASSERT(pieces.kind == Kind::Whole);
    RC_ASSERT(pieces.count == n);
}

RC_GTEST_PROP(PiecesProperty, NoTextBringsItDown, ()) {
    const auto text = *rc::gen::container<std::string>(
        rc::gen::weightedOneOf<char>({{4, rc::gen::elementOf(std::string("0123456789.,-+() '\xE2\x88\x92\xC2\xA0"))},
                                      {1, rc::gen::arbitrary<char>()}}));
    for (const bool comma : {false, true}) {
        const Pieces pieces = parsePieces(text, comma);
        RC_ASSERT(std::abs(pieces.count) <= kMostInARow);
    }
    RC_ASSERT(fold(text).size() <= text.size());
}

TEST(Fold, CaseAndSpacesAside) {
    EXPECT_EQ(fold("  Beef  &\tOnion PIE "), "beef & onion pie");
    EXPECT_EQ(fold("PÂTÉ EN CROÛTE"), "pâté en croûte");
    EXPECT_EQ(fold("\xC2\xA0Stück\xC2\xA0zu\xC2\xA0zweit"), "stück zu zweit");
    EXPECT_EQ(fold(""), "");
    EXPECT_EQ(fold("3×4"), "3×4");
}

} // namespace
} // namespace piewright::sales
