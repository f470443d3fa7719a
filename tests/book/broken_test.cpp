// A house broken on purpose gives exactly the findings a person must be told, all at once.
#include "house_texts.h"

#include <cstdlib>
#include <fstream>
#include <gtest/gtest.h>
#include <sstream>

namespace piewright::book {
namespace {

// GOLDEN_UPDATE=1 rewrites the file.
void matchesGolden(const std::string& text, const std::string& file) {
    const std::string path = std::string(PIEWRIGHT_SOURCE) + '/' + file;
    if (std::getenv("GOLDEN_UPDATE") != nullptr) std::ofstream(path, std::ios::binary) << text;
    std::ostringstream golden;
    golden << std::ifstream(path, std::ios::binary).rdbuf();
    EXPECT_EQ(text, golden.str());
}

TEST(BrokenHouse, IsToldEverythingAtOnceWithItsPlace) {
    matchesGolden(findings(textsOf("tests/book/data/broken")), "tests/book/data/broken/expected.txt");
}

TEST(BrokenHouse, ASyntaxErrorInOneFileLetsTheOthersBeChecked) {
    const Texts texts = with(with(cornerShop(), "tins.toml", "[tin.round]", "[tin.round"), "goods.toml",
                             "price = \"4.00 GBP\"", "price = \"4.00\"");
    const std::string told = findings(texts);
    EXPECT_NE(told.find("tins.toml:1:11: not TOML: "), std::string::npos) << told;
    EXPECT_NE(told.find("goods.toml:4:9: good.pie.price: \"4.00\" is not an amount of money"), std::string::npos)
        << told;
    // The tin may well stand in the file that could not be read.
    EXPECT_EQ(told.find("is not a tin"), std::string::npos) << told;
}

TEST(BrokenHouse, AMissingFileIsSaidOnceAndNotForEveryNameInIt) {
    Texts texts = cornerShop();
    texts.erase("routes.toml");
    EXPECT_EQ(errors(texts), "routes.toml: the file is missing; want every book to have one\n");
}

TEST(BrokenHouse, AFileThatABookMayDoWithoutIsMissedByWhatUsesIt) {
    Texts texts = cornerShop();
    texts.erase("tins.toml");
    EXPECT_EQ(errors(texts), "goods.toml:5:7: good.pie.tin: \"round\" is not a tin; want a name from tins.toml\n");
}

TEST(BrokenHouse, NothingAtAllIsToldFileByFile) {
    EXPECT_EQ(errors({}), "formulas.toml: the file is missing; want every book to have one\n"
                          "gear.toml: the file is missing; want every book to have one\n"
                          "goods.toml: the file is missing; want every book to have one\n"
                          "hands.toml: the file is missing; want every book to have one\n"
                          "house.toml: the file is missing; want every book to have one\n"
                          "routes.toml: the file is missing; want every book to have one\n"
                          "stuffs.toml: the file is missing; want every book to have one\n");
}

TEST(BrokenHouse, AKeyTwiceIsTold) {
    const std::string told =
        errors(with(cornerShop(), "goods.toml", "family = \"pies\"", "family = \"pies\"\nname = \"Pie\""));
    EXPECT_EQ(told.rfind("goods.toml:4:8: not TOML: ", 0), 0U) << told;
    const std::string tables = errors(withMore(cornerShop(), "goods.toml", "\n[good.pie]\n"));
    EXPECT_NE(tables.find("not TOML: "), std::string::npos) << tables;
}

TEST(BrokenHouse, ATableInTheWrongFileIsToldWhereItBelongs) {
    EXPECT_EQ(errors(withMore(cornerShop(), "goods.toml", "\n[tin.oval]\nname = \"Oval\"\n")),
              "goods.toml:23:2: \"tin\" is no key here; want good (it stands in tins.toml)\n");
}

} // namespace
} // namespace piewright::book
