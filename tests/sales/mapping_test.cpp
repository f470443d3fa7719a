#include "sales/import.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace piewright::sales {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Pair;

const std::set<GoodId> kKnown{GoodId("beef-pie"), GoodId("mash")};

std::string refused(const std::string& text) {
    const auto mapping = readMapping("till.toml", text, kKnown);
    return mapping.ok() ? "taken" : toText(mapping.problems().findings);
}

TEST(Mapping, WordsGoodsAndWhatIsSetAside) {
    const auto mapping =
        readMapping("till.toml",
                    "# the till\n[items]\n\"Beef & Onion Pie\" = \"beef-pie\"\n\"BEEF LRG.\" = \"beef-pie\"\n"
                    "Mash = \"mash\"\n\"Cola 0.5\" = \"\"\n",
                    kKnown);
    ASSERT_TRUE(mapping.ok());
    EXPECT_THAT(mapping->goods,
                ElementsAre(Pair("BEEF LRG.", GoodId("beef-pie")), Pair("Beef & Onion Pie", GoodId("beef-pie")),
                            Pair("Mash", GoodId("mash"))));
    EXPECT_THAT(mapping->ignored, ElementsAre("Cola 0.5"));
}

TEST(Mapping, EveryProblemAtOnceWithItsLine) {
    const std::string text =
        refused("[items]\nA = \"beef-pye\"\nB = 3\nC = \"mash\"\nc = \"beef-pie\"\n[other]\nx = 1\n");
    EXPECT_THAT(text, HasSubstr("till.toml:2:5: items.\"A\": no good is called \"beef-pye\""));
    EXPECT_THAT(text, HasSubstr("did you mean \"beef-pie\"?"));
    EXPECT_THAT(text, HasSubstr("till.toml:3:"));
    EXPECT_THAT(text, HasSubstr("twice with different goods"));
    EXPECT_THAT(text, HasSubstr("other: not known here"));
}

TEST(Mapping, NotTomlNamesThePlace) {
    EXPECT_THAT(refused("[items]\n\"a\" \"b\"\n"), AllOf(HasSubstr("till.toml:2:"), HasSubstr("not TOML")));
}

TEST(Mapping, WhatTheLibraryMustNotBeGivenIsRefusedFirst) {
    // Found by the fuzzer: toml++ asserts that a table's name begins as a name does, and letters from U+00A0 to U+0499
    // outside quotes bring it to undefined behaviour.
    for (const char* text : {"[=]\n", "[\n", "[[[a]]]\n", "[.items]\n", "[\xC3\xA9]\n", "[[\x04]]\n", "# x\n  [ %]\n",
                             "[items]\nP\xC3\xA2t\xC3\xA9 = \"mash\"\n", "x = 1\xC2\xB5",
                             "x = \"\"\"\n\xC3\xA9\"\"\"\xC3\xA9", "x = 'a\\' \xC3\xA9", "x = \"a\n\xC3\xA9\"",
                             "x = 9\"\xC3\xA9\"", "x = 9.\"\xC3\xA9\"", "x = 9[\"\xC3\xA9\"", "x = \"\\\xC3\xA9\""})
        EXPECT_THAT(refused(text), HasSubstr("not TOML")) << text;
    EXPECT_THAT(refused("[items]\nMash = \"mash\"\nP\xC3\xA2t\xC3\xA9 = \"mash\"\n"),
                AllOf(HasSubstr("till.toml:3:2:"), HasSubstr("in quotes")));
}

TEST(Mapping, LettersOfEveryKindMayStandInQuotesAndComments) {
    EXPECT_EQ(refused("\xEF\xBB\xBF# caf\xC3\xA9\n[items]\n\"P\xC3\xA2t\xC3\xA9 \\\"maison\\\"\" = \"mash\" # "
                      "\xC2\xB5\n'\xE2\x82\xAC' = \"\"\n"),
              "taken");
}

TEST(Mapping, WhatTheLibraryAssertsIsAnError) { EXPECT_NE(refused("items = [[1,}"), "taken"); }

TEST(Mapping, WithoutItemsThereIsNothing) { EXPECT_THAT(refused("# empty\n"), HasSubstr("no table [items]")); }

TEST(Mapping, HostileDepthIsRefused) {
    std::string deep = "a";
    for (int i = 0; i < 100'000; ++i) deep += ".a";
    EXPECT_THAT(refused(deep + " = 1\n"), HasSubstr("more than 200 points"));
    EXPECT_THAT(refused("a = " + std::string(100'000, '[')), HasSubstr("not TOML"));
    EXPECT_THAT(refused(std::string(5U << 20U, ' ')), HasSubstr("no table [items]"));
}

} // namespace
} // namespace piewright::sales
