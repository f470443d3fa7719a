// From the book and its sales to the plan of one day.
#pragma once

#include "book/book.h"
#include "day/plan.h"
#include "demand/forecast.h"
#include "finding/result.h"

#include <cstdint>

namespace piewright::day {

struct Request {
    Date date;
    std::uint64_t seed = 1;
    std::uint64_t work = 2'000'000; ///< for the schedule: placements tried
};

/// Amounts, batches, schedule, and the plan that tells them. The schedule has passed the independent checker.
/// Problems (Fault::Input): shut on that date; no feasible day, with the limits that clash; a batch that fits no
/// vessel.
Result<Plan> makePlan(const book::Book& book, const demand::Forecaster& forecaster, const Request& request);

} // namespace piewright::day
