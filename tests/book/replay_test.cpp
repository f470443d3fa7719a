// What the fuzzer found worth keeping, run again every time.
#include "fuzz/targets.h"

#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <iterator>

namespace piewright::fuzz {
namespace {

TEST(Replay, TheBooksCorpusKeepsItsPromises) {
    std::size_t files = 0;
    for (const auto& entry :
         std::filesystem::directory_iterator(std::string(PIEWRIGHT_SOURCE) + "/tests/fuzz/corpus/book")) {
        std::ifstream in(entry.path(), std::ios::binary);
        bookOf({std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()});
        ++files;
    }
    EXPECT_GE(files, 10U);
}

} // namespace
} // namespace piewright::fuzz
