// The command line as a table of arguments, exit codes and what is said; and every example in the help is run.
#include "cli/run.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iomanip>
#include <sstream>

namespace piewright {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;
using testing::Not;

struct Said {
    int code = -1;
    std::string out;
    std::string err;
};

Said run(const std::vector<std::string>& arguments) {
    std::istringstream in;
    std::ostringstream out;
    std::ostringstream err;
    const int code = cli::run(arguments, in, out, err);
    return {code, out.str(), err.str()};
}

/// Every test stands in an empty folder of its own, with the project's `data` beside it.
class CommandLine : public testing::Test {
  protected:
    void SetUp() override {
        home_ = fs::temp_directory_path() /
                ("piewright-cli-" + std::string(testing::UnitTest::GetInstance()->current_test_info()->name()));
        fs::remove_all(home_);
        fs::create_directories(home_);
        fs::create_directory_symlink(fs::path(PIEWRIGHT_SOURCE) / "data", home_ / "data");
        before_ = fs::current_path();
        fs::current_path(home_);
    }
    void TearDown() override {
        fs::current_path(before_);
        fs::remove_all(home_);
    }

    /// A copy of the demo house to break.
    fs::path house() {
        const fs::path copy = home_ / "house";
        fs::copy(home_ / "data/houses/ropewalk", copy, fs::copy_options::recursive);
        return copy;
    }
    static void replaceIn(const fs::path& file, const std::string& from, const std::string& to) {
        std::ifstream in(file);
        std::ostringstream text;
        text << in.rdbuf();
        std::string changed = text.str();
        const auto at = changed.find(from);
        ASSERT_NE(at, std::string::npos) << from;
        changed.replace(at, from.size(), to);
        std::ofstream(file) << changed;
    }

