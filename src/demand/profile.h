// How a day's demand spreads over its quarter-hours.
#pragma once

#include "demand/history.h"

#include <array>
#include <span>

namespace piewright::demand {

/// Share of the day's demand in each quarter-hour; sums to 1 (all zero only when nothing is known of the day).
using Profile = std::array<double, kQuarters>;

/// Pieces seen by quarter-hour, weighted; need not be whole.
using QuarterWeights = std::array<double, kQuarters>;

/// Part of each quarter-hour of the date that is open, 0 to 1. Hours past midnight belong to the next date and are left
/// off here.
[[nodiscard]] QuarterWeights openParts(std::span<const ClockSpan> open);

/// `seen` held to the open quarter-hours and drawn toward `prior` as if `priorPieces` had been seen with its shape:
/// (seen + priorPieces x prior) / (all seen + priorPieces), the posterior mean under a Dirichlet prior.
/// `prior` sums to 1 and is 0 where shut. `priorPieces` is positive.
[[nodiscard]] Profile towards(const Profile& prior, double priorPieces, const QuarterWeights& seen,
                              const QuarterWeights& openParts);

/// Every open quarter-hour alike, by its open part; all zero when none is open.
[[nodiscard]] Profile even(const QuarterWeights& openParts);

/// Each quarter-hour mixed with its open neighbours (weights 1 2 3 2 1), so that no quarter of an hour stands for
/// itself alone. Keeps the sum.
[[nodiscard]] Profile smoothed(const Profile& profile, const QuarterWeights& openParts);

} // namespace piewright::demand
