// The one JSON form of a plan; docs/formats/plan.md has every field.
#pragma once

#include "day/plan.h"
#include "finding/result.h"

#include <string>
#include <string_view>

namespace piewright::wire {

/// Sorted keys, two-space indent; times as ISO 8601 instants in UTC, weights as `…_mg`, and so on: units in the name.
[[nodiscard]] std::string toJson(const day::Plan& plan);

/// Reads it back: equal in every field. Problems name the path (`tasks[3].start`), what was seen and what is wanted.
/// At most 16 MiB and 32 levels.
Result<day::Plan> planFromJson(std::string_view text, const std::string& file);

/// Findings as JSON, for `--json` of every verb that refuses its input.
[[nodiscard]] std::string toJson(const Problems& problems);

} // namespace piewright::wire
