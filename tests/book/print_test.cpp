// What is printed reads back to an equal book and prints the same again: of the houses, of books changed at random, and
// of small books made up from nothing.
#include "house_texts.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace piewright::book {
namespace {

void holds(const Book& book) {
    const Texts printed = printTexts(book);
    const auto again = readTexts(printed);
    if (!again.ok()) RC_FAIL(findings(again));
    RC_ASSERT(again->book == book);
    RC_ASSERT(printTexts(again->book) == printed);
}

void expectHolds(const Book& book) {
    const Texts printed = printTexts(book);
    const auto again = readTexts(printed);
    ASSERT_TRUE(again.ok()) << findings(again);
    EXPECT_EQ(again->book, book);
    EXPECT_EQ(printTexts(again->book), printed);
}

TEST(Print, TheDemoHouseReadsBackTheSame) { expectHolds(bookOf(ropewalk())); }
TEST(Print, TheCornerShopReadsBackTheSame) { expectHolds(bookOf(cornerShop())); }

TEST(Print, AHousesOwnRulesReadBackTheSame) {
    Texts texts = with(cornerShop(), "house.toml", "rules = \"england\"", "rules = \"own\"");
    texts = withMore(texts, "house.toml",
                     "[tighten]\nhot-hold-temperature = \"65 degC\"\ncook-temperature = \"75 degC\"\n"
                     "[confirm]\nbreak-after = \"the wages council, May\"\n");
    texts["rules.toml"] = "[rules]\nname = \"Ours\"\nplace = \"Here\"\n"
                          "[rule.hot-hold-temperature]\nwhat = \"w\"\nvalue = \"60 degC\"\nbound = \"least\"\n"
                          "source = \"s\"\nconfidence = \"seen\"\n"
                          "[rule.break-after]\nwhat = \"w\"\nvalue = \"5 h\"\nbound = \"most\"\nsource = \"s\"\n"
                          "confidence = \"memory\"\n";
    const Book book = bookOf(texts);
    EXPECT_EQ(book.rules.rules.size(), 3U);
    expectHolds(book);
}

TEST(Print, QuotesWhatNeedsIt) {
    Book book = bookOf(cornerShop());
    book.goods.at(GoodId("pie")).name = "Pie \"as it was\", \\ and ½ größe 味";
    expectHolds(book);
}

std::string text() {
    return *rc::gen::element<std::string>("a", "Beef \"and\" onion", "½ λ 味", "\\back", "#no comment", "'", "x = [1]",
                                          "=");
}
std::int64_t upTo(std::int64_t most) { return *rc::gen::inRange<std::int64_t>(0, most + 1); }
template <class T> T oneOf(std::initializer_list<T> values) { return *rc::gen::elementOf(std::vector<T>(values)); }

Seconds seconds(std::int64_t least, std::int64_t most) { return Seconds(least + upTo(most - least)); }

void changeGood(Good& good, Currency currency) {
    good.name = text();
    good.labelName = *rc::gen::arbitrary<bool>() ? text() : "";
    good.taxClass = *rc::gen::arbitrary<bool>() ? text() : "";
    good.price = Money(20'000 + upTo(9'999'999), currency);
    good.leftover = Money(upTo(40'000) - 20'000, currency);
    good.hold = seconds(60, 90'000);
    good.served = oneOf({Served::Hot, Served::Cold});
    if (good.base) good.base->thickness = micrometres(500 + upTo(10'000));
    if (good.lid) good.lid->trim = Share::ofRaw(upTo(600'000));
    if (!good.deposits.front().volume) good.deposits.front().weight = milligrams(100 + upTo(1'000'000));
    if (good.bake) good.bakeLoss = Share::ofRaw(upTo(600'000));
    if (good.bake) good.bake = seconds(600, 7'200);
    if (good.ovenAt) good.ovenAt = Celsius::ofMilli(80'000 + upTo(270'000));
    good.least = *rc::gen::arbitrary<bool>() ? std::optional<int>(static_cast<int>(upTo(50))) : std::nullopt;
    good.most = *rc::gen::arbitrary<bool>() ? std::optional<int>(50 + static_cast<int>(upTo(50))) : std::nullopt;
    good.everyAtMost = *rc::gen::arbitrary<bool>() ? std::optional<Seconds>(seconds(300, 7'200)) : std::nullopt;
}

void changeFormula(Formula& formula) {
    formula.name = text();
    formula.method.assign(static_cast<std::size_t>(upTo(3)), text());
    formula.losses.clear();
    for (std::int64_t n = upTo(3); n > 0; --n) {
        Loss loss{text(), {}, {}};
        if (*rc::gen::arbitrary<bool>())
            loss.fixed = milligrams(upTo(1'000'000));
        else
            loss.share = Share::ofRaw(upTo(999'999));
        formula.losses.push_back(loss);
    }
    for (Line& line : formula.lines) {
        if (formula.basis == Basis::Weight) line.weight = milligrams(1 + upTo(90'000'000));
        line.prepLoss = Share::ofRaw(upTo(999'999));
        line.prepName = *rc::gen::arbitrary<bool>() ? text() : "";
    }
    if (formula.temperature) {
        formula.temperature->target = Celsius::ofMilli(upTo(50'000));
        formula.temperature->friction = Kelvin::ofRaw(upTo(20'000) - 5'000);
        formula.temperature->countFat = *rc::gen::arbitrary<bool>();
    }
    if (formula.made == Made::SameDay) formula.rest = seconds(0, 3'600);
    if (formula.keeps) formula.keeps = formula.rest + seconds(60, 500'000);
}

void changeHouse(House& house) {
    house.name = text();
    house.place = *rc::gen::arbitrary<bool>() ? text() : "";
    house.scaleStep = milligrams(10 + upTo(999'990));
    house.paper = oneOf({Paper::A4, Paper::Letter});
    house.shown = oneOf({Shown::Metric, Shown::Imperial});
    house.usual.ice = Celsius::ofMilli(-upTo(40'000));
    house.energyPrice = Money(upTo(1'000'000), house.currency);
}

RC_GTEST_PROP(Print, BooksChangedAtRandomReadBackTheSame, ()) {
    static const Book kCorner = bookOf(cornerShop());
    static const Book kDemo = bookOf(ropewalk());
    Book book = *rc::gen::arbitrary<bool>() ? kCorner : kDemo;
    changeHouse(book.house);
    for (auto& [id, good] : book.goods) changeGood(good, book.house.currency);
    for (auto& [id, formula] : book.formulas) changeFormula(formula);
    for (auto& [id, gear] : book.gear) {
        gear.name = text();
        gear.count = 1 + static_cast<int>(upTo(5));
        gear.clean = seconds(0, 3'600);
        if (*rc::gen::arbitrary<bool>()) gear.power = Power::ofRaw(upTo(20'000));
    }
    for (auto& [id, hand] : book.hands) {
        hand.pay = Money(upTo(500'000), book.house.currency);
        for (auto& [skill, pace] : hand.skills) pace = Share::ofRaw(100'000 + upTo(2'900'000));
        const Date from = *parseDate("2026-08-01") + Days(upTo(30));
        if (*rc::gen::arbitrary<bool>()) hand.away = {{from, from + Days(upTo(9))}};
    }
    // What is portioned by volume weighs what its formula's density says.
    for (auto& [id, good] : book.goods)
        for (Deposit& deposit : good.deposits)
            if (deposit.volume) {
                deposit.volume = microlitres(100 + upTo(1'000'000));
                deposit.weight = *deposit.volume * *book.formulas.at(deposit.formula).density;
            }
    holds(book);
}

// A book of some stuffs, formulas that use them and each other, and a portion of each.
Book madeUp() {
    static const Book kCorner = bookOf(cornerShop());
    Book book = kCorner;
    const Currency currency = book.house.currency;
    const auto count = 1 + upTo(5);
    for (std::int64_t i = 0; i < count; ++i) {
        const std::string n = std::to_string(i);
        Stuff stuff;
        stuff.id = StuffId("stuff-" + n);
        stuff.name = text();
        stuff.measure = oneOf({Measure::Mass, Measure::Volume, Measure::Count});
        if (stuff.measure == Measure::Volume) stuff.density = Density::ofRaw(300'000 + upTo(1'700'000));
        if (stuff.measure == Measure::Count) stuff.each = milligrams(10 + upTo(200'000));
        Pack pack{SupplierId("cash"), grams(1 + upTo(20'000)), {}, {}, Money(upTo(900'000), currency), text()};
        if (stuff.measure == Measure::Volume) {
            pack.volume = millilitres(1 + upTo(20'000));
            pack.mass = *pack.volume * *stuff.density;
        }
        if (stuff.measure == Measure::Count) {
            pack.count = 1 + static_cast<int>(upTo(200));
            pack.mass = *stuff.each * *pack.count;
        }
        stuff.packs = {pack};
        stuff.storage = oneOf({Storage::Ambient, Storage::Chilled, Storage::Frozen});
        stuff.allergens = {text()};
        stuff.water = *rc::gen::arbitrary<bool>();
        Formula formula;
        formula.id = FormulaId("made-" + n);
        formula.name = text();
        formula.makes = oneOf({Makes::Filling, Makes::Mash, Makes::Sauce, Makes::Stew, Makes::Jelly, Makes::Other});
        formula.route = RouteId("sauce");
        formula.vessels = {GearId("pan")};
        Line line;
        line.of = stuff.id;
        line.weight = milligrams(1 + upTo(5'000'000));
        formula.lines = {line};
        if (i > 0) {
            line.of = FormulaId("made-" + std::to_string(upTo(i - 1)));
            formula.lines.push_back(line);
        }
        Good good;
        good.id = GoodId("good-" + n);
        good.name = text();
        good.family = FamilyId("made-up");
        good.price = Money(upTo(90'000), currency);
        good.leftover = Money(0, currency);
        good.deposits = {{formula.id, grams(1 + upTo(500)), {}}};
        good.route = RouteId("portion");
        good.hold = seconds(60, 10'000);
        good.soldOn = {oneOf({Weekday(1), Weekday(2)}), Weekday(5)};
        book.stuffs.emplace(stuff.id, stuff);
        book.formulas.emplace(formula.id, formula);
        book.goods.emplace(good.id, good);
    }
    return book;
}

RC_GTEST_PROP(Print, BooksMadeUpReadBackTheSame, ()) { holds(madeUp()); }

} // namespace
} // namespace piewright::book
