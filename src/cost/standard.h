// What a good costs in ingredients at today's pack prices.
#pragma once

#include "book/book.h"

namespace piewright::cost {

/// Ingredients of one piece or portion at the cheapest pack price of each stuff, through yields and losses of every formula,
/// trim counted as used. Hands, energy and packaging are not in it: for the choice of one more or one fewer on a day that is
/// staffed and lit anyway they don't change.
[[nodiscard]] Money ingredientsOf(const book::Book& book, const book::Good& good);

/// Price of a weight of a stuff at its cheapest pack; nothing for water.
[[nodiscard]] Money priceOf(const book::Stuff& stuff, Mass mass);

} // namespace piewright::cost
