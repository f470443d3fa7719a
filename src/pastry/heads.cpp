#include "pastry/heads.h"

#include "units/text.h"

#include <algorithm>

namespace piewright::pastry {

namespace {

Problems outsideDivider(const book::Gear& divider, Mass pieceWeight, Mass headWeight) {
    const std::int64_t pieces = divider.pieces;
    std::string want = "a piece";
    if (divider.least) want += " of at least " + handText(Mass::ofRaw((divider.least->raw() + pieces - 1) / pieces));
    if (divider.most)
        want += std::string(divider.least ? " and" : " of") + " at most " +
                handText(Mass::ofRaw(divider.most->raw() / pieces));
    std::string limits;
    if (divider.least) limits += "at least " + handText(*divider.least);
    if (divider.most) limits += (limits.empty() ? "" : " and ") + ("at most " + handText(*divider.most));
    return Problems::one(Fault::Input,
                         std::to_string(pieces) + " pieces of " + handText(pieceWeight) + " make a head of " +
                             handText(headWeight) + "; " + divider.name + " takes " + limits,
                         std::move(want));
}

Surplus part(std::int64_t pieces, Mass pieceWeight, SurplusGoes goes, FormulaId into, std::string why) {
    return {pieces, pieceWeight * pieces, goes, std::move(into), std::move(why)};
}

struct Taker {
    FormulaId id;
    Mass room; ///< how much it may take back today
};

/// Pastes that take this one back, its own first, then by name.
std::vector<Taker> takers(const book::Book& book, const FormulaId& paste, const std::map<FormulaId, Mass>& receiving) {
    std::vector<Taker> own;
    std::vector<Taker> others;
    for (const auto& [id, mass] : receiving) {
        const book::Formula& formula = book.formulas.at(id);
        if (!formula.reworkMost || (id != paste && formula.reworkFrom != paste)) continue;
        const double room = static_cast<double>(mass.raw()) * asFraction(*formula.reworkMost);
        (id == paste ? own : others).push_back({id, Mass::ofRaw(static_cast<std::int64_t>(room))});
    }
    own.insert(own.end(), others.begin(), others.end());
    return own;
}

} // namespace

Result<Heads> headsFor(std::int64_t pieces, Mass pieceWeight, const book::Gear& divider) {
    if (divider.pieces <= 0)
        return Problems::one(Fault::Input, divider.name + " presses no pieces from a head", "pieces of at least 1");
    Heads heads;
    heads.piecesPerHead = divider.pieces;
    heads.headWeight = pieceWeight * divider.pieces;
    if ((divider.least && heads.headWeight < *divider.least) || (divider.most && heads.headWeight > *divider.most))
        return outsideDivider(divider, pieceWeight, heads.headWeight);
    if (pieces <= 0) return heads;
    heads.heads = (pieces - 1) / divider.pieces + 1;
    heads.surplus = heads.heads * divider.pieces - pieces;
    return heads;
}

std::vector<Surplus> whereSurplusGoes(const book::Book& book, const FormulaId& paste, std::int64_t pieces,
                                      Mass pieceWeight, Seconds untilNextUse,
                                      const std::map<FormulaId, Mass>& receiving) {
    if (pieces <= 0 || pieceWeight <= Mass{}) return {};
    const book::Formula& formula = book.formulas.at(paste);
    if (formula.keeps && *formula.keeps >= untilNextUse)
        return {part(pieces, pieceWeight, SurplusGoes::Kept, {}, "keeps " + handText(*formula.keeps) + " chilled")};

    const std::string tooLong =
        formula.keeps ? "keeps " + handText(*formula.keeps) + ", next used after " + handText(untilNextUse)
                      : std::string("the book names no time it keeps for");
    std::vector<Surplus> parts;
    std::int64_t left = pieces;
    for (const Taker& taker : takers(book, paste, receiving)) {
        const std::int64_t taken = std::min(left, taker.room.raw() / pieceWeight.raw());
        if (taken <= 0) continue;
        parts.push_back(part(taken, pieceWeight, SurplusGoes::Reworked, taker.id, tooLong));
        left -= taken;
    }
    if (left > 0)
        parts.push_back(part(left, pieceWeight, SurplusGoes::Discarded, {},
                             tooLong + (parts.empty() ? "; no paste of the day takes it back"
                                                      : "; over the limit of what takes it back")));
    return parts;
}

} // namespace piewright::pastry
