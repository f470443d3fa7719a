// What each limit costs.
#pragma once

#include "schedule/solve.h"

#include <string>
#include <vector>

namespace piewright::schedule {

/// How much less the schedule would cost if a limit were eased by a little.
struct Price {
    std::string limit;     ///< in the user's words
    Cost saved = 0;        ///< 0 or more; of the best schedule found for the eased problem
    bool isProven = false; ///< both schedules are the best there are
};

/// For each limit that has a name and can be eased (see easing.h; `step` ticks for limits in time), dearest first;
/// those that save nothing are left out. `answer` is Proven or Feasible and of `problem`. `options.work` is shared out
/// among the limits, each of which is re-solved from `answer`; `options.begin` and `improved` are not looked at. Solves
/// once for each limit. Where a value is not proven a saving may be missed, or may be due to more search.
[[nodiscard]] std::vector<Price> pricesOf(const Problem& problem, const Answer& answer, const Options& options,
                                          Tick step);

} // namespace piewright::schedule
