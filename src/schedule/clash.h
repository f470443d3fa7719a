// Why there is no schedule, in the user's words.
#pragma once

#include "schedule/decide.h"
#include "schedule/solve.h"

#include <cstdint>

namespace piewright::schedule {

/// For a decision that found none. Infeasible: a set of limits from which none can be dropped with the infeasibility
/// still proved within the work allowed (deletion filter: Chinneck and Dravnieks 1991, ORSA Journal on Computing 3, in
/// halves as in QuickXplain, Junker 2004, AAAI-04). OutOfTime: limits that, given up, let a schedule be found; or, if
/// no such set turns up, those that were in the way most. Adds the placements tried to `decision.work`.
[[nodiscard]] Clash explain(const Problem& problem, Decision& decision, const Options& options);

} // namespace piewright::schedule
