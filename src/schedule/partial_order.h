// A schedule as a partial order: which activities hand room on to which others. Whoever keeps these orders keeps every
// resource and person free of clashes, whatever the times are (Policella, Smith, Cesta, Oddi 2004, ICAPS).
#pragma once

#include "schedule/dice.h"
#include "schedule/problem.h"

#include <cstddef>
#include <utility>
#include <vector>

namespace piewright::schedule {

/// Pairs of activities, of those with `isKept`, where the first ends before the second starts, in order of the first's
/// start. Units of a resource are handed on at random where there is a choice, to few different ones.
/// O(n log n + sum of demands).
[[nodiscard]] std::vector<std::pair<std::size_t, std::size_t>>
partialOrder(const Problem& problem, const Schedule& schedule, const std::vector<char>& isKept, Dice& dice);

} // namespace piewright::schedule
