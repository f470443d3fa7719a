// A room includes only what its CMake file says it uses: the archive links would not catch a header-only reach upward.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>

namespace {

namespace fs = std::filesystem;

std::string textOf(const fs::path& file) {
    std::ifstream in(file);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

/// The rooms a room's CMake file names after USES, and itself.
std::set<std::string> usesOf(const fs::path& room) {
    std::set<std::string> uses{room.filename().string()};
    const std::string text = textOf(room / "CMakeLists.txt");
    std::smatch match;
    if (std::regex_search(text, match, std::regex(R"(USES\s+([a-z\s]+))"))) {
        std::istringstream words(match[1]);
        for (std::string word; words >> word;) uses.insert(word);
    }
    return uses;
}

std::map<std::string, std::set<std::string>> allUses() {
    std::map<std::string, std::set<std::string>> uses;
    for (const auto& room : fs::directory_iterator(fs::path(PIEWRIGHT_SOURCE) / "src"))
        if (room.is_directory()) uses[room.path().filename().string()] = usesOf(room.path());
    return uses;
}

TEST(Rooms, IncludeOnlyTheRoomsTheyUse) {
    const auto uses = allUses();
    ASSERT_GE(uses.size(), 10U);
    const std::regex include(R"re(#include "([a-z]+)/[^"]+")re");
    int includes = 0;
    for (const auto& [room, may] : uses)
        for (const auto& file : fs::directory_iterator(fs::path(PIEWRIGHT_SOURCE) / "src" / room)) {
            if (file.path().extension() != ".h" && file.path().extension() != ".cpp") continue;
            const std::string text = textOf(file.path());
            for (std::sregex_iterator it(text.begin(), text.end(), include), end; it != end; ++it) {
                ++includes;
                EXPECT_TRUE(may.contains((*it)[1])) << file.path() << " includes " << it->str();
            }
        }
    EXPECT_GT(includes, 100);
}

TEST(Rooms, UseEachOtherInOneDirection) {
    const auto uses = allUses();
    for (const auto& [room, may] : uses)
        for (const std::string& other : may)
            if (other != room) {
                EXPECT_FALSE(uses.at(other).contains(room)) << room << " and " << other;
            }
}

TEST(Rooms, EverySourceIsListedByName) {
    for (const auto& room : fs::directory_iterator(fs::path(PIEWRIGHT_SOURCE) / "src")) {
        if (!room.is_directory()) continue;
        const std::string cmake = textOf(room.path() / "CMakeLists.txt");
        for (const auto& file : fs::directory_iterator(room.path()))
            if (file.path().extension() == ".h" || file.path().extension() == ".cpp") {
                EXPECT_NE(cmake.find(file.path().filename().string()), std::string::npos) << file.path();
            }
    }
}

} // namespace