    fs::path home_;
    fs::path before_;
};

constexpr const char* kHouse = "data/houses/ropewalk";

TEST_F(CommandLine, EveryExampleInTheHelpRuns) {
    int examples = 0;
    for (const std::string verb : {"check", "weigh", "sales", "plan", "sheet"}) {
        const Said help = run({verb, "--help"});
        ASSERT_EQ(help.code, 0) << verb;
        std::istringstream lines(help.out);
        bool inExample = false;
        for (std::string line; std::getline(lines, line);) {
            inExample = inExample || line.find("Example") == 0;
            const auto at = line.find("piewright ");
            if (!inExample || at == std::string::npos || line.find("Example") == 0) continue;
            std::vector<std::string> words;
            std::istringstream rest(line.substr(at + 10));
            for (std::string word; rest >> std::quoted(word);) words.push_back(word);
            const Said said = run(words);
            EXPECT_EQ(said.code, 0) << line << '\n' << said.err;
            EXPECT_FALSE(said.out.empty()) << line;
            ++examples;
        }
    }
    EXPECT_GE(examples, 7);
    EXPECT_TRUE(fs::exists("friday.pdf"));
}

TEST_F(CommandLine, WithoutAVerbIsRefused) {
    EXPECT_EQ(run({}).code, 2);
    EXPECT_EQ(run({"bake"}).code, 2);
    EXPECT_EQ(run({"plan"}).code, 2);
    EXPECT_EQ(run({"plan", kHouse, "--no-such-option"}).code, 2);
}

TEST_F(CommandLine, HelpAndVersionAreNoErrors) {
    EXPECT_EQ(run({"--help"}).code, 0);
    EXPECT_THAT(run({"--version"}).out, HasSubstr("piewright "));
}

TEST_F(CommandLine, CheckTellsEveryProblemWithItsPlace) {
    const fs::path copy = house();
    replaceIn(copy / "goods.toml", "price = \"4.90 GBP\"", "price = \"4.90 pounds\"");
    replaceIn(copy / "formulas.toml", "of = \"beef-dripping\"", "of = \"beef-driping\"");
    const Said said = run({"check", copy.string()});
    EXPECT_EQ(said.code, 2);
    EXPECT_THAT(said.err, HasSubstr("goods.toml:"));
    EXPECT_THAT(said.err, HasSubstr("4.90 pounds"));
    EXPECT_THAT(said.err, HasSubstr("formulas.toml:"));
    EXPECT_THAT(said.err, HasSubstr("did you mean \"beef-dripping\"?"));
    const Said json = run({"check", copy.string(), "--json"});
    EXPECT_EQ(json.code, 2);
    EXPECT_THAT(json.out, HasSubstr("\"fault\": \"input\""));
}

TEST_F(CommandLine, AHalfWrongBookNeverYieldsAPlan) {
    const fs::path copy = house();
    replaceIn(copy / "goods.toml", "hold = \"2 h 30 min\"", "hold = \"2.5 hours\"");
    const Said said = run({"plan", copy.string(), "--pdf", "sheets.pdf", "--plan", "plan.json"});
    EXPECT_EQ(said.code, 2);
    EXPECT_TRUE(said.out.empty());
    EXPECT_FALSE(fs::exists("sheets.pdf"));
    EXPECT_FALSE(fs::exists("plan.json"));
}

TEST_F(CommandLine, WhatIsNotThereIsTheWorldsFault) {
    EXPECT_EQ(run({"check", "no-such-house"}).code, 3);
    EXPECT_EQ(run({"plan", kHouse, "--sales", "no-such.csv"}).code, 3);
    EXPECT_EQ(run({"sheet", "no-such.json"}).code, 3);
    const Said said = run({"plan", kHouse, "--pdf", "no/such/folder/sheets.pdf"});
    EXPECT_EQ(said.code, 3);
    EXPECT_THAT(said.err, HasSubstr("no/such/folder"));
}

TEST_F(CommandLine, ADateThatIsNoneIsRefused) {
    EXPECT_THAT(run({"plan", kHouse, "--date", "2026-02-30"}).err, HasSubstr("2026-02-30"));
    EXPECT_EQ(run({"plan", kHouse, "--date", "tomorrow"}).code, 2);
    const Said shut = run({"plan", kHouse, "--date", "2026-12-25"});
    EXPECT_EQ(shut.code, 2);
    EXPECT_THAT(shut.err, HasSubstr("shut"));
}

TEST_F(CommandLine, WeighWantsTheRightAmountForWhatItWeighs) {
    EXPECT_EQ(run({"weigh", kHouse, "beef-pie"}).code, 2);
    EXPECT_EQ(run({"weigh", kHouse, "beef-pie", "--make", "3 kg"}).code, 2);
    EXPECT_EQ(run({"weigh", kHouse, "base-paste", "--pieces", "3"}).code, 2);
    EXPECT_EQ(run({"weigh", kHouse, "base-paste", "--make", "3 kilos"}).code, 2);
    const Said slip = run({"weigh", kHouse, "base-past", "--make", "10 kg"});
    EXPECT_EQ(slip.code, 2);
    EXPECT_THAT(slip.err, HasSubstr("did you mean \"base-paste\"?"));
    EXPECT_EQ(run({"weigh", kHouse, "base-paste", "--make", "10 kg", "--json"}).code, 0);
}

TEST_F(CommandLine, APlanReadBackPrintsTheSameSheets) {
    ASSERT_EQ(run({"plan", kHouse, "--plan", "plan.json", "--pdf", "one.pdf"}).code, 0);
    ASSERT_EQ(run({"sheet", "plan.json", "--pdf", "two.pdf"}).code, 0);
    const auto bytes = [](const char* file) {
        std::ifstream in(file, std::ios::binary);
        std::ostringstream text;
        text << in.rdbuf();
        return text.str();
    };
    EXPECT_EQ(bytes("one.pdf"), bytes("two.pdf"));
    EXPECT_GT(bytes("one.pdf").size(), 10'000U);
}

TEST_F(CommandLine, AMangledPlanIsRefusedWithItsPlace) {
    ASSERT_EQ(run({"plan", kHouse, "--plan", "plan.json"}).code, 0);
    std::ifstream in("plan.json");
    std::ostringstream text;
    text << in.rdbuf();
    for (const std::size_t keep : {0UL, 1UL, 100UL, text.str().size() / 2, text.str().size() - 3}) {
        std::ofstream("cut.json") << text.str().substr(0, keep);
        const Said said = run({"sheet", "cut.json", "--pdf", "cut.pdf"});
        EXPECT_EQ(said.code, 2) << keep;
        EXPECT_THAT(said.err, HasSubstr("cut.json"));
    }
    EXPECT_FALSE(fs::exists("cut.pdf"));
}

TEST_F(CommandLine, HostileSalesAreRefusedAndNothingIsWritten) {
    std::ofstream("binary.csv", std::ios::binary) << std::string("\x7f"
                                                                 "ELF\0\0\1\2",
                                                                 8)
                                                  << std::string(5000, '\xff');
    std::ofstream("empty.csv") << "";
    std::ofstream("long.csv") << "date,item,quantity\n\"" << std::string(300'000, 'x');
    for (const std::string file : {"binary.csv", "empty.csv", "long.csv"}) {
        const Said said = run({"plan", kHouse, "--sales", file, "--pdf", "sheets.pdf"});
        EXPECT_EQ(said.code, 2) << file;
        EXPECT_FALSE(said.err.empty()) << file;
        EXPECT_FALSE(fs::exists("sheets.pdf"));
    }
}

} // namespace
} // namespace piewright
