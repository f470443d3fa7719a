// Every key that is written is documented, and every key documented is written.
#include "wire/plan_json.h"
#include "wire/random_plan.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include <fstream>
#include <regex>
#include <set>
#include <sstream>

namespace piewright {
namespace {

void keysOf(const nlohmann::json& value, std::set<std::string>& keys) {
    if (value.is_object())
        for (const auto& [key, inner] : value.items()) {
            keys.insert(key);
            keysOf(inner, keys);
        }
    if (value.is_array())
        for (const nlohmann::json& inner : value) keysOf(inner, keys);
}

std::string document(const std::string& name) {
    std::ifstream file(std::string(PIEWRIGHT_SOURCE) + "/docs/formats/" + name);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

/// Words in backticks, or those of the first column of the tables only.
std::set<std::string> named(const std::string& text, bool firstColumn) {
    std::set<std::string> words;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        if (firstColumn) {
            if (line.rfind("| `", 0) != 0) continue;
            line = line.substr(0, line.find('|', 1));
        }
        static const std::regex kWord("`([a-z_]+)`");
        for (std::sregex_iterator it(line.begin(), line.end(), kWord), end; it != end; ++it) words.insert((*it)[1]);
    }
    return words;
}

TEST(PlanDocument, NamesEveryKeyThatIsWrittenAndNoOther) {
    std::set<std::string> written;
    for (std::uint64_t seed = 1; seed <= 50; ++seed)
        keysOf(nlohmann::json::parse(wire::toJson(testing::randomPlan(seed))), written);
    const std::string text = document("plan.md");
    ASSERT_FALSE(text.empty());
    const auto all = named(text, false);
    for (const std::string& key : written) EXPECT_TRUE(all.contains(key)) << key << " is not in docs/formats/plan.md";
    for (const std::string& key : named(text, true))
        EXPECT_TRUE(written.contains(key)) << "docs/formats/plan.md names " << key << ", which is never written";
}

TEST(ProblemsDocument, NamesEveryKeyThatIsWrittenAndNoOther) {
    std::set<std::string> written;
    keysOf(nlohmann::json::parse(wire::toJson(Problems::one(Fault::Input, "x"))), written);
    EXPECT_EQ(named(document("problems.md"), true), written);
}

} // namespace
} // namespace piewright
