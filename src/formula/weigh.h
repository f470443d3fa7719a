// From a wanted output back to what goes into the vessel and what must be bought for it: scaling, losses, rounding to
// the scale, nested formulas. Every answer balances: in = out + losses named. Formulas come from a checked book: some
// line is above zero, every share lost is below 100 %, nesting comes to an end.
#pragma once

#include "book/book.h"
#include "finding/result.h"

#include <map>
#include <string>
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

/// One batch that yields about `out` (to within the scale's rounding). `out` is positive; `step` is positive.
/// Each line is rounded to the nearest step, but never to nothing: a line lighter than half a step is weighed to the
/// gram, or to the tenth of a gram below 10 g (at least 0.1 g).
[[nodiscard]] WeighedBatch weigh(const book::Formula& formula, Mass out, Mass step);

/// What must go in so that `out` comes out of `batches` equal batches, before any rounding. Nothing for nothing.
[[nodiscard]] Mass inputFor(const book::Formula& formula, Mass out, int batches = 1);

/// What comes out when `in` goes into one batch; nothing when its fixed losses take it all.
[[nodiscard]] Mass outputFor(const book::Formula& formula, Mass in);

/// The sum of the formula's lines as the book writes them (basis Weight); nothing for basis Flour.
[[nodiscard]] Mass writtenInput(const book::Formula& formula);

/// What each line must be in a batch of `in`, to the milligram and before rounding; the parts sum to `in` exactly.
[[nodiscard]] std::vector<Mass> lineMasses(const book::Formula& formula, Mass in);

/// What is bought (or made) so that `prepared` is left after a preparation that loses `loss` of it: prepared / (1 -
/// loss).
[[nodiscard]] Mass beforePreparation(Mass prepared, Share loss);

struct BatchSplit {
    int count = 0;
    Mass each; ///< output of each, equal; count x each >= total by less than `count` mg
};

/// The fewest equal batches whose *input* lies within the vessel's least and most, before the scale's rounding. When
/// `out` is too little for one batch at the vessel's least, one batch at the least is made: `each` then exceeds `out`
/// and the rest is surplus. No batch for nothing. Problem: a range that no number of equal batches fits (least > most/2
/// leaves gaps), named with both neighbours; a vessel that the fixed losses alone fill; more than 10,000 batches.
Result<BatchSplit> split(const book::Formula& formula, Mass out, std::optional<Mass> least, std::optional<Mass> most);

/// The least output from `out` upwards that `split` takes: `out` itself unless it falls into a gap, then that of one
/// batch more at the vessel's least. Only for a range that takes something (least <= most, most above the fixed
/// losses).
[[nodiscard]] Mass nextThatSplits(const book::Formula& formula, Mass out, std::optional<Mass> least,
                                  std::optional<Mass> most);

/// Everything bought for `out` of a formula, through all nested formulas, as bought weights, unrounded; water too.
/// `formula` is made in `batches`, each nested formula as one batch of all that is needed of it. O(lines).
[[nodiscard]] std::map<StuffId, Mass> boughtFor(const book::Book& book, const FormulaId& formula, Mass out,
                                                int batches = 1);

/// The formula and all that goes into it, each once, each after everything it uses (so the formula itself is last).
[[nodiscard]] std::vector<FormulaId> usedBy(const book::Book& book, const FormulaId& formula);

} // namespace piewright::formula
