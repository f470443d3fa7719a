#include "csv/reader.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <sstream>

namespace piewright::csv {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using Rows = std::vector<std::vector<std::string>>;

struct Taken {
    Rows rows;
    std::vector<std::size_t> lines;
    Result<std::size_t> result;
};

Taken readAll(const std::string& text, const Dialect& dialect = {}) {
    std::istringstream in(text);
    Rows rows;
    std::vector<std::size_t> lines;
    auto result = read(in, dialect, [&](const Row& row) {
        std::vector<std::string>& fields = rows.emplace_back();
        for (const std::string_view field : row.fields) fields.emplace_back(field);
        lines.push_back(row.line);
        return true;
    });
    return {rows, lines, result};
}

std::string problem(const std::string& text) {
    const Taken taken = readAll(text);
    return taken.result.ok() ? "none" : toText(taken.result.problems().findings);
}

TEST(Reader, TheExamplesOfRfc4180) {
    // RFC 4180, section 2, points 1, 2, 3, 5, 6 and 7
    EXPECT_EQ(readAll("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n").rows, (Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
    EXPECT_EQ(readAll("aaa,bbb,ccc\r\nzzz,yyy,xxx").rows, (Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
    EXPECT_EQ(readAll("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx").rows,
              (Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
    EXPECT_EQ(readAll("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx").rows,
              (Rows{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
    EXPECT_EQ(readAll("\"aaa\",\"b\"\"bb\",\"ccc\"").rows, (Rows{{"aaa", "b\"bb", "ccc"}}));
}

TEST(Reader, EveryLineEndEndsARowAndEmptyLinesArePassedOver) {
    const Taken taken = readAll("\n\na,b\rc,d\r\n\r\n\re,f\n\n");
    EXPECT_EQ(taken.rows, (Rows{{"a", "b"}, {"c", "d"}, {"e", "f"}}));
    EXPECT_THAT(taken.lines, ElementsAre(3, 4, 7));
    EXPECT_EQ(*taken.result, 3U);
}

TEST(Reader, LinesInsideQuotesAreCounted) {
    const Taken taken = readAll("a,\"one\ntwo\r\nthree\rfour\"\nb,c\n");
    EXPECT_THAT(taken.lines, ElementsAre(1, 5));
}

TEST(Reader, EmptyFieldsStay) {
    EXPECT_EQ(readAll("a,,\n,,\n\"\",x\n").rows, (Rows{{"a", "", ""}, {"", "", ""}, {"", "x"}}));
}

TEST(Reader, AnInchMarkInAnUnquotedFieldIsALetter) {
    EXPECT_EQ(readAll("Pie 6\",2\nx\"y\",3\n").rows, (Rows{{"Pie 6\"", "2"}, {"x\"y\"", "3"}}));
}

TEST(Reader, SpacesAfterAClosingQuoteArePassedOver) { EXPECT_EQ(readAll("\"a\"  ,\"b\" \n").rows, (Rows{{"a", "b"}})); }

TEST(Reader, AByteOrderMarkIsNoPartOfTheFirstName) {
    EXPECT_EQ(readAll("\xEF\xBB\xBF"
                      "a,b\n")
                  .rows,
              (Rows{{"a", "b"}}));
    EXPECT_EQ(readAll("\xEF\xBB\xBF").rows, Rows{});
    EXPECT_EQ(readAll("ab").rows, (Rows{{"ab"}}));
}

TEST(Reader, OtherDelimitersPart) {
    Dialect dialect;
    dialect.delimiter = ';';
    EXPECT_EQ(readAll("a;1,5;\"x;y\"\n", dialect).rows, (Rows{{"a", "1,5", "x;y"}}));
}

TEST(Reader, Latin1BecomesUtf8) {
    Dialect dialect;
    dialect.latin1 = true;
    EXPECT_EQ(readAll("P\xE2t\xE9,\"B\xF6r\xEFk\",\x80"
                      "5\n",
                      dialect)
                  .rows,
              (Rows{{"Pâté", "Börïk", "€5"}}));
}

TEST(Reader, AStrayLatin1FieldInUtf8IsMendedAndOthersAreLeftAlone) {
    EXPECT_EQ(readAll("Pâté,P\xE2t\xE9,x\n").rows, (Rows{{"Pâté", "Pâté", "x"}}));
}

TEST(Reader, AnUnclosedQuoteNamesTheLineItOpenedOn) {
    EXPECT_THAT(problem("a,b\nc,\"d\ne,f\n"), AllOf(HasSubstr("2:"), HasSubstr("not closed")));
    EXPECT_THAT(problem("a,b\nc,\"" + std::string(300'000, 'x')), AllOf(HasSubstr("2:"), HasSubstr("not closed")));
}

TEST(Reader, TextAfterAClosingQuoteIsRefused) {
    EXPECT_THAT(problem("a,b\n\"5\" pie\",2\n"),
                AllOf(HasSubstr("2:"), HasSubstr("after a closing quote"), HasSubstr("doubled")));
}

TEST(Reader, RowsBeforeAProblemHaveBeenGiven) { EXPECT_EQ(readAll("a,b\nc,\"d").rows, (Rows{{"a", "b"}})); }

TEST(Reader, NulBytesAreRefused) {
    EXPECT_THAT(problem(std::string("a,b\nc,\0d\n", 9)), AllOf(HasSubstr("2:"), HasSubstr("NUL")));
    EXPECT_THAT(problem(std::string("a,b\nc,\"\0d\"\n", 11)), HasSubstr("NUL"));
}

TEST(Reader, TooLongIsRefusedNotSwallowed) {
    EXPECT_THAT(problem("a,b\n" + std::string(kLongestField + 1, 'x') + ",b\n"), HasSubstr("64 KiB"));
    EXPECT_THAT(problem("a,b\n" + std::string(5'000, ',') + "\n"), HasSubstr("4,096"));
    EXPECT_THAT(problem(std::string(3'000'000, 'x')), HasSubstr("1 MiB"));
    std::string row;
    for (int i = 0; i < 40; ++i) row += std::string(60'000, 'y') + ',';
    EXPECT_THAT(problem("a,b\n" + row), AllOf(HasSubstr("2:"), HasSubstr("1 MiB")));
    EXPECT_EQ(problem(std::string(kLongestField, 'x') + ",b\n"), "none");
}

TEST(Reader, TakeMayStop) {
    std::istringstream in("a\nb\nc\n");
    EXPECT_EQ(*read(in, {}, [](const Row& row) { return row.fields[0] != "b"; }), 2U);
}

TEST(Reader, AStreamThatFailsIsTheWorldsFault) {
    class Failing : public std::streambuf {
      protected:
        int_type underflow() override { throw std::ios_base::failure("disk"); }
    };
    Failing failing;
    std::istream in(&failing);
    const auto result = read(in, {}, [](const Row&) { return true; });
    ASSERT_FALSE(result.ok());
    EXPECT_EQ(result.problems().fault, Fault::World);
}

TEST(Reader, ABeginningAlreadyReadStandsBeforeTheRest) {
    for (std::size_t split = 0; split < 20; ++split) {
        const std::string text = "\xEF\xBB\xBF"
                                 "a,\"b\"\"\r\nc\"\r\nd,e";
        std::istringstream in(text.substr(std::min(split, text.size())));
        Rows rows;
        ASSERT_TRUE(read(text.substr(0, split), in, {}, [&](const Row& row) {
                        rows.emplace_back(row.fields.begin(), row.fields.end());
                        return true;
                    }).ok());
        EXPECT_EQ(rows, (Rows{{"a", "b\"\r\nc"}, {"d", "e"}})) << split;
    }
}

std::string quoted(const std::string& field) {
    std::string text = "\"";
    for (const char c : field) {
        if (c == '"') text += '"';
        text += c;
    }
    return text + '"';
}

RC_GTEST_PROP(ReaderProperty, WhatIsWrittenByRfc4180IsReadBack, ()) {
    const auto letter = rc::gen::element('a', 'b', ',', '"', '\n', '\r', ' ', ';', '\xC3');
    auto rows = *rc::gen::container<Rows>(
        rc::gen::nonEmpty(rc::gen::container<std::vector<std::string>>(rc::gen::container<std::string>(letter))));
    std::string text;
    std::vector<std::size_t> lines;
    std::size_t line = 1;
    for (auto& row : rows) {
        lines.push_back(line);
        for (std::size_t i = 0; i < row.size(); ++i) {
            const std::string& field = row[i];
            const bool must = row.size() == 1 || field.find_first_of("\",\r\n") != std::string::npos;
            if (i > 0) text += ',';
            text += must || *rc::gen::arbitrary<bool>() ? quoted(field) : field;
            for (std::size_t c = 0; c < field.size(); ++c)
                if (field[c] == '\r' || (field[c] == '\n' && (c == 0 || field[c - 1] != '\r'))) ++line;
        }
        text += *rc::gen::element<std::string>("\n", "\r\n");
        ++line;
    }
    // A lone first byte of a sequence is read as the Latin-1 letter it also is.
    for (auto& row : rows)
        for (auto& field : row) {
            std::string utf8;
            for (const char c : field) utf8 += c == '\xC3' ? std::string("Ã") : std::string(1, c);
            field = utf8;
        }
    const Taken taken = readAll(text);
    RC_ASSERT(taken.result.ok());
    RC_ASSERT(taken.rows == rows);
    RC_ASSERT(taken.lines == lines);
}

TEST(Reader, RowsAcrossBlocksAreWhole) {
    // 40,000 rows of 30 to 130 bytes cross many 256 KiB blocks at every kind of place
    std::string text;
    Rows rows;
    for (int i = 0; i < 40'000; ++i) {
        const std::string first = std::to_string(i);
        const std::string second = std::string(static_cast<std::size_t>(i * 37 % 101), i % 2 == 0 ? 'x' : '"') + "\r\n";
        text += first + ',' + quoted(second) + ",tail\r\n";
        rows.push_back({first, second, "tail"});
    }
    EXPECT_EQ(readAll(text).rows, rows);
}

RC_GTEST_PROP(ReaderProperty, NoBytesBringItDown, ()) {
    const auto text = *rc::gen::container<std::string>(rc::gen::weightedOneOf<char>(
        {{3, rc::gen::element(',', '"', '\n', '\r', ' ')}, {1, rc::gen::arbitrary<char>()}}));
    readAll(text);
    const auto dialect = detect(text);
    if (dialect.ok()) readAll(text, *dialect);
}

} // namespace
} // namespace piewright::csv
