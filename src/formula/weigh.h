// From a wanted output back to what goes into the vessel and what must be bought for it: scaling, losses, rounding to the
// scale, nested formulas. Every answer balances: in = out + losses named.
#pragma once

#include "book/book.h"
#include "finding/result.h"

#include <map>
#include <vector>

namespace piewright::formula {

struct WeighedLine {
    book::StuffOrFormula of;
    Mass exact;   ///< what the arithmetic asks for
    Mass weighed; ///< to the scale's step: what the hand weighs
    Mass bought;  ///< before preparation (peel, bone, stalk); equal to `weighed` where nothing is lost
    std::string prepName;
};

struct LostMass {
    std::string at;
    Mass mass;
};

/// One batch on the scale.
struct WeighedBatch {
    FormulaId formula;
    std::vector<WeighedLine> lines;
    Mass in;                    ///< sum of the weighed lines
    std::vector<LostMass> lost; ///< in the order of the formula's losses
    Mass out;                   ///< in - all losses
    Mass wanted;                ///< what was asked for
    Mass roundingError;         ///< sum of weighed - exact: what the scale's step did to the batch
};

/// One batch that yields at least about `out` (to within the scale's rounding). `out` is positive; `step` is positive.
/// Each line is rounded to the nearest step, but never to nothing: a line lighter than half a step is weighed exactly to
/// the gram, or to the tenth of a gram below 10 g.
[[nodiscard]] WeighedBatch weigh(const book::Formula& formula, Mass out, Mass step);

/// What must go in so that `out` comes out of `batches` equal batches, before any rounding.
[[nodiscard]] Mass inputFor(const book::Formula& formula, Mass out, int batches = 1);

struct BatchSplit {
    int count = 0;
    Mass each; ///< output of each, equal; count x each >= total by less than `count` mg
};

/// The fewest equal batches whose *input* lies within the vessel's least and most. When `out` is too little for one
/// batch at the vessel's least, one batch at the least is made: `each` then exceeds `out` and the rest is surplus.
/// Problem: a range that no number of equal batches fits (least > most/2 leaves gaps), named with both neighbours.
Result<BatchSplit> split(const book::Formula& formula, Mass out, std::optional<Mass> least, std::optional<Mass> most);

/// Everything bought for `out` of a formula, through all nested formulas, as bought weights, unrounded.
[[nodiscard]] std::map<StuffId, Mass> boughtFor(const book::Book& book, const FormulaId& formula, Mass out);

} // namespace piewright::formula
