// Plans with every field filled at random: for what must hold of any plan at all.
#pragma once

#include "day/plan.h"

#include <cstdint>

namespace piewright::testing {

/// The same seed gives the same plan. Texts hold quotes, controls and letters of several scripts; lists may be empty;
/// numbers reach the bounds of docs/formats/plan.md.
[[nodiscard]] day::Plan randomPlan(std::uint64_t seed);

} // namespace piewright::testing
