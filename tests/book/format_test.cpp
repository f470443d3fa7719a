// docs/formats/book.md tells of every file, table, key, word and rule that the reader knows.
#include "book/kinds.h"
#include "book/rules_file.h"
#include "book/words.h"

#include <fstream>
#include <gtest/gtest.h>
#include <sstream>

namespace piewright::book {
namespace {

std::string page() {
    std::ostringstream text;
    text << std::ifstream(std::string(PIEWRIGHT_SOURCE) + "/docs/formats/book.md").rdbuf();
    return text.str();
}

// What stands under the file's heading.
std::string sectionOf(const std::string& page, const std::string& file) {
    const std::size_t from = page.find("\n## " + file);
    EXPECT_NE(from, std::string::npos) << file;
    if (from == std::string::npos) return {};
    return page.substr(from, page.find("\n## ", from + 1) - from);
}

bool isPlaceholder(std::string_view key) { return key == "RULE" || key == "SKILL"; }

TEST(Format, EveryKeyOfEveryFileIsWrittenDown) {
    const std::string text = page();
    std::size_t keys = 0;
    for (const BookFile& file : bookFiles()) {
        const std::string section = sectionOf(text, std::string(file.name));
        for (const KnownTable& table : file.known())
            for (const std::string_view key : table.keys) {
                if (isPlaceholder(key)) continue;
                ++keys;
                EXPECT_NE(section.find('`' + std::string(key) + '`'), std::string::npos)
                    << file.name << ' ' << table.path << ' ' << key;
            }
    }
    EXPECT_GT(keys, 130U);
}

template <class Choice> void wordsAreWritten(const std::string& text) {
    for (const auto& [choice, word] : Words<Choice>::kAll)
        EXPECT_NE(text.find('`' + std::string(word) + '`'), std::string::npos) << word;
}

TEST(Format, EveryWordIsWrittenDown) {
    const std::string text = page();
    wordsAreWritten<Paper>(text);
    wordsAreWritten<Shown>(text);
    wordsAreWritten<Measure>(text);
    wordsAreWritten<Storage>(text);
    wordsAreWritten<Basis>(text);
    wordsAreWritten<Makes>(text);
    wordsAreWritten<Made>(text);
    wordsAreWritten<TinShape>(text);
    wordsAreWritten<Served>(text);
    wordsAreWritten<GearKind>(text);
    wordsAreWritten<Attended>(text);
    wordsAreWritten<PerUnit>(text);
    wordsAreWritten<Caution>(text);
    wordsAreWritten<Takes>(text);
    wordsAreWritten<Bound>(text);
    wordsAreWritten<Confidence>(text);
}

TEST(Format, EveryRuleAndRuleBookIsWrittenDown) {
    const std::string text = page();
    for (const KnownRule& rule : knownRules())
        EXPECT_NE(text.find("| `" + std::string(rule.id) + "` | " + (rule.temperature ? "temperature" : "duration") +
                            " | " + std::string(wordFor(rule.bound)) + " |"),
                  std::string::npos)
            << rule.id;
    for (const ShippedRules& rules : shippedRules())
        EXPECT_NE(text.find('`' + std::string(rules.name) + '`'), std::string::npos) << rules.name;
}

} // namespace
} // namespace piewright::book
