// A point in time on the learning kernel.
#pragma once

#include "learn/literal.h"
#include "schedule/problem.h"

namespace piewright::schedule {

/// A variable and a constant.
struct Time {
    learn::Variable variable{};
    Tick offset = 0;
};
inline learn::Literal atLeast(Time time, Tick tick) { return learn::atLeast(time.variable, tick - time.offset); }
inline learn::Literal atMost(Time time, Tick tick) { return learn::atMost(time.variable, tick - time.offset); }

} // namespace piewright::schedule
