// The sheets on paper, judged by another program's reading of them (poppler).
#include "print/pdf_tools.h"
#include "print/sample_plan.h"
#include "print/sheet.h"
#include "wire/random_plan.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <regex>
#include <set>
#include <sstream>

namespace piewright {
namespace {

using ::testing::HasSubstr;

std::string pdfOf(const day::Plan& plan, const print::Sheets& which = {}) {
    const auto pdf = print::asPdf(plan, which);
    EXPECT_TRUE(pdf.ok()) << toText(pdf.problems().findings);
    return pdf ? *pdf : std::string();
}

int matches(const std::string& text, const std::string& pattern) {
    const std::regex regex(pattern);
    return static_cast<int>(
        std::distance(std::sregex_iterator(text.begin(), text.end(), regex), std::sregex_iterator()));
}

class EveryPlan : public ::testing::TestWithParam<std::pair<const char*, day::Plan (*)()>> {};

INSTANTIATE_TEST_SUITE_P(Sheets, EveryPlan,
                         ::testing::Values(std::pair{"Friday", &testing::fridayPlan},
                                           std::pair{"Empty", &testing::emptyPlan},
                                           std::pair{"OneHand", &testing::oneHandPlan},
                                           std::pair{"Crowded", &testing::crowdedPlan}),
                         [](const auto& param) { return param.param.first; });

TEST_P(EveryPlan, PrintsToTheSameBytesEachTime) { EXPECT_EQ(pdfOf(GetParam().second()), pdfOf(GetParam().second())); }

TEST_P(EveryPlan, CountsItsPagesOnEachFoot) {
    const std::string pdf = pdfOf(GetParam().second());
    const auto text = testing::pdfToText(pdf);
    const auto info = testing::pdfInfo(pdf);
    if (!text || !info) GTEST_SKIP() << "poppler-utils is not installed";
    std::smatch pages;
    ASSERT_TRUE(std::regex_search(*info, pages, std::regex("Pages: +([0-9]+)")));
    const int count = std::stoi(pages[1]);
    for (int page = 1; page <= count; ++page)
        EXPECT_THAT(*text, HasSubstr("page " + std::to_string(page) + " of " + pages[1].str()));
    EXPECT_EQ(matches(*text, "page [0-9]+ of"), count);
    EXPECT_EQ(matches(*text, "probe the food"), count);
}

TEST_P(EveryPlan, EmbedsEveryFont) {
    const auto fonts = testing::pdfFonts(pdfOf(GetParam().second()));
    if (!fonts) GTEST_SKIP() << "poppler-utils is not installed";
    int rows = 0;
    std::istringstream lines(*fonts);
    for (std::string line; std::getline(lines, line);) {
        if (line.find("TrueType") == std::string::npos && line.find("Type ") == std::string::npos) continue;
        ++rows;
        EXPECT_TRUE(std::regex_search(line, std::regex(" yes +(yes|no) +(yes|no) +[0-9]+ +[0-9]+ *$"))) << line;
    }
    EXPECT_GT(rows, 0);
}

TEST_P(EveryPlan, KeepsEveryWordInsideTheMargins) {
    const auto words = testing::pdfWords(pdfOf(GetParam().second()));
    if (!words) GTEST_SKIP() << "poppler-utils is not installed";
    ASSERT_FALSE(words->empty());
    constexpr double kMargin = 30; // the sheets keep 12 mm = 34 points
    for (const testing::Word& word : *words) {
        EXPECT_GE(word.left, kMargin) << word.page << ": " << word.text;
        EXPECT_GE(word.top, kMargin) << word.page << ": " << word.text;
        EXPECT_LE(word.right, word.pageWidth - kMargin) << word.page << ": " << word.text;
        EXPECT_LE(word.bottom, word.pageHeight - 15) << word.page << ": " << word.text;
    }
}

TEST_P(EveryPlan, PutsNoWordOverAnother) {
    const auto words = testing::pdfWords(pdfOf(GetParam().second()));
    if (!words) GTEST_SKIP() << "poppler-utils is not installed";
    // A word's box has the font's full height, so that neighbouring lines may touch: a quarter of the lesser box is too
    // much.
    int checked = 0;
    for (std::size_t i = 0; i < words->size(); ++i) {
        const testing::Word& a = (*words)[i];
        for (std::size_t j = i + 1; j < words->size() && (*words)[j].page == a.page; ++j) {
            const testing::Word& b = (*words)[j];
            const double width = std::min(a.right, b.right) - std::max(a.left, b.left);
            const double height = std::min(a.bottom, b.bottom) - std::max(a.top, b.top);
            ++checked;
            if (width <= 0 || height <= 0) continue;
            const double lesser =
                std::min((a.right - a.left) * (a.bottom - a.top), (b.right - b.left) * (b.bottom - b.top));
            EXPECT_LT(width * height, 0.25 * lesser) << "page " << a.page << ": " << a.text << " and " << b.text;
        }
    }
    EXPECT_GT(checked, 10);
}

TEST(PaperSize, IsThatOfThePlan) {
    const auto a4 = testing::pdfInfo(pdfOf(testing::fridayPlan()));
    const auto letter = testing::pdfInfo(pdfOf(testing::oneHandPlan()));
    if (!a4 || !letter) GTEST_SKIP() << "poppler-utils is not installed";
    EXPECT_THAT(*a4, HasSubstr("(A4)"));
    EXPECT_THAT(*letter, HasSubstr("612 x 792 pts (letter)"));
}

TEST(PaperDate, IsThePlansDateAndNotTheClocks) {
    const auto info = testing::pdfInfo(pdfOf(testing::fridayPlan()));
    if (!info) GTEST_SKIP() << "poppler-utils is not installed";
    EXPECT_THAT(*info, HasSubstr("Ropewalk Pie House, Friday 27 November 2026"));
    EXPECT_TRUE(std::regex_search(*info, std::regex("CreationDate: .*Nov 27 00:00:00 2026|CreationDate: .*2026-11-27")))
        << *info;
}

TEST(PaperDay, HasEveryTaskInTheListByTime) {
    const day::Plan plan = testing::crowdedPlan();
    const auto text = testing::pdfToText(pdfOf(plan, {true, false, false}));
    if (!text) GTEST_SKIP() << "poppler-utils is not installed";
    // Every task starts a row with its number and its times: `  17  04:48–05:09`.
    std::multiset<int> numbers;
    static const std::regex kRow("^ *([0-9]+) +[0-9][0-9]:[0-9][0-9]–");
    std::istringstream lines(*text);
    for (std::string line; std::getline(lines, line);) {
        std::smatch row;
        if (std::regex_search(line, row, kRow)) numbers.insert(std::stoi(row[1]));
    }
    for (const day::Task& task : plan.tasks) EXPECT_EQ(numbers.count(task.number), 1U) << task.number;
}

TEST(PaperDay, TellsAmountsPiecesStoresAndWarnings) {
    const auto text = testing::pdfToText(pdfOf(testing::fridayPlan()));
    if (!text) GTEST_SKIP() << "poppler-utils is not installed";
    for (const char* wanted :
         {"432", "358–462", "144 at 12:00", "2.601 kg", "2.5 mm", "made on Thursday 26 November", "4 × sack of 25 kg",
          "kept chilled for tomorrow", "18 of them for the days after", "2 warnings at the end",
          "Contains: cereals containing gluten (wheat)", "at 11 °C", "for Saturday 28 November",
          "Probe the core of every load. A plan does not make food safe.", "light by", "batch 2 of 4"}) {
        std::string plain = *text; // numbers keep to their units by a space that is not broken
        for (std::size_t at = 0; (at = plain.find("\u00A0", at)) != std::string::npos;) plain.replace(at, 2, " ");
        EXPECT_THAT(plain, HasSubstr(wanted));
    }
}

TEST(PaperSheets, AreThoseAskedFor) {
    const day::Plan plan = testing::fridayPlan();
    const auto cards = testing::pdfToText(pdfOf(plan, {false, true, false}));
    const auto ovens = testing::pdfToText(pdfOf(plan, {false, false, true}));
    const auto none = testing::pdfToText(pdfOf(plan, {false, false, false}));
    if (!cards || !ovens || !none) GTEST_SKIP() << "poppler-utils is not installed";
    EXPECT_THAT(*cards, ::testing::Not(HasSubstr("Tasks by time")));
    EXPECT_THAT(*cards, HasSubstr("initials"));
    EXPECT_THAT(*ovens, HasSubstr("really in"));
    EXPECT_THAT(*ovens, ::testing::Not(HasSubstr("Contains:")));
    EXPECT_THAT(*none, HasSubstr("nothing to print"));
}

TEST(PaperLetters, ThatNoFontHasAreReportedWithTheirText) {
    day::Plan plan = testing::oneHandPlan();
    plan.tasks[0].hands = {"Ida \U0010FFFD"}; // for private use: nobody's letter
    const auto pdf = print::asPdf(plan);
    ASSERT_FALSE(pdf.ok());
    EXPECT_EQ(pdf.problems().fault, Fault::Input);
    EXPECT_THAT(toText(pdf.problems().findings), HasSubstr("no font has all the letters of \"Ida \U0010FFFD\""));
}

TEST(PaperLetters, OfOtherAlphabetsArePrinted) {
    day::Plan plan = testing::oneHandPlan();
    plan.house = "Пироги на Набережной";
    plan.amounts[0].name = "Πίτα με κρέας";
    const auto text = testing::pdfToText(pdfOf(plan));
    if (!text) GTEST_SKIP() << "poppler-utils is not installed";
    EXPECT_THAT(*text, HasSubstr("Пироги на Набережной"));
    EXPECT_THAT(*text, HasSubstr("Πίτα με κρέας"));
}

TEST(PaperLetters, ThatWouldUpsetALineAreTamed) {
    day::Plan plan = testing::oneHandPlan();
    plan.house = "Quay\n\x1B[2J\tPies\xFF";
    EXPECT_FALSE(pdfOf(plan).empty());
}

TEST(PaperBounds, APlanBeyondAnyHouseIsRefused) {
    day::Plan plan = testing::oneHandPlan();
    plan.tasks.resize(20'000);
    const auto pdf = print::asPdf(plan);
    ASSERT_FALSE(pdf.ok());
    EXPECT_THAT(toText(pdf.problems().findings), HasSubstr("want at most 10000"));
}

TEST(PaperBounds, ATextOfAMegabyteIsCutShort) {
    day::Plan plan = testing::oneHandPlan();
    plan.tasks[0].what = std::string(1'000'000, 'x');
    plan.warnings = {std::string(1'000'000, 'y')};
    EXPECT_LT(pdfOf(plan).size(), 1'000'000U);
}

TEST(PaperBounds, AnyPlanIsPrintedOrRefusedForItsLetters) {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        const auto pdf = print::asPdf(testing::randomPlan(seed));
        const bool printedOrRefused = pdf.ok() || pdf.problems().fault == Fault::Input;
        EXPECT_TRUE(printedOrRefused) << seed;
    }
}

} // namespace
} // namespace piewright
