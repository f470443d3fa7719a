// The cases of data/checks: each breaks the corner shop in one way and names every finding. See the README there.
#include "house_texts.h"

#include <algorithm>
#include <fstream>
#include <gtest/gtest.h>

namespace piewright::book {
namespace {

struct Edit {
    std::string file, from, to;
};

struct Case {
    std::string group, what, findings;
    std::vector<Edit> edits;
};

void addLine(std::string& text, bool& begun, const std::string& line) {
    text += (begun ? "\n" : "") + line;
    begun = true;
}

std::vector<Case> readCases(const std::string& group) {
    std::ifstream in(std::string(PIEWRIGHT_SOURCE) + "/tests/book/data/checks/" + group + ".txt");
    std::vector<Case> cases;
    bool from = false;
    bool to = false;
    for (std::string line; std::getline(in, line);) {
        if (line.empty()) continue;
        const std::string rest = line.size() > 2 ? line.substr(2) : std::string{};
        if (line[0] == '#') cases.push_back({group, rest, {}, {}});
        if (cases.empty()) continue;
        Case& last = cases.back();
        if (line[0] == '@') {
            last.edits.push_back({rest, {}, {}});
            from = to = false;
        }
        if (line[0] == '-') addLine(last.edits.back().from, from, rest);
        if (line[0] == '+') addLine(last.edits.back().to, to, rest);
        if (line[0] == '!') last.findings += rest + '\n';
    }
    return cases;
}

std::vector<Case> allCases() {
    std::vector<Case> all;
    for (const char* group : {"formulas", "gear", "goods", "hands", "hours", "look", "money", "routes", "stuffs",
                              "tins", "values", "worktime"}) {
        const std::vector<Case> some = readCases(group);
        EXPECT_FALSE(some.empty()) << group;
        all.insert(all.end(), some.begin(), some.end());
    }
    return all;
}

// Without the lines on unverified rules, which every case has.
std::string told(const Texts& texts) {
    const auto read = readTexts(texts);
    std::vector<Finding> findings = read.ok() ? read->warnings : read.problems().findings;
    std::erase_if(findings, [](const Finding& each) { return each.saw.find("is not verified") != std::string::npos; });
    return toText(findings);
}

class Checks : public testing::TestWithParam<Case> {};

TEST_P(Checks, GiveExactlyTheseFindings) {
    Texts texts = cornerShop();
    for (const Edit& edit : GetParam().edits) texts = with(texts, edit.file, edit.from, edit.to);
    EXPECT_EQ(told(texts), GetParam().findings) << GetParam().what;
}

std::string nameOf(const testing::TestParamInfo<Case>& info) {
    std::string name = info.param.group;
    bool start = true;
    for (const char c : info.param.what) {
        if (c != ' ') name += start && c >= 'a' ? static_cast<char>(c - 'a' + 'A') : c;
        start = c == ' ';
    }
    return name;
}

INSTANTIATE_TEST_SUITE_P(Book, Checks, testing::ValuesIn(allCases()), nameOf);

} // namespace
} // namespace piewright::book
