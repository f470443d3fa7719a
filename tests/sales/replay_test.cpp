// What the fuzzers found worth keeping, run again every time.
#include "fuzz/targets.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>

namespace piewright::fuzz {
namespace {

std::size_t replay(const char* name, const std::function<void(const std::string&)>& target) {
    std::size_t files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(std::filesystem::path(PIEWRIGHT_SOURCE) / "tests" /
                                                                 "fuzz" / "corpus" / name)) {
        std::ifstream in(entry.path(), std::ios::binary);
        target({std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()});
        ++files;
    }
    return files;
}

TEST(Replay, TheImportsCorpusKeepsItsPromises) { EXPECT_GT(replay("import", importOf), 10U); }

TEST(Replay, TheMappingsCorpusKeepsItsPromises) { EXPECT_GT(replay("mapping", mappingOf), 3U); }

} // namespace
} // namespace piewright::fuzz
