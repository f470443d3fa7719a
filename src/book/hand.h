// The people.
#pragma once

#include "units/civil.h"
#include "units/id.h"
#include "units/money.h"
#include "units/quantity.h"

#include <map>
#include <string>
#include <vector>

namespace piewright::book {

/// A break of a given length somewhere inside a span of the wall clock.
struct Break {
    Minutes length{0};
    ClockSpan between;

    bool operator==(const Break&) const = default;
};

/// Present from `at.from` to `at.to` on these weekdays; `at.to` past 24:00 is a shift over midnight.
struct Shift {
    std::vector<Weekday> days;
    ClockSpan at;
    std::vector<Break> breaks;

    bool operator==(const Shift&) const = default;
};

/// Days on which a hand is not there, both ends included.
struct Away {
    Date from;
    Date to;

    bool operator==(const Away&) const = default;
};

struct Hand {
    HandId id;
    std::string name;
    std::map<SkillId, Share> skills; ///< pace at each: 100 % is the pace the routes are written for; absent: cannot
    std::vector<Shift> shifts;       ///< at most one on a weekday
    std::vector<Away> away;          ///< in order, apart
    Money pay;                       ///< for an hour
    bool under18 = false;            ///< other work-time rules hold

    bool operator==(const Hand&) const = default;
};

} // namespace piewright::book
