#include "cost/standard.h"

#include <gtest/gtest.h>

namespace piewright::cost {
namespace {

Currency pounds() { return *Currency::of("GBP"); }
Money pence(std::int64_t n) { return {n * 100, pounds()}; }

book::Stuff stuff(const char* id, const std::vector<std::pair<Mass, Money>>& packs) {
    book::Stuff made;
    made.id = StuffId(id);
    for (const auto& [mass, price] : packs) {
        book::Pack pack;
        pack.mass = mass;
        pack.price = price;
        made.packs.push_back(pack);
    }
    return made;
}

book::Line line(book::StuffOrFormula of, Mass weight, Share prepLoss = {}) {
    book::Line made;
    made.of = std::move(of);
    made.weight = weight;
    made.prepLoss = prepLoss;
    return made;
}

book::Formula formula(const char* id, std::vector<book::Line> lines) {
    book::Formula made;
    made.id = FormulaId(id);
    made.lines = std::move(lines);
    return made;
}

/// Flour at 0.80, suet at 4.00, beef at 9.00 a kilogram; water from the tap.
/// Paste: 2 flour, 1 suet, 1 water: (1.60 + 4.00) / 4 = 1.40 a kilogram. Stew: beef that loses 10 % trimmed and 25 %
/// cooked: 9.00 / 0.9 / 0.75 = 13.3333 a kilogram.
book::Book larder() {
    book::Book book;
    for (const book::Stuff& s : {stuff("flour", {{kilograms(16), pence(1280)}}),
                                 stuff("suet", {{kilograms(5), pence(2200)}, {kilograms(10), pence(4000)}}),
                                 stuff("beef", {{kilograms(1), pence(900)}}), stuff("water", {})})
        book.stuffs.emplace(s.id, s);
    book::Formula paste = formula("paste", {line(StuffId("flour"), kilograms(2)), line(StuffId("suet"), kilograms(1)),
                                            line(StuffId("water"), kilograms(1))});
    paste.density = Density::ofRaw(1'220'000);
    book::Formula stew = formula("stew", {line(StuffId("beef"), kilograms(10), percent(10))});
    stew.losses = {{"cooking", percent(25), std::nullopt}};
    book.formulas = {{paste.id, paste}, {stew.id, stew}};
    book::Tin tin;
    tin.id = TinId("tin");
    tin.shape = book::TinShape::Frustum;
    tin.mouthLength = tin.mouthWidth = millimetres(120);
    tin.floorLength = tin.floorWidth = millimetres(100);
    tin.depth = millimetres(25);
    tin.overhang = millimetres(5);
    book.tins.emplace(tin.id, tin);
    return book;
}

TEST(PriceOf, TakesTheCheapestPack) {
    // 4.40 a kilogram in the small tub, 4.00 in the large: 250 g at 4.00 is 1.00.
    EXPECT_EQ(priceOf(larder().stuffs.at(StuffId("suet")), grams(250)), pence(100));
}

TEST(PriceOf, WaterCostsNothing) { EXPECT_EQ(priceOf(larder().stuffs.at(StuffId("water")), kilograms(9)), Money{}); }

TEST(Ingredients, OfAPortionGoThroughEveryLoss) {
    book::Good stew;
    stew.deposits = {{FormulaId("stew"), grams(300), std::nullopt}};
    EXPECT_EQ(ingredientsOf(larder(), stew), pence(400)); // 0.3 x 13.3333
}

TEST(Ingredients, OfAPieAreItsPastesAndItsFilling) {
    // Base 81.653 g and lid 56.677 g at 1.40 a kilogram: 0.11431 and 0.07935; 150 g stew: 2.0000.
    book::Good pie;
    pie.tin = TinId("tin");
    pie.base = book::Sheet{FormulaId("paste"), micrometres(3'500), Share{}};
    pie.lid = pie.base;
    pie.deposits = {{FormulaId("stew"), grams(150), std::nullopt}};
    EXPECT_EQ(ingredientsOf(larder(), pie), Money(1'143 + 793 + 20'000, pounds()));
}

TEST(Ingredients, CountTrimAsUsed) {
    book::Good lid;
    lid.tin = TinId("tin");
    lid.lid = book::Sheet{FormulaId("paste"), micrometres(3'500), Share{}};
    const Money whole = ingredientsOf(larder(), lid);
    lid.lid->trim = percent(50);
    // Half is cut off: twice as much is divided, to a ten-thousandth.
    EXPECT_NEAR(static_cast<double>(ingredientsOf(larder(), lid).tenThousandths()),
                static_cast<double>((whole * 2).tenThousandths()), 1);
}

TEST(Ingredients, OfNestedFormulasAddUp) {
    book::Book book = larder();
    // Equal parts stew and paste: (13.3333 + 1.40) / 2 = 7.36667 a kilogram.
    const book::Formula both =
        formula("both", {line(FormulaId("stew"), grams(500)), line(FormulaId("paste"), grams(500))});
    book.formulas.emplace(both.id, both);
    EXPECT_EQ(ingredientsOf(book, both.id, kilograms(3)), pence(2210));
}

TEST(Ingredients, SpreadAFixedLossOverAFullVessel) {
    book::Book book = larder();
    book::Gear kettle;
    kettle.id = GearId("kettle");
    kettle.most = kilograms(20);
    book.gear.emplace(kettle.id, kettle);
    book::Formula& stew = book.formulas.at(FormulaId("stew"));
    stew.losses = {{"kettle", Share{}, kilograms(2)}};
    stew.vessels = {kettle.id};
    // 20 kg in, 18 kg out: 9.00 / 0.9 x 20 / 18 = 11.1111 a kilogram, however small the portion.
    EXPECT_EQ(ingredientsOf(book, stew.id, grams(900)), pence(1000));
    EXPECT_EQ(ingredientsOf(book, stew.id, grams(90)), pence(100));
}

TEST(Ingredients, OfAFlourFormulaFollowItsPercentages) {
    book::Book book = larder();
    book::Formula& paste = book.formulas.at(FormulaId("paste"));
    paste.basis = book::Basis::Flour;
    for (book::Line& l : paste.lines) {
        l.weight = Mass{};
        l.percent = ofFlour(l.of == book::StuffOrFormula(StuffId("flour")) ? 100 : 50);
    }
    EXPECT_EQ(ingredientsOf(book, paste.id, kilograms(1)), pence(140));
}

TEST(Ingredients, OfWhatIsAllLostStillHaveAPrice) {
    book::Book book = larder();
    // Written as 10 kg of which 12 stay in the kettle: no such batch is made, and nothing divides by zero.
    book.formulas.at(FormulaId("stew")).losses = {{"kettle", Share{}, kilograms(12)}};
    // Priced as 100 kg out of 112 kg in.
    EXPECT_EQ(ingredientsOf(book, FormulaId("stew"), kilograms(1)), pence(1120));
}

TEST(Ingredients, OfWhatLosesNearlyAllSeveralTimesAreHugeAndFinite) {
    book::Book book = larder();
    const book::Loss nearlyAll{"steam", Share::ofRaw(999'999), std::nullopt};
    book.formulas.at(FormulaId("stew")).losses = {nearlyAll, nearlyAll, nearlyAll, nearlyAll};
    const Money price = ingredientsOf(book, FormulaId("stew"), kilograms(1));
    EXPECT_GT(price, pence(100'000'000));
}

TEST(Ingredients, OfAnAbsurdPriceStopCountingBeforeTheCounterDoes) {
    book::Book book = larder();
    book.stuffs.at(StuffId("beef")).packs[0].mass = milligrams(1);
    book.stuffs.at(StuffId("beef")).packs[0].price = Money(9'999'999'999'999'999, pounds());
    book.stuffs.at(StuffId("flour")) = book.stuffs.at(StuffId("beef"));
    const book::Formula both =
        formula("both", {line(StuffId("beef"), kilograms(900)), line(StuffId("flour"), kilograms(900))});
    book.formulas.emplace(both.id, both);
    EXPECT_EQ(ingredientsOf(book, both.id, kilograms(900'000'000)), Money(100'000'000'000'000, pounds()));
}

} // namespace
} // namespace piewright::cost
