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

TEST(Mapping, WithoutItemsThereIsNothing) { EXPECT_THAT(refused("# empty\n"), HasSubstr("no table [items]")); }

TEST(Mapping, HostileDepthIsRefused) {
    std::string deep = "a";
    for (int i = 0; i < 100'000; ++i) deep += ".a";
    EXPECT_THAT(refused(deep + " = 1\n"), HasSubstr("more than 200 points"));
    EXPECT_THAT(refused("a = " + std::string(100'000, '[')), HasSubstr("not TOML"));
    EXPECT_THAT(refused(std::string(5U << 20U, ' ')), HasSubstr("larger than"));
}

} // namespace
} // namespace piewright::sales
