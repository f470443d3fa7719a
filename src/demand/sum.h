// Demand of several days together.
#pragma once

#include "demand/forecast.h"

namespace piewright::demand {

/// Distribution of the sum of two independent counts (convolution), O(a.most x b.most).
[[nodiscard]] CountDistribution sumOf(const CountDistribution& a, const CountDistribution& b);

} // namespace piewright::demand
