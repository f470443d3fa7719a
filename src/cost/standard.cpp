#include "cost/standard.h"

#include "formula/weigh.h"
#include "pastry/tin.h"

namespace piewright::cost {

namespace {

/// A whole batch and its price. Pieces take their part of it: dividing a batch's price loses nothing to rounding, and a
/// loss that is fixed for the batch is shared by all that comes out of it.
struct Batch {
    Money price;
    Mass out;
};
using Batches = std::map<FormulaId, Batch>;

Money partOf(const Batches& batches, const FormulaId& formula, Mass mass) {
    const Batch& batch = batches.at(formula);
    return scaled(batch.price, ratio(mass, batch.out));
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

Batch priced(const book::Book& book, const book::Formula& formula, const Batches& nested) {
    const Mass in = usualInput(book, formula);
    const std::vector<Mass> masses = formula::lineMasses(formula, in);
    Batch batch;
    batch.out = formula::outputFor(formula, in);
    for (std::size_t i = 0; i < masses.size(); ++i) {
        const book::Line& line = formula.lines[i];
        const Mass bought = formula::beforePreparation(masses[i], line.prepLoss);
        if (const auto* stuff = std::get_if<StuffId>(&line.of))
            batch.price += priceOf(book.stuffs.at(*stuff), bought);
        else
            batch.price += partOf(nested, std::get<FormulaId>(line.of), bought);
    }
    return batch;
}

} // namespace

Money priceOf(const book::Stuff& stuff, Mass mass) {
    const book::Pack* cheapest = nullptr;
    const auto perMilligram = [](const book::Pack& pack) {
        return static_cast<double>(pack.price.tenThousandths()) / static_cast<double>(pack.mass.raw());
    };
    for (const book::Pack& pack : stuff.packs)
        if (!cheapest || perMilligram(pack) < perMilligram(*cheapest)) cheapest = &pack;
    return cheapest ? scaled(cheapest->price, ratio(mass, cheapest->mass)) : Money{};
}

Money ingredientsOf(const book::Book& book, const FormulaId& formula, Mass mass) {
    Batches batches;
    for (const FormulaId& id : formula::usedBy(book, formula))
        batches.emplace(id, priced(book, book.formulas.at(id), batches));
    return partOf(batches, formula, mass);
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
