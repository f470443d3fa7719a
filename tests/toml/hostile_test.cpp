#include "toml/read.h"

#include <gtest/gtest.h>

namespace piewright::toml {
namespace {

TEST(TomlText, TheSpecificationsExamplesAreFit) {
    // From the TOML 1.0.0 specification's examples
    for (const char* text :
         {"# This is a full-line comment\nkey = \"value\"  # This is a comment at the end of a line\n"
          "another = \"# This is not a comment\"",
          "bare_key = 1\nbare-key = 2\n1234 = 3\n",
          "\"127.0.0.1\" = \"value\"\n'quoted \"value\"' = \"value\"\n\"ʎǝʞ\" = \"v\"\n\"\" = 1\n",
          "physical.color = \"orange\"\nsite.\"google.com\" = true\nfruit . flavor = \"banana\"\n3.14159 = \"pi\"\n",
          "str = \"I'm a string. \\\"You can quote me\\\". Name\\tJos\\u00E9\"\n",
          "str1 = \"\"\"\nRoses are red\nViolets are blue\"\"\"\n",
          "str2 = \"\"\"\\\n  The quick brown \\\n\n  fox.\\\n  \"\"\"\n",
          "str7 = \"\"\"\"This,\" she said, \"is just a pointless statement.\"\"\"\"\nx = 1\n",
          "winpath = 'C:\\Users\\nodejs'\nlines = '''\nThe first 'newline' é\n'''\n",
          "apos15 = ''''That,' she said, 'is still pointless.''''\n",
          "int1 = +99\nint6 = 5_349_221\nhex1 = 0xDEADBEEF\nflt7 = 6.626e-34\nsf1 = inf\nsf5 = +nan\nb = true\n",
          "odt4 = 1979-05-27 07:32:00Z\nodt3 = 1979-05-27T00:32:00.999999-07:00\nlt1 = 07:32:00 # a\n",
          "integers = [ 1, 2, 3 ]\nnested = [ [ 1, 2 ], [\"a\", \"b\"] ]\nx = [\n  1, # one\n  2,\n]\ne = []\n",
          "name = { first = \"Tom\", last = \"Preston\" }\npoint = {x=1, y=2}\nanimal = { type.name = \"pug\" }\nz = "
          "{}\n",
          "[table-1]\nkey1 = \"some string\"\n\n[ g .  h  . i ]\n[ j . \"ʞ\" . 'l' ]\n\n[[products]]\nname = "
          "\"Hammer\"\n[[products]]  # empty\n",
          "[x]\r\na = 1\r\n\r\n# c\r\n", "",
          "\xEF\xBB\xBF"
          "a = 1"}) {
        const auto node = read(text, "a.toml");
        EXPECT_TRUE(node) << text;
    }
}

TEST(TomlText, WhatTheLibraryMustNotBeGivenIsNot) {
    // Each found by the fuzzer, or its neighbour
    for (const char* text : {"[=]\n",
                             "[.items]\n",
                             "[\n",
                             "[[[a]]]\n",
                             "[\xC3\xA9]\n",
                             "[[\x04]]\n",
                             "  [ %]\n",
                             "P\xC3\xA2t\xC3\xA9 = 1\n",
                             "x = 1\xC2\xB5",
                             "x = 1 \xC2\xB5",
                             "x = \"\"\"\n\xC3\xA9\"\"\"\xC3\xA9",
                             "x = 'a\\' \xC3\xA9",
                             "x = \"a\n\xC3\xA9\"",
                             "x = 9\"\xC3\xA9\"",
                             "x = 9.\"\xC3\xA9\"",
                             "x = 9[\"\xC3\xA9\"",
                             "x = \"\\\xC3\xA9\"",
                             "i= [[[0@i=['[y\xC6\xA0'",
                             "items = [[1,}",
                             "x =\n",
                             "x\n",
                             "x = ]",
                             "x = 1 y = 2",
                             "= 1",
                             "x = {a = 1\n}",
                             "x = \"open",
                             "x = '''open",
                             "a\x01 = 1",
                             "x = [[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]"})
        EXPECT_FALSE(read(text, "a.toml")) << text;
}

TEST(TomlText, ThePlaceIsTold) {
    const auto node = read("[items]\n\"\"\"a\nb\"\"\" = 1\nP\xC3\xA2t\xC3\xA9 = 1\n", "a.toml");
    ASSERT_FALSE(node);
    EXPECT_EQ(node.problems().findings.front().place.line, 2);
}

} // namespace
} // namespace piewright::toml
