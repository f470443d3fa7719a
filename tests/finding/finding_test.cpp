#include "finding/finding.h"

#include <gtest/gtest.h>

namespace piewright {
namespace {

Finding at(Place place, std::string saw) { return {std::move(place), std::move(saw), {}, {}}; }

TEST(FindingText, SaysWhereWhatAndWhatWouldBeRight) {
    const Finding finding{{"goods.toml", 12, 9, "good.beef-pie.price"},
                          "\"five\" is not money",
                          "an amount and a currency",
                          "did you mean 5?"};
    EXPECT_EQ(
        toText(finding),
        "goods.toml:12:9: good.beef-pie.price: \"five\" is not money; want an amount and a currency (did you mean 5?)");
}

TEST(FindingText, LeavesOutWhatIsNotKnown) {
    EXPECT_EQ(toText(at({}, "nothing is open")), "nothing is open");
    EXPECT_EQ(toText(at({"tins.toml", 0, 0, {}}, "not text")), "tins.toml: not text");
    EXPECT_EQ(toText(at({"tins.toml", 3, 0, {}}, "not text")), "tins.toml:3: not text");
    EXPECT_EQ(toText(at({{}, 0, 0, "tin.deep"}, "no depth")), "tin.deep: no depth");
}

TEST(FindingText, AColumnWithoutALineIsNotShown) {
    EXPECT_EQ(toText(at({"tins.toml", 0, 7, {}}, "not text")), "tins.toml: not text");
}

TEST(FindingText, MarksAWarning) {
    Finding finding = at({"a.toml", 1, 1, {}}, "odd");
    finding.severity = Severity::Warning;
    EXPECT_EQ(toText(finding), "a.toml:1:1: warning: odd");
}

TEST(FindingsText, StandInTheOrderOfTheFile) {
    // By number, not by letters: line 9 before line 10; equal places keep their order.
    EXPECT_EQ(toText({at({"b.toml", 1, 1, {}}, "4"), at({"a.toml", 10, 1, {}}, "3"), at({"a.toml", 9, 2, {}}, "2"),
                      at({"a.toml", 9, 1, {}}, "1"), at({"b.toml", 1, 1, {}}, "5")}),
              "a.toml:9:1: 1\na.toml:9:2: 2\na.toml:10:1: 3\nb.toml:1:1: 4\nb.toml:1:1: 5\n");
}

TEST(FindingsText, OfNoneIsEmpty) { EXPECT_EQ(toText(std::vector<Finding>{}), ""); }

} // namespace
} // namespace piewright
