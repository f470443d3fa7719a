// The demo house reads without a fault, and its book is what its files say.
#include "book/read.h"

#include <gtest/gtest.h>

namespace piewright::book {
namespace {

std::string found(const Result<ReadBook>& read) {
    return toText(read.ok() ? read->warnings : read.problems().findings);
}

TEST(DemoHouse, ReadsWithoutAFault) {
    const auto read = readFolder(std::string(PIEWRIGHT_SOURCE) + "/data/houses/ropewalk");
    ASSERT_TRUE(read.ok()) << found(read);
    EXPECT_EQ(read->book.house.name, "Ropewalk Pie House");
}

TEST(DemoHouse, PrintsToWhatReadsBackTheSame) {
    const auto read = readFolder(std::string(PIEWRIGHT_SOURCE) + "/data/houses/ropewalk");
    ASSERT_TRUE(read.ok());
    const Texts printed = printTexts(read->book);
    const auto again = readTexts(printed);
    ASSERT_TRUE(again.ok()) << found(again);
    EXPECT_EQ(again->book, read->book);
    EXPECT_EQ(printTexts(again->book), printed);
}

} // namespace
} // namespace piewright::book
