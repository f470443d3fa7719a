// What TOML text becomes, with its places, and what is refused. TOML 1.0: toml.io/en/v1.0.0.
#include "toml/letters.h"
#include "toml/read.h"

#include <gtest/gtest.h>

namespace piewright::toml {
namespace {

Node readFine(const std::string& text) {
    auto read = toml::read(text, "x.toml");
    EXPECT_TRUE(read.ok()) << toText(read.problems().findings);
    return read.ok() ? *std::move(read) : Node{};
}

std::string refusal(const std::string& text) {
    const auto read = toml::read(text, "x.toml");
    return read.ok() ? "(taken)" : toText(read.problems().findings.front());
}

TEST(Read, GivesEachValueWithItsPlace) {
    const Node root = readFine("# comment\na = \"text\"\n[t]\nn = 12 # twelve\nyes = true\nday = 2026-12-25\n"
                               "list = [\"x\",\n  1.5]\n[[s]]\n[[s]]\nk.l = 1\n");
    ASSERT_EQ(root.members.size(), 3U);
    EXPECT_EQ(root.find("a")->text, "text");
    EXPECT_EQ(root.find("a")->line, 2);
    EXPECT_EQ(root.find("a")->column, 5);
    const Node& table = *root.find("t");
    EXPECT_EQ(table.kind, Node::Kind::Table);
    EXPECT_EQ(table.line, 3);
    EXPECT_EQ(table.find("n")->number, 12);
    EXPECT_TRUE(table.find("yes")->truth);
    EXPECT_EQ(table.find("day")->date, *parseDate("2026-12-25"));
    const Node& list = *table.find("list");
    ASSERT_EQ(list.items.size(), 2U);
    EXPECT_EQ(list.items[1].kind, Node::Kind::Real);
    EXPECT_EQ(list.items[1].line, 8);
    EXPECT_EQ(list.items[1].column, 3);
    ASSERT_EQ(root.find("s")->items.size(), 2U);
    EXPECT_EQ(root.find("s")->items[1].find("k")->find("l")->number, 1);
    EXPECT_EQ(root.find("none"), nullptr);
}

TEST(Read, KeepsKeysInTheOrderOfTheFileWithTheirPlaces) {
    const Node root = readFine("b = 1\n  a = 2\n");
    EXPECT_EQ(root.members[0].key, "b");
    EXPECT_EQ(root.members[1].key, "a");
    EXPECT_EQ(root.members[1].line, 2);
    EXPECT_EQ(root.members[1].column, 3);
}

TEST(Read, LettersOfEveryKindMayStandInQuotesAndComments) {
    const Node root = readFine("\xEF\xBB\xBF# é ½ 味 \xEF\xB8\x8F\n\"Pâté\" = \"½ größe 味 \xF0\x9F\xA5\xA7 \\u00e9\"\n"
                               "'\xE2\x82\xAC' = '''\nà\n\xE2\x80\xA8'''\n");
    EXPECT_EQ(root.members[0].key, "Pâté");
    EXPECT_EQ(root.members[0].value.text, "½ größe 味 \xF0\x9F\xA5\xA7 é");
    EXPECT_EQ(root.members[0].value.column, 10); // letters, not bytes
    EXPECT_EQ(root.members[1].value.text, "à\n\xE2\x80\xA8");
}

// Each ran the library into an assertion or into what its compiler may take for unreachable.
TEST(Read, WhatTheLibraryDoesNotBearIsRefused) {
    for (const char* text : {"[=]\n",
                             "[\n",
                             "[[[a]]]\n",
                             "[.items]\n",
                             "[é]\n",
                             "[[\x04]]\n",
                             "# x\n  [ %]\n",
                             "[items]\nPâté = \"mash\"\n",
                             "x = 1µ",
                             "x = \"\"\"\né\"\"\"é",
                             "x = 'a\\' é",
                             "x = \"a\né\"",
                             "x = 9\"é\"",
                             "x = 9.\"é\"",
                             "x = 9[\"é\"",
                             "x = \"\\é\"",
                             "items = [[1,}",
                             "A = 9e\"é\" ",
                             "x = \"\"\"\\ é\"\"\"",
                             "\xEF\xBB\xBF\xEF\xBB\xBF",
                             "x\xC2\xA0= 1",
                             "\xEF\xAA\x86 = 1",
                             "x = é"})
        EXPECT_NE(refusal(text).find("not TOML"), std::string::npos) << text << ": " << refusal(text);
}

TEST(Read, NamesThePlaceOfWhatIsNotToml) {
    EXPECT_EQ(refusal("a = 1\nb = \n").rfind("x.toml:2:", 0), 0U) << refusal("a = 1\nb = \n");
    EXPECT_EQ(refusal("a = 1\nPâté = 1\n").rfind("x.toml:2:2: not TOML: ", 0), 0U) << refusal("a = 1\nPâté = 1\n");
    EXPECT_EQ(refusal("a = 1\nb = \"\xC3\x28\"\n"), "x.toml:2:6: not TOML: a byte that is not UTF-8");
}

TEST(Read, DepthIsBounded) {
    EXPECT_NE(refusal("a = " + std::string(100'000, '[')), "(taken)");
    EXPECT_NE(refusal("a.b.c.d.e.f.g.h.i.j = 1\n").find("nested too deep"), std::string::npos);
}

// RFC 3629: overlong forms, surrogates, what is past U+10FFFF, and cut letters are no UTF-8.
TEST(Letters, OnlyUtf8IsTaken) {
    for (const char* bytes : {"\x80", "\xC0\x80", "\xC1\xBF", "\xE0\x80\x80", "\xED\xA0\x80", "\xF0\x80\x80\x80",
                              "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xC3", "\xE2\x82", "\xF0\x9F\xA5"})
        EXPECT_EQ(veil(std::string("a\n") + bytes).badLine, 2) << bytes;
    EXPECT_EQ(veil("\xF3\xB0\x80\x80").badColumn, 1); // U+F0000 stands for another letter here
}

TEST(Letters, GoAndComeBackOneForOne) {
    const std::string text = "a\xC2\x80\xC3\xA9\xE0\xA0\x80\xEF\xBF\xBF\xF0\x90\x80\x80\xF4\x8F\xBF\xBF\n";
    const Veiled veiled = veil(text);
    EXPECT_EQ(veiled.badLine, 0);
    EXPECT_EQ(plain(veiled.text), text);
    EXPECT_EQ(veil("\xC3\xA9").text, "\xF3\xB0\x83\xA9"); // U+00E9 to U+F00E9
}

} // namespace
} // namespace piewright::toml
