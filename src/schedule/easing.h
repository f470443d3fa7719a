// A problem with one of its limits eased by a little.
#pragma once

#include "schedule/limits.h"
#include "schedule/problem.h"

#include <optional>

namespace piewright::schedule {

/// The problem with `limit` eased, such that every schedule of the one is a schedule of the other. In time (a lag,
/// window, calendar, setup, the horizon): by `step` ticks either way, calendars at both ends of every span. Room: one
/// unit more; a machine: another of its kind; a skill: one more person who has it, always there. What cannot be eased
/// by a little (a named person is needed): nothing. No faults where `problem` had none.
[[nodiscard]] std::optional<Problem> eased(const Problem& problem, const NamedLimit& limit, Tick step);

} // namespace piewright::schedule
