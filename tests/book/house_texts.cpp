#include "house_texts.h"

#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <sstream>

namespace piewright::book {

Texts textsOf(const std::string& folder) {
    Texts texts;
    for (const auto& entry : std::filesystem::directory_iterator(std::string(PIEWRIGHT_SOURCE) + '/' + folder)) {
        if (entry.path().extension() != ".toml") continue;
        std::ostringstream text;
        text << std::ifstream(entry.path(), std::ios::binary).rdbuf();
        texts.emplace(entry.path().filename().string(), text.str());
    }
    EXPECT_FALSE(texts.empty()) << folder;
    return texts;
}

Texts ropewalk() { return textsOf("data/houses/ropewalk"); }
Texts cornerShop() { return textsOf("tests/fixtures/corner-shop"); }

Texts with(Texts texts, const std::string& file, const std::string& from, const std::string& to) {
    std::string& text = texts.at(file);
    const std::size_t at = text.find(from);
    EXPECT_NE(at, std::string::npos) << file << " has no " << from;
    if (at == std::string::npos) return texts;
    EXPECT_EQ(text.find(from, at + 1), std::string::npos) << file << " has more than one " << from;
    text.replace(at, from.size(), to);
    return texts;
}

Texts withMore(Texts texts, const std::string& file, const std::string& more) {
    texts[file] += more;
    return texts;
}

std::string findings(const Result<ReadBook>& read) {
    return toText(read.ok() ? read->warnings : read.problems().findings);
}

std::string findings(const Texts& texts) { return findings(readTexts(texts)); }

std::string errors(const Texts& texts) {
    const auto read = readTexts(texts);
    if (read.ok()) return {};
    std::vector<Finding> only;
    for (const Finding& finding : read.problems().findings)
        if (finding.severity == Severity::Error) only.push_back(finding);
    return toText(only);
}

Book bookOf(const Texts& texts) {
    auto read = readTexts(texts);
    EXPECT_TRUE(read.ok()) << findings(read);
    return read.ok() ? std::move(read->book) : Book{};
}

} // namespace piewright::book
