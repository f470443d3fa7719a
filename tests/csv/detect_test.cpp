#include "csv/reader.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace piewright::csv {
namespace {

using testing::HasSubstr;

Dialect found(const std::string& text) {
    const auto dialect = detect(text);
    EXPECT_TRUE(dialect.ok()) << toText(dialect.problems().findings);
    return dialect.ok() ? *dialect : Dialect{};
}

std::string refused(const std::string& text) {
    const auto dialect = detect(text);
    return dialect.ok() ? "taken" : toText(dialect.problems().findings);
}

TEST(Detect, TheFourDelimiters) {
    for (const char delimiter : {',', ';', '\t', '|'}) {
        std::string text = "date,item,quantity\n2026-11-27,Beef Pie,2\n2026-11-27,Mash,1\n";
        for (char& c : text)
            if (c == ',') c = delimiter;
        const Dialect d = found(text);
        EXPECT_EQ(d.delimiter, delimiter);
        EXPECT_TRUE(d.header);
        EXPECT_FALSE(d.decimalComma);
        EXPECT_EQ(d.preamble, 0U);
    }
}

TEST(Detect, ADecimalCommaIsNoDelimiter) {
    const Dialect d = found("27.11.2026;1,50\n27.11.2026;2,00\n28.11.2026;1,00\n");
    EXPECT_EQ(d.delimiter, ';');
    EXPECT_TRUE(d.decimalComma);
    EXPECT_FALSE(d.header);
}

TEST(Detect, ThousandsAndDecimalsAreToldApart) {
    EXPECT_TRUE(found("item;quantity\nPie;1.234,00\n").decimalComma);
    EXPECT_FALSE(found("item;quantity\nPie;1,234.00\n").decimalComma);
    EXPECT_FALSE(found("item,quantity\nPie,\"1,234\"\n").decimalComma); // thousands, as commas part the fields
    EXPECT_TRUE(found("item;quantity\nPie;2,000\n").decimalComma);      // two pieces and no thousandths
    EXPECT_TRUE(found("date;time;quantity\n27.11.2026;10.30;2,0\n27.11.2026;10.45;1,0\n").decimalComma);
}

TEST(Detect, DelimitersInsideQuotesDoNotCount) {
    const Dialect d = found("item;note;quantity\n\"Pie, large\";\"a,b,c\";2\n\"Mash, small\";\"d,e,f\";1\n");
    EXPECT_EQ(d.delimiter, ';');
}

TEST(Detect, ACommaInEveryItemNameDoesNotWin) {
    const Dialect d =
        found("when;item;pieces\n2026-11-27;Pie, beef;2\n2026-11-27;Pie, cheese;1\n2026-11-28;Pie, beef;2\n");
    EXPECT_EQ(d.delimiter, ';');
}

TEST(Detect, ATitleAboveTheHeaderIsPassedOver) {
    const Dialect d = found("Sales report\nShop;Ropewalk\n\ndate;item;quantity\n27.11.2026;Pie;2\n27.11.2026;Mash;1\n"
                            "28.11.2026;Pie;3\n");
    EXPECT_EQ(d.preamble, 2U); // the empty line is no row
    EXPECT_TRUE(d.header);
}

TEST(Detect, AStatedDelimiterIsBelieved) {
    const Dialect d = found("sep=|\r\na,b|c\r\n1,2|3\r\n");
    EXPECT_EQ(d.delimiter, '|');
    EXPECT_EQ(d.preamble, 1U);
}

TEST(Detect, Encodings) {
    EXPECT_FALSE(found("item,quantity\nPâté,2\n").latin1);
    EXPECT_FALSE(found("\xEF\xBB\xBFitem,quantity\nPie,2\n").latin1);
    EXPECT_TRUE(found("item,quantity\nP\xE2t\xE9,2\n").latin1);
}

TEST(Detect, ALetterCutByTheEndOfTheBeginningIsNotLatin1) {
    std::string text = "item,quantity\n";
    while (text.size() < kLookedAt - 1) text += "Pie,2\n";
    text.resize(kLookedAt - 1);
    text += "\xC3\xA9,2\n"; // cut after the first byte
    EXPECT_FALSE(found(text).latin1);
}

TEST(Detect, HeaderOrNot) {
    EXPECT_TRUE(found("a,b\n").header);
    EXPECT_TRUE(found("item,quantity\nPie,2\nMash,3\n").header);
    EXPECT_FALSE(found("Pie,2\nMash,3\n").header);
    EXPECT_FALSE(found("2026-11-27T12:00,Pie,2\n2026-11-27T12:03,Mash,3\n").header);
    EXPECT_TRUE(found("item,quantity\nPie,-2\nMash,(3)\n").header);
}

TEST(Detect, UnevenRowsDoNotHideTheColumns) {
    EXPECT_EQ(found("date,item,quantity\n2026-11-27,Pie,2\n2026-11-27,Mash,1\nTotal,3\n").delimiter, ',');
}

TEST(Detect, NotTextIsRefusedByName) {
    EXPECT_THAT(refused(""), HasSubstr("empty"));
    EXPECT_THAT(refused(std::string("\xFF\xFE"
                                    "a\0,\0",
                                    6)),
                AllOf(HasSubstr("UTF-16"), HasSubstr("CSV UTF-8")));
    EXPECT_THAT(refused(std::string("a\0,\0b\0\n\0", 8)), HasSubstr("UTF-16"));
    EXPECT_THAT(refused("PK\x03\x04zip"), HasSubstr("spreadsheet"));
    EXPECT_THAT(refused(std::string("\x01\x02\x03,\x04\n", 6)), HasSubstr("not text"));
    EXPECT_THAT(refused("one word a line\nand nothing to part them\n"), HasSubstr("no comma"));
}

TEST(Detect, AnUnclosedQuoteAtTheStartIsSaid) { EXPECT_THAT(refused("\"a,b\n1,2\n"), HasSubstr("not closed")); }

} // namespace
} // namespace piewright::csv
