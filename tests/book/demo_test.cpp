// The demo house and the corner shop read without a fault, and their books are what their files say.
#include "house_texts.h"

#include <gtest/gtest.h>

namespace piewright::book {
namespace {

const Currency kPounds = *Currency::of("GBP");

TEST(DemoHouse, ReadsFromItsFolder) {
    const auto read = readFolder(std::string(PIEWRIGHT_SOURCE) + "/data/houses/ropewalk");
    ASSERT_TRUE(read.ok()) << findings(read);
    EXPECT_EQ(read->book, bookOf(ropewalk()));
}

TEST(DemoHouse, HasEverythingItsFilesHave) {
    const Book book = bookOf(ropewalk());
    EXPECT_EQ(book.house.name, "Ropewalk Pie House");
    EXPECT_EQ(book.house.zone.name(), "Europe/London");
    EXPECT_EQ(book.house.currency, kPounds);
    EXPECT_EQ(book.house.special.size(), 3U);
    EXPECT_EQ(book.house.usual.tap, celsius(11));
    EXPECT_EQ(book.suppliers.size(), 5U);
    EXPECT_EQ(book.stuffs.size(), 23U);
    EXPECT_EQ(book.formulas.size(), 13U);
    EXPECT_EQ(book.tins.size(), 2U);
    EXPECT_EQ(book.goods.size(), 10U);
    EXPECT_EQ(book.gear.size(), 15U);
    EXPECT_EQ(book.hands.size(), 6U);
    EXPECT_EQ(book.skills.size(), 5U);
    EXPECT_EQ(book.routes.size(), 12U);
}

TEST(DemoHouse, KeepsWhatItSaysAboutAPie) {
    const Book book = bookOf(ropewalk());
    const Good& pie = book.goods.at(GoodId("beef-pie"));
    EXPECT_EQ(pie.id, GoodId("beef-pie"));
    EXPECT_EQ(pie.price, Money(49'000, kPounds));
    EXPECT_EQ(pie.tin, TinId("hand"));
    ASSERT_TRUE(pie.base && pie.lid);
    EXPECT_EQ(pie.base->thickness, millimetres(3));
    EXPECT_EQ(pie.base->trim, percent(12));
    ASSERT_EQ(pie.deposits.size(), 2U);
    EXPECT_EQ(pie.deposits[0].weight, grams(150));
    EXPECT_EQ(pie.ovenAt, celsius(205));
    EXPECT_EQ(pie.bake, Seconds(32 * 60));
    EXPECT_EQ(pie.hold, Seconds(9'000));
    EXPECT_EQ(pie.leftover, Money(6'000, kPounds));
    EXPECT_EQ(pie.served, Served::Hot);
    EXPECT_EQ(pie.least, std::nullopt);
}

TEST(DemoHouse, WeighsWhatIsLadledByVolume) {
    const Book book = bookOf(ropewalk());
    const Deposit& sauce = book.goods.at(GoodId("parsley-sauce")).deposits.front();
    EXPECT_EQ(sauce.volume, millilitres(110));
    EXPECT_EQ(sauce.weight, milligrams(113'300)); // 110 ml x 1.03 g/ml
    const Pack& milk = book.stuffs.at(StuffId("milk")).packs.front();
    EXPECT_EQ(milk.volume, litres(10));
    EXPECT_EQ(milk.mass, grams(10'300)); // 10 l x 1.03 kg/l
    const Pack& eggs = book.stuffs.at(StuffId("eggs")).packs.front();
    EXPECT_EQ(eggs.count, 180);
    EXPECT_EQ(eggs.mass, grams(10'440)); // 180 x 58 g
}

TEST(DemoHouse, TellsStuffsFromFormulasInALine) {
    const Book book = bookOf(ropewalk());
    const auto& lines = book.formulas.at(FormulaId("mushy-peas")).lines;
    EXPECT_EQ(lines[0].of, StuffOrFormula(FormulaId("soaked-peas")));
    EXPECT_EQ(lines[1].of, StuffOrFormula(StuffId("water")));
}

TEST(DemoHouse, TightensTheRuleBook) {
    const Book book = bookOf(ropewalk());
    const Rule* hot = book.rules.find(RuleId("hot-hold-temperature"));
    ASSERT_NE(hot, nullptr);
    EXPECT_EQ(hot->value, RuleValue(celsius(65)));
    EXPECT_TRUE(hot->tightened);
    EXPECT_EQ(hot->before, RuleValue(celsius(63)));
}

TEST(DemoHouse, WarnsOfWhatThePersonShouldLookAt) {
    const std::string told = findings(ropewalk());
    // Shut from Saturday 19:00 to Tuesday 11:00: 5 + 24 + 24 + 11 = 64 h; the fillings keep three days, and nothing is
    // said.
    EXPECT_EQ(told.find("formula.chicken-filling.keeps"), std::string::npos) << told;
    EXPECT_NE(told.find("the rule hot-hold-tolerance of England is not verified"), std::string::npos) << told;
    EXPECT_NE(told.find("under-18"), std::string::npos) << "Cass is";
}

TEST(CornerShop, IsTheSmallestWholeHouse) {
    const Book book = bookOf(cornerShop());
    EXPECT_EQ(book.goods.size(), 2U);
    EXPECT_EQ(book.hands.size(), 2U);
    EXPECT_EQ(book.gear.at(GearId("oven")).decks, 1);
    EXPECT_EQ(book.goods.at(GoodId("sauce")).deposits.front().weight, grams(100));
    const Tin& tin = book.tins.at(TinId("round"));
    EXPECT_EQ(tin.mouthWidth, millimetres(100));
    EXPECT_EQ(tin.floorLength, millimetres(100)); // straight walls
}

TEST(CornerShop, HasNothingToLookAtButUnverifiedRules) {
    const auto read = readTexts(cornerShop());
    ASSERT_TRUE(read.ok());
    for (const Finding& finding : read->warnings) {
        EXPECT_NE(finding.saw.find("is not verified"), std::string::npos);
        EXPECT_EQ(finding.saw.find("under-18"), std::string::npos) << "nobody there is under 18";
    }
    EXPECT_EQ(read->warnings.size(), 2U);
}

TEST(Away, AHandHasNoShiftOnDaysAway) {
    const Book book =
        bookOf(with(cornerShop(), "hands.toml", "pay = \"12.00 GBP\"\n[[hand.bob.shift]]",
                    "pay = \"12.00 GBP\"\naway = [{ from = 2026-08-03, to = 2026-08-14 }]\n[[hand.bob.shift]]"));
    const Hand& bob = book.hands.at(HandId("bob"));
    EXPECT_NE(shiftOn(bob, *parseDate("2026-07-31")), nullptr); // a Friday
    EXPECT_EQ(shiftOn(bob, *parseDate("2026-08-03")), nullptr);
    EXPECT_EQ(shiftOn(bob, *parseDate("2026-08-14")), nullptr);
    EXPECT_NE(shiftOn(bob, *parseDate("2026-08-17")), nullptr);
}

} // namespace
} // namespace piewright::book
