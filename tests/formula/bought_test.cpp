#include "formula/formulas.h"
#include "formula/weigh.h"

#include <gmock/gmock.h>

namespace piewright::formula {
namespace {

using testing::ElementsAre;
using testing::Pair;

// Filling: 6 kg stewed beef and 2 kg gravy make 8 kg. Beef loses 20 % trimming before and 25 % cooking. Gravy is stock
// and, again, a little of the stew's liquor.
book::Book kitchen() {
    book::Book book;
    book::Formula beef = named("stewed-beef", book::Basis::Weight);
    beef.lines = {weightLine(StuffId("beef"), kilograms(10), percent(20), "trimmed")};
    beef.losses = {shareLost("cooking", percent(25))};
    book::Formula gravy = named("gravy", book::Basis::Weight);
    gravy.lines = {weightLine(StuffId("stock"), kilograms(3)),
                   weightLine(FormulaId("stewed-beef"), kilograms(1), percent(50), "strained")};
    book::Formula filling = named("filling", book::Basis::Weight);
    filling.lines = {weightLine(FormulaId("stewed-beef"), kilograms(6)), weightLine(FormulaId("gravy"), kilograms(2))};
    add(book, beef);
    add(book, gravy);
    add(book, filling);
    return book;
}

TEST(BoughtFor, GoesThroughNestedFormulas) {
    // 8 kg filling: 6 kg beef + 2 kg gravy; gravy: 1.5 kg stock + 0.5 kg from 1 kg beef: 7 kg stewed beef in all.
    // 7 / 0.75 = 9.33333 kg raw, / 0.8 = 11.66667 kg bought.
    EXPECT_THAT(boughtFor(kitchen(), FormulaId("filling"), kilograms(8)),
                ElementsAre(Pair(StuffId("beef"), milligrams(11'666'666)), Pair(StuffId("stock"), grams(1'500))));
}

TEST(BoughtFor, MakesANestedFormulaAsOneBatch) {
    book::Book book = kitchen();
    book.formulas.at(FormulaId("stewed-beef")).losses = {fixedLost("kettle", kilograms(1))};
    // 7 kg of it in one batch: 8 kg in, 10 kg bought; two batches would be 11.25.
    EXPECT_EQ(boughtFor(book, FormulaId("filling"), kilograms(8)).at(StuffId("beef")), kilograms(10));
}

TEST(BoughtFor, CountsTheBatchesOfTheFormulaItself) {
    book::Book book = kitchen();
    book.formulas.at(FormulaId("stewed-beef")).losses = {fixedLost("kettle", kilograms(1))};
    // 9 kg in three kettles: 12 kg in, 15 kg bought.
    EXPECT_EQ(boughtFor(book, FormulaId("stewed-beef"), kilograms(9), 3).at(StuffId("beef")), kilograms(15));
}

TEST(UsedBy, NamesEachOnceAfterWhatItUses) {
    EXPECT_THAT(usedBy(kitchen(), FormulaId("filling")),
                ElementsAre(FormulaId("stewed-beef"), FormulaId("gravy"), FormulaId("filling")));
}

TEST(BoughtFor, TwiceNestedSixtyTimesIsNoTrouble) {
    // Each uses the one before twice: 2^60 ways down, 60 formulas.
    book::Book book;
    book::Formula first = named("f0", book::Basis::Weight);
    first.lines = {weightLine(StuffId("flour"), grams(1))};
    add(book, first);
    for (int i = 1; i <= 60; ++i) {
        book::Formula next = named(("f" + std::to_string(i)).c_str(), book::Basis::Weight);
        const FormulaId before("f" + std::to_string(i - 1));
        next.lines = {weightLine(before, grams(1)), weightLine(before, grams(1))};
        add(book, next);
    }
    EXPECT_EQ(boughtFor(book, FormulaId("f60"), kilograms(1)).at(StuffId("flour")), kilograms(1));
}

TEST(BoughtFor, AVeryDeepNestIsNoTrouble) {
    book::Book book;
    book::Formula first = named("f0", book::Basis::Weight);
    first.lines = {weightLine(StuffId("flour"), grams(1))};
    add(book, first);
    for (int i = 1; i <= 50'000; ++i) {
        book::Formula next = named(("f" + std::to_string(i)).c_str(), book::Basis::Weight);
        next.lines = {weightLine(FormulaId("f" + std::to_string(i - 1)), grams(1))};
        add(book, next);
    }
    EXPECT_EQ(boughtFor(book, FormulaId("f50000"), kilograms(1)).at(StuffId("flour")), kilograms(1));
}

TEST(BoughtFor, AChainOfNearTotalLossesDoesNotOverflow) {
    book::Book book;
    book::Formula first = named("f0", book::Basis::Weight);
    first.lines = {weightLine(StuffId("flour"), grams(1))};
    add(book, first);
    for (int i = 1; i <= 20; ++i) {
        book::Formula next = named(("f" + std::to_string(i)).c_str(), book::Basis::Weight);
        next.lines = {weightLine(FormulaId("f" + std::to_string(i - 1)), grams(1))};
        next.losses = {shareLost("all but all", Share::ofRaw(999'999))};
        add(book, next);
    }
    // 1e6 mg x 1e6^20 stops at ten thousand tonnes.
    EXPECT_EQ(boughtFor(book, FormulaId("f20"), kilograms(1)).at(StuffId("flour")), kilograms(10'000'000));
}

} // namespace
} // namespace piewright::formula
