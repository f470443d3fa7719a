// What a good costs in ingredients at today's pack prices.
#pragma once

#include "book/book.h"

namespace piewright::cost {

/// Ingredients of one piece or portion at the cheapest pack price of each stuff, through yields and losses of every
/// formula, trim counted as used. Hands, energy and packaging are not in it: for the choice of one more or one fewer on
/// a day that is staffed and lit anyway they don't change.
[[nodiscard]] Money ingredientsOf(const book::Book& book, const book::Good& good);

/// Ingredients of a weight of a finished formula. A loss that is fixed for a batch is spread over a usual one: as much
/// as the first vessel with a most takes; else as written; else (flour basis) 100 kg.
[[nodiscard]] Money ingredientsOf(const book::Book& book, const FormulaId& formula, Mass mass);

/// Price of a weight of a stuff at its cheapest pack; nothing for water.
[[nodiscard]] Money priceOf(const book::Stuff& stuff, Mass mass);

} // namespace piewright::cost
