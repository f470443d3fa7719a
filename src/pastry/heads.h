// Pieces come from whole heads: the divider presses one head into a fixed number of equal pieces.
#pragma once

#include "book/book.h"
#include "finding/result.h"

namespace piewright::pastry {

struct Heads {
    std::int64_t heads = 0;
    int piecesPerHead = 0;
    Mass headWeight;
    std::int64_t surplus = 0; ///< pieces pressed beyond those wanted
};

/// The least whole number of heads for `pieces` pieces. Problem: the head's weight is outside the divider's least and
/// most, with the piece weights that would be inside.
Result<Heads> headsFor(std::int64_t pieces, Mass pieceWeight, const book::Gear& divider);

enum class SurplusGoes { Kept, Reworked, Discarded };
struct Surplus {
    std::int64_t pieces = 0;
    Mass mass;
    SurplusGoes goes = SurplusGoes::Kept;
    FormulaId into; ///< Reworked: the paste it goes into
    std::string why;
};

/// Where surplus pieces (and clean trim) of `paste` go: kept chilled for the next day when the paste keeps that long;
/// else re-worked into a paste that takes it, within that paste's limit on `receiving` (its batches of the day);
/// else discarded, said plainly. Trim that raw filling touched is never passed in here.
[[nodiscard]] std::vector<Surplus> whereSurplusGoes(const book::Book& book, const FormulaId& paste, std::int64_t pieces,
                                                    Mass pieceWeight, Seconds untilNextUse,
                                                    const std::map<FormulaId, Mass>& receiving);

} // namespace piewright::pastry
