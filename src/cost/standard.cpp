#include "cost/standard.h"

#include "formula/weigh.h"
#include "pastry/tin.h"

#include <algorithm>
#include <cmath>

namespace piewright::cost {

namespace {

/// Whole batches and their price. Pieces take their part of it: a loss that is fixed for the batch is shared by all
/// that comes out of it, and with a thousand of them rounding to the ten-thousandth is nothing in a piece.
struct Batches {
    Money price;
    Mass out;
};
constexpr std::int64_t kPricedTogether = 1'000;
using Prices = std::map<FormulaId, Batches>;

/// A price times a plain factor. Prices and weights are bounded by the reader, their products are not: ten thousand
/// million of the currency is where we stop counting, far enough under the counter's end for any number of lines to be
/// summed.
Money boundedTimes(Money price, double factor) {
    constexpr double kMost = 1e14;
    const double exact = static_cast<double>(price.tenThousandths()) * factor;
    return {std::llround(std::clamp(exact, -kMost, kMost)), price.currency()};
}

Money partOf(const Prices& prices, const FormulaId& formula, Mass mass) {
    const Batches& batches = prices.at(formula);
    return boundedTimes(batches.price, ratio(mass, batches.out));
}

Mass usualInput(const book::Book& book, const book::Formula& formula) {
    constexpr Mass kLarge = kilograms(100);
    Mass in = kLarge;
    if (formula.basis == book::Basis::Weight) in = formula::writtenInput(formula);
    for (const GearId& vessel : formula.vessels)
        if (const auto& most = book.gear.at(vessel).most) {
            in = *most;
            break;
        }
    // A batch that is lost altogether has no price; `split` refuses it where it matters.
    return formula::outputFor(formula, in) > Mass{} ? in : formula::inputFor(formula, kLarge);
}

Batches priced(const book::Book& book, const book::Formula& formula, const Prices& nested) {
    const Mass in = usualInput(book, formula);
    const std::vector<Mass> masses = formula::lineMasses(formula, in);
    Batches batches;
    // At least something, so that what loses all but nothing on the way has a huge price and not none.
    batches.out = std::max(formula::outputFor(formula, in), milligrams(1)) * kPricedTogether;
    for (std::size_t i = 0; i < masses.size(); ++i) {
        const book::Line& line = formula.lines[i];
        const Mass bought = formula::beforePreparation(masses[i], line.prepLoss) * kPricedTogether;
        if (const auto* stuff = std::get_if<StuffId>(&line.of))
            batches.price += priceOf(book.stuffs.at(*stuff), bought);
        else
            batches.price += partOf(nested, std::get<FormulaId>(line.of), bought);
    }
    return batches;
}

} // namespace

Money priceOf(const book::Stuff& stuff, Mass mass) {
    const book::Pack* cheapest = nullptr;
    const auto perMilligram = [](const book::Pack& pack) {
        return static_cast<double>(pack.price.tenThousandths()) / static_cast<double>(pack.mass.raw());
    };
    for (const book::Pack& pack : stuff.packs)
        if (!cheapest || perMilligram(pack) < perMilligram(*cheapest)) cheapest = &pack;
    return cheapest ? boundedTimes(cheapest->price, ratio(mass, cheapest->mass)) : Money{};
}

Money ingredientsOf(const book::Book& book, const FormulaId& formula, Mass mass) {
    Prices prices;
    for (const FormulaId& id : formula::usedBy(book, formula))
        prices.emplace(id, priced(book, book.formulas.at(id), prices));
    return partOf(prices, formula, mass);
}

Money ingredientsOf(const book::Book& book, const book::Good& good) {
    Money sum;
    if (good.tin) {
        const book::Tin& tin = book.tins.at(*good.tin);
        const auto densityOf = [&](const book::Sheet& sheet) { return book.formulas.at(sheet.paste).density.value(); };
        if (good.base)
            sum += ingredientsOf(book, good.base->paste,
                                 pastry::basePiece(tin, *good.base, densityOf(*good.base)).divided);
        if (good.lid)
            sum += ingredientsOf(book, good.lid->paste, pastry::lidPiece(tin, *good.lid, densityOf(*good.lid)).divided);
    }
    for (const book::Deposit& deposit : good.deposits) sum += ingredientsOf(book, deposit.formula, deposit.weight);
    return sum;
}

} // namespace piewright::cost
