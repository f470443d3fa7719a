#include "day/tell_cards.h"

#include "cost/standard.h"
#include "formula/water.h"
#include "units/text.h"

#include <algorithm>
#include <map>
#include <set>

namespace piewright::day {

namespace {

using book::Book;
using book::Formula;

std::string nameOf(const Book& book, const book::StuffOrFormula& of) {
    if (const auto* stuff = std::get_if<StuffId>(&of)) return book.stuffs.at(*stuff).name;
    return book.formulas.at(std::get<FormulaId>(of)).name;
}

bool isWater(const Book& book, const book::StuffOrFormula& of) {
    const auto* stuff = std::get_if<StuffId>(&of);
    return stuff && book.stuffs.at(*stuff).water;
}

void collectAllergens(const Book& book, const Formula& formula, std::set<std::string>& into) {
    for (const book::Line& line : formula.lines) {
        if (const auto* stuff = std::get_if<StuffId>(&line.of)) {
            const auto& allergens = book.stuffs.at(*stuff).allergens;
            into.insert(allergens.begin(), allergens.end());
        } else {
            collectAllergens(book, book.formulas.at(std::get<FormulaId>(line.of)), into);
        }
    }
    // Re-worked surplus carries its own allergens into the paste.
    if (formula.reworkFrom && *formula.reworkFrom != formula.id)
        for (const book::Line& line : book.formulas.at(*formula.reworkFrom).lines)
            if (const auto* stuff = std::get_if<StuffId>(&line.of)) {
                const auto& allergens = book.stuffs.at(*stuff).allergens;
                into.insert(allergens.begin(), allergens.end());
            }
}

/// Water at the temperature that brings the paste to its target, as ice and tap water where it must be colder than the
/// tap.
void addWater(const Book& book, const Formula& formula, Mass mass, WeighCard& card) {
    const book::UsualTemperatures& usual = book.house.usual;
    std::vector<Celsius> others{usual.flour, usual.room};
    if (formula.temperature->countFat) others.push_back(usual.fat);
    const Celsius needed =
        formula::waterTemperature(formula.temperature->target, others, formula.temperature->friction);
    const auto ice = formula::iceFor(mass, usual.tap, needed, usual.ice);
    if (!ice) {
        const Finding& finding = ice.problems().findings.front();
        card.lines.push_back({"Water, as cold as you can", mass, std::nullopt, finding.saw + "; " + finding.want});
        return;
    }
    if (ice->ice > Mass{}) {
        card.lines.push_back({"Ice", ice->ice, usual.ice, {}});
        card.lines.push_back({"Water from the tap", ice->water, usual.tap, "with the ice as " + handText(needed)});
        return;
    }
    card.lines.push_back({"Water", mass, needed, {}});
}

} // namespace

WeighCard cardOf(const book::Book& book, const DayBatches& batches, const Batch& batch) {
    const Formula& formula = *batch.formula;
    WeighCard card;
    card.id = cardId(batch);
    card.formula = formula.name;
    card.number = batch.number;
    card.of = batch.of;
    card.forTomorrow = !batch.forDates.empty();
    for (const Date date : batch.forDates) card.forWhen += (card.forWhen.empty() ? "" : ", ") + longDate(date);
    card.vessel = batch.vessel ? batch.vessel->name : "";
    for (const formula::WeighedLine& line : batch.weighed.lines) {
        if (isWater(book, line.of) && formula.temperature) {
            addWater(book, formula, line.weighed, card);
            continue;
        }
        CardLine out{nameOf(book, line.of), line.weighed, std::nullopt, {}};
        if (!line.prepName.empty()) out.note = line.prepName + ", from " + handText(line.bought) + " bought";
        card.lines.push_back(std::move(out));
    }
    card.in = batch.weighed.in;
    card.out = batch.weighed.out;
    for (const formula::LostMass& lost : batch.weighed.lost) card.lost.emplace_back(lost.at, lost.mass);
    card.scaleStep = book.house.scaleStep;
    card.roundingError = batch.weighed.roundingError;
    if (formula.temperature) card.target = formula.temperature->target;
    for (const HeadsFrom& from : batch.heads) {
        const PieceKind& kind = batches.kinds[from.kind];
        card.yields.push_back(std::to_string(from.heads) + (from.heads == 1 ? " head of " : " heads of ") +
                              handText(kind.heads.headWeight) + ": " + std::to_string(kind.heads.piecesPerHead) +
                              " pieces of " + handText(kind.piece.divided) + " from each");
    }
    card.method = formula.method;
    std::set<std::string> allergens;
    collectAllergens(book, formula, allergens);
    card.allergens.assign(allergens.begin(), allergens.end());
    for (const book::Step& step : book.routes.at(formula.route).steps)
        for (const book::Caution caution : step.cautions)
            if (std::find(card.cautions.begin(), card.cautions.end(), caution) == card.cautions.end())
                card.cautions.push_back(caution);
    return card;
}

std::vector<PiecesLine> piecesOf(const book::Book& book, const DayLots& lots, const DayBatches& batches) {
    std::vector<PiecesLine> lines;
    std::map<std::pair<const book::Good*, Part>, std::int64_t> wanted;
    for (const Lot& lot : lots.lots) {
        if (lot.good->base) wanted[{lot.good, Part::Base}] += lot.pieces;
        if (lot.good->lid) wanted[{lot.good, Part::Lid}] += lot.pieces;
    }
    for (const PieceKind& kind : batches.kinds) {
        const Formula& paste = book.formulas.at(kind.paste);
        PiecesLine line;
        Length thickness;
        for (const auto& [good, part] : kind.uses) {
            line.good += (line.good.empty() ? "" : ", ") + good->name;
            line.part = (part == Part::Base ? "base, " : "lid, ") + paste.name;
            line.pieces += wanted[{good, part}];
            thickness = part == Part::Base ? good->base->thickness : good->lid->thickness;
        }
        line.each = kind.piece.divided;
        line.onPie = kind.piece.onPie;
        line.heads = kind.heads.heads;
        line.perHead = kind.heads.piecesPerHead;
        line.head = kind.heads.headWeight;
        line.finished = thickness;
        // What the paste is sure to have rested: the gauge is for that; longer rests spring back less.
        line.gauge =
            pastry::gaugeFor(thickness, pastry::springbackAfter(paste.springback, paste.relaxation, paste.rest));
        line.blankLength = kind.piece.blankLength;
        line.blankWidth = kind.piece.blankWidth;
        lines.push_back(std::move(line));
    }
    return lines;
}

std::vector<Needed> neededFor(const book::Book& book, const std::vector<const DayBatches*>& all) {
    std::vector<Needed> list;
    std::map<StuffId, Mass> bought;
    for (const DayBatches* batches : all)
        for (const Batch& batch : batches->batches)
            for (const formula::WeighedLine& line : batch.weighed.lines)
                if (const auto* stuff = std::get_if<StuffId>(&line.of)) bought[*stuff] += line.bought;
    for (const auto& [id, mass] : bought) {
        const book::Stuff& stuff = book.stuffs.at(id);
        if (stuff.water) continue;
        Needed needed{stuff.name, mass, 0, {}};
        if (!stuff.packs.empty()) {
            const book::Pack& pack = stuff.packs.front();
            needed.packs = wholeLots(mass, pack.mass);
            needed.pack = (pack.name.empty() ? "pack" : pack.name) + " of " +
                          (pack.count    ? std::to_string(*pack.count)
                           : pack.volume ? handText(*pack.volume)
                                         : handText(pack.mass));
        }
        list.push_back(std::move(needed));
    }
    return list;
}

namespace {

std::string whereText(const Book& book, const pastry::Surplus& surplus) {
    switch (surplus.goes) {
    case pastry::SurplusGoes::Kept:
        return "kept chilled: " + surplus.why;
    case pastry::SurplusGoes::Reworked:
        return "re-worked into " + book.formulas.at(surplus.into).name + ": " + surplus.why;
    case pastry::SurplusGoes::Discarded:
        break;
    }
    return "thrown away and written down: " + surplus.why;
}

void addSurplus(const Told& told, Plan& plan) {
    const Book& book = told.book;
    std::map<FormulaId, Mass> receiving;
    for (const Batch& batch : told.work.today.batches)
        if (batch.formula->makes == book::Makes::Paste) receiving[batch.formula->id] += batch.weighed.out;
    const auto next = nextOpen(book.house, told.clock.date());
    const Seconds until = next ? Seconds(*next - told.clock.date()) : Seconds(Days(7));
    std::map<FormulaId, Mass> trim;
    const auto tellOf = [&](const FormulaId& paste, std::int64_t pieces, Mass each, bool counted,
                            const std::string& what) {
        for (const pastry::Surplus& surplus : pastry::whereSurplusGoes(book, paste, pieces, each, until, receiving)) {
            if (surplus.pieces == 0) continue;
            if (surplus.goes == pastry::SurplusGoes::Reworked) {
                // The limit is for all that goes back into that paste together.
                const double most = asFraction(*book.formulas.at(surplus.into).reworkMost);
                receiving[surplus.into] -= scaled(surplus.mass, most > 0 ? 1 / most : 0);
                receiving[surplus.into] = std::max(Mass{}, receiving[surplus.into]);
            }
            plan.surplus.push_back({what, counted ? surplus.pieces : 0, surplus.mass, whereText(book, surplus)});
        }
    };
    // Trim and odd paste go where they go in scraps, not whole.
    const Mass scrap = grams(10);
    const auto tellOfMass = [&](const FormulaId& paste, Mass mass, const std::string& what) {
        if (mass >= scrap) tellOf(paste, mass.raw() / scrap.raw(), scrap, false, what);
    };
    for (const PieceKind& kind : told.work.today.kinds) {
        std::string goods;
        std::int64_t pieces = 0;
        for (const auto& [good, part] : kind.uses) {
            if (!goods.empty()) goods += ", ";
            goods += good->name + (part == Part::Base ? " base" : " lid");
        }
        pieces = kind.heads.heads * kind.heads.piecesPerHead - kind.heads.surplus;
        trim[kind.paste] += kind.piece.trim * pieces;
        if (kind.heads.surplus > 0)
            tellOf(kind.paste, kind.heads.surplus, kind.piece.divided, true, "Pieces: " + goods);
    }
    for (const auto& [paste, mass] : trim) tellOfMass(paste, mass, "Trim of " + book.formulas.at(paste).name);
    for (const Batch& batch : told.work.today.batches) {
        Mass pressed;
        for (const HeadsFrom& from : batch.heads)
            pressed += told.work.today.kinds[from.kind].heads.headWeight * from.heads;
        if (batch.heads.empty() || batch.weighed.out - pressed <= book.house.scaleStep * 10) continue;
        tellOfMass(batch.formula->id, batch.weighed.out - pressed,
                   batchName(batch) + " beyond its heads (the mixer's least)");
    }
}

} // namespace

std::string batchName(const Batch& batch) {
    std::string name = batch.formula->name;
    if (batch.of > 1) name += " " + std::to_string(batch.number) + " of " + std::to_string(batch.of);
    return name;
}

std::string cardId(const Batch& batch) {
    std::string id = batch.formula->id.name() + " " + std::to_string(batch.number);
    if (!batch.forDates.empty()) id += " for " + toText(batch.forDates.front());
    return id;
}

std::string takenText(const Told& told, const Lot& lot, book::Takes takes) {
    switch (takes) {
    case book::Takes::Base:
    case book::Takes::Lid: {
        const Part part = takes == book::Takes::Base ? Part::Base : Part::Lid;
        for (const PieceKind& kind : told.work.today.kinds)
            for (const auto& [good, usedAs] : kind.uses)
                if (good == lot.good && usedAs == part) return ", each " + handText(kind.piece.divided);
        return {};
    }
    case book::Takes::Filling:
    case book::Takes::Glaze: {
        std::string text;
        for (const book::Deposit& deposit : lot.good->deposits) {
            const bool glaze = told.book.formulas.at(deposit.formula).makes == book::Makes::Glaze;
            if (glaze == (takes == book::Takes::Glaze)) text += ", each " + handText(deposit.weight);
        }
        return text;
    }
    case book::Takes::Portion:
        break;
    }
    return {};
}

void addBatchPapers(const Told& told, Plan& plan) {
    const DayBatches& today = told.work.today;
    const DayBatches& ahead = told.work.ahead;
    for (const DayBatches* batches : {&today, &ahead})
        for (const Batch& batch : batches->batches) plan.cards.push_back(cardOf(told.book, *batches, batch));
    plan.pieces = piecesOf(told.book, told.work.lots, today);
    plan.needed = neededFor(told.book, {&today, &ahead});
    addSurplus(told, plan);
}

} // namespace piewright::day
