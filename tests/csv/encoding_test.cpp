#include "csv/encoding.h"

#include <gtest/gtest.h>

namespace piewright::csv {
namespace {

TEST(Encoding, WellFormedUtf8) {
    // Unicode Standard, table 3-7
    for (const char* good : {"", "pie", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xED\x9F\xBF", "\xEE\x80\x80",
                             "\xEF\xBF\xBF", "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF", "Pâté €"})
        EXPECT_TRUE(isUtf8(good)) << good;
    for (const char* bad : {"\x80", "\xC0\x80", "\xC1\xBF", "\xE0\x80\x80", "\xED\xA0\x80", "\xF0\x80\x80\x80",
                            "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xC3", "\xE2\x82", "\xC3(", "P\xE2t\xE9"})
        EXPECT_FALSE(isUtf8(bad)) << bad;
}

TEST(Encoding, ACutOffSequenceMayBeForgivenButNotABrokenOne) {
    EXPECT_TRUE(isUtf8("ab\xE2\x82", true));
    EXPECT_FALSE(isUtf8("ab\xE2(", true));
}

TEST(Encoding, Windows1252) {
    // WHATWG Encoding Standard, index windows-1252
    std::string utf8;
    addFromWindows1252("\x80\x99\x9F\xA3\xE9\xFF", utf8);
    EXPECT_EQ(utf8, "€™Ÿ£éÿ");
    utf8.clear();
    for (int b = 0; b < 256; ++b) addFromWindows1252(std::string(1, static_cast<char>(b)), utf8);
    EXPECT_TRUE(isUtf8(utf8));
}

} // namespace
} // namespace piewright::csv
