// An invented day of many short activities, with every feature of the statement: people with skills and shifts, ovens
// whose loads are of one family, freshness, stock of fillings, preferred times, hand-overs, overtime, extra batches.
#pragma once

#include "schedule/problem.h"

#include <cstdint>

namespace piewright::schedule {

struct DaySize {
    int batches = 40; ///< eight activities each
    int pans = 12;    ///< four activities each
    int extras = 4;   ///< batches that may be left out
    int hands = 6;
};

/// The same for the same arguments on every machine. About 8 (batches + extras) + 4 pans + fillings + hands activities.
[[nodiscard]] Problem inventedDay(const DaySize& size, std::uint64_t seed);

} // namespace piewright::schedule
