#include "outside/run.h"

#include "outside/topics.h"

#include <array>
#include <cstdio>
#include <ostream>

namespace piewright::outside {

namespace {

constexpr const char* kUsage = "usage: outside [--foods FILE] FILE.csv...";
constexpr const char* kFoods = PIEWRIGHT_SOURCE "/tests/outside/data/food-composition.csv";

struct Asked {
    std::string foods = kFoods;
    std::vector<std::string> files;
};

std::optional<Asked> parse(std::span<const std::string> arguments) {
    Asked asked;
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        if (arguments[i] == "--foods") {
            if (++i == arguments.size()) return std::nullopt;
            asked.foods = arguments[i];
        } else if (arguments[i].starts_with("-")) {
            return std::nullopt;
        } else {
            asked.files.push_back(arguments[i]);
        }
    }
    if (asked.files.empty()) return std::nullopt;
    return asked;
}

std::string shown(double number) {
    std::array<char, 32> text{};
    std::snprintf(text.data(), text.size(), "%.9g", number);
    return text.data();
}

std::string wide(std::string text, std::size_t width) {
    if (text.size() < width) text.append(width - text.size(), ' ');
    return text;
}

struct Counts {
    int passed = 0;
    int failed = 0;
    int notCovered = 0;
    int notJudged = 0;
};

void judge(const Case& asked, const Foods& foods, Counts& counts, std::ostream& out) {
    if (asked.tolerance.kind == Tolerance::Kind::Info) {
        ++counts.notJudged;
        return;
    }
    const Answer answer = answerTo(asked, foods);
    std::string computed;
    std::string verdict;
    if (const auto* none = std::get_if<NotCovered>(&answer)) {
        ++counts.notCovered;
        computed = "-";
        verdict = "not covered: " + none->why;
    } else {
        const auto* number = std::get_if<double>(&answer);
        computed = number ? shown(*number) : std::get<std::string>(answer);
        const bool good = number ? within(asked.tolerance, asked.expected, *number)
                                 : within(asked.tolerance, asked.expected, std::get<std::string>(answer));
        ++(good ? counts.passed : counts.failed);
        verdict = good ? "pass" : "fail";
    }
    out << wide(asked.id, 10) << "  expected " << wide(asked.expected, 14) << "  computed " << wide(computed, 14)
        << "  " << verdict << '\n';
}

/// The worst of what befell: a file that can't be read over one that is refused.
int refused(const std::vector<Problems>& all, std::ostream& err) {
    int code = 0;
    for (const Problems& problems : all) {
        err << toText(problems.findings);
        code = std::max(code, static_cast<int>(problems.fault));
    }
    return code;
}

} // namespace

int run(std::span<const std::string> arguments, std::ostream& out, std::ostream& err) {
    const auto asked = parse(arguments);
    if (!asked) {
        err << kUsage << '\n';
        return static_cast<int>(Fault::Input);
    }
    std::vector<Problems> problems;
    const auto foods = readFoods(asked->foods);
    if (!foods) problems.push_back(foods.problems());
    std::vector<Case> cases;
    for (const std::string& file : asked->files) {
        const auto read = readCases(file);
        if (read)
            cases.insert(cases.end(), read->begin(), read->end());
        else
            problems.push_back(read.problems());
    }
    if (!problems.empty()) return refused(problems, err);

    Counts counts;
    for (const Case& one : cases) judge(one, *foods, counts, out);
    if (counts.notJudged > 0) out << counts.notJudged << " for information, not judged\n";
    out << "passed " << counts.passed << ", failed " << counts.failed << ", not covered " << counts.notCovered << '\n';
    return counts.failed == 0 ? 0 : 1;
}

} // namespace piewright::outside
