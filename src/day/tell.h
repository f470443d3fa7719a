// The schedule told as a plan for people.
#pragma once

#include "day/plan.h"
#include "day/problem.h"

namespace piewright::day {

/// Everything a plan is told from. All of one date.
struct Told {
    const book::Book& book;
    const Clock& clock;
    const std::vector<Chosen>& amounts; ///< of the date
    const std::vector<Chosen>& over;    ///< cold goods made today for the dates after
    const Work& work;
    const DayProblem& problem;
    const schedule::Schedule& schedule;
};

/// Plain retelling: nothing is decided here.
[[nodiscard]] Plan tell(const Told& told);

/// `Friday 27 November`.
[[nodiscard]] std::string longDate(Date date);

} // namespace piewright::day
