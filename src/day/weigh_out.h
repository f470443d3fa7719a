// What one good or formula takes, outside any day: for the person who asks "120 of these, what do I weigh?".
#pragma once

#include "book/book.h"
#include "day/plan.h"
#include "finding/result.h"

#include <vector>

namespace piewright::day {

struct WeighedOut {
    std::string what; ///< `120 Beef and onion pie`
    std::vector<PiecesLine> pieces;
    std::vector<WeighCard> cards;
    std::vector<Needed> needed;
};

/// So many pieces or portions of a good. Problems: a batch or head that fits nothing.
Result<WeighedOut> weighOut(const book::Book& book, const book::Good& good, int pieces);

/// So much of a formula, as it comes out.
Result<WeighedOut> weighOut(const book::Book& book, const book::Formula& formula, Mass out);

} // namespace piewright::day
