#include "finding/suggest.h"

#include <algorithm>
#include <array>
#include <gtest/gtest.h>
#include <map>
#include <rapidcheck/gtest.h>

namespace piewright {
namespace {

const std::array<std::string, 4> kKnown{"plain-flour", "strong-flour", "suet", "salt"};

TEST(EditDistance, CountsLettersAddedDroppedChangedAndSwapped) {
    EXPECT_EQ(editDistance("suet", "suet"), 0U);
    EXPECT_EQ(editDistance("suet", "suets"), 1U);
    EXPECT_EQ(editDistance("suet", "uet"), 1U);
    EXPECT_EQ(editDistance("suet", "suit"), 1U);
    EXPECT_EQ(editDistance("suet", "seut"), 1U);
    EXPECT_EQ(editDistance("", "suet"), 4U);
    EXPECT_EQ(editDistance("kitten", "sitting"), 3U); // Levenshtein's textbook pair
    // Optimal string alignment, not full Damerau-Levenshtein (which gives 2): no part is edited twice.
    EXPECT_EQ(editDistance("ca", "abc"), 3U);
}

TEST(NearestName, IsTheLikelySlip) {
    EXPECT_EQ(nearestName("plain-fluor", kKnown), "plain-flour");
    EXPECT_EQ(nearestName("PLAIN-FLOUR", kKnown), "plain-flour");
    EXPECT_EQ(nearestName("sut", kKnown), "suet");
}

TEST(NearestName, IsNoneForWhatIsUnlikeAll) {
    EXPECT_EQ(nearestName("custard-powder", kKnown), std::nullopt);
    EXPECT_EQ(nearestName("", kKnown), std::nullopt);
    EXPECT_EQ(nearestName("suet", {}), std::nullopt);
}

TEST(NearestName, TakesTheFirstOfEquals) {
    const std::array<std::string, 2> two{"bat", "cat"};
    EXPECT_EQ(nearestName("hat", two), "bat");
}

TEST(NearestName, DoesNotTroubleWithHugeNames) {
    EXPECT_EQ(nearestName(std::string(5'000'000, 'a'), kKnown), std::nullopt);
    const std::array<std::string, 1> huge{std::string(5'000'000, 'a')};
    EXPECT_EQ(nearestName("suet", huge), std::nullopt);
}

TEST(DidYouMean, AsksOrIsEmpty) {
    EXPECT_EQ(didYouMean("sault", kKnown), "did you mean \"salt\"?");
    EXPECT_EQ(didYouMean("custard-powder", kKnown), "");
}

// The definition, word for word and without a table: the naive twin.
std::size_t naive(const std::string& a, const std::string& b) {
    if (a.empty() || b.empty()) return a.size() + b.size();
    const auto [i, j] = std::pair(a.size(), b.size());
    std::size_t best = std::min(naive(a.substr(0, i - 1), b) + 1, naive(a, b.substr(0, j - 1)) + 1);
    best = std::min(best, naive(a.substr(0, i - 1), b.substr(0, j - 1)) + (a.back() == b.back() ? 0 : 1));
    if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        best = std::min(best, naive(a.substr(0, i - 2), b.substr(0, j - 2)) + 1);
    return best;
}

std::string drawnWord(int most) {
    std::string word(static_cast<std::size_t>(*rc::gen::inRange(0, most + 1)), 'a');
    for (char& c : word) c = *rc::gen::element('a', 'b', 'c');
    return word;
}

RC_GTEST_PROP(DrawnWords, DistanceIsTheDefinitions, ()) {
    const std::string a = drawnWord(5);
    const std::string b = drawnWord(5);
    RC_ASSERT(editDistance(a, b) == naive(a, b));
}

RC_GTEST_PROP(DrawnWords, DistanceIsTheSameBothWays, ()) {
    const std::string a = drawnWord(20);
    const std::string b = drawnWord(20);
    RC_ASSERT(editDistance(a, b) == editDistance(b, a));
    RC_ASSERT(editDistance(a, b) <= std::max(a.size(), b.size()));
    RC_ASSERT((editDistance(a, b) == 0) == (a == b));
}

} // namespace
} // namespace piewright
