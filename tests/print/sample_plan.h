// Plans to print: one of an invented shop on a full Friday, and some that strain the sheets.
#pragma once

#include "day/plan.h"

namespace piewright::testing {

/// Friday at the Ropewalk Pie House of Harrowmouth: about 900 pies, five hands, three decks, fifteen mixes.
[[nodiscard]] day::Plan fridayPlan();

/// Nothing to do at all: every list empty.
[[nodiscard]] day::Plan emptyPlan();

/// One hand, one deck, one good; letter paper; warnings.
[[nodiscard]] day::Plan oneHandPlan();

/// Forty goods with long names, three hundred tasks, twelve hands, six decks, long cards.
[[nodiscard]] day::Plan crowdedPlan();

} // namespace piewright::testing
