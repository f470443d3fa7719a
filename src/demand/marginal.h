// From comparable past days to the distribution of one day's demand.
#pragma once

#include "demand/distribution.h"
#include "demand/past.h"

#include <string>
#include <vector>

namespace piewright::demand {

struct Marginal {
    CountDistribution daily;
    double effectiveDays = 0; ///< (sum of weights)² / sum of squared weights
    double mean = 0;          ///< of the demand that the days show, sold-out ones redistributed
    double neverSeen = 0;     ///< chance held by days that sold out above all others, known only to be "at least"
};

/// Mixed Poisson: each past day stands for a rate, drawn toward the mean so that rates plus Poisson chance spread
/// exactly as the days did (constrained empirical Bayes, Louis 1984); a negative binomial of the same mean and variance
/// is mixed in with the weight of six days, which smooths and gives tails when days are few. The variance is drawn
/// toward the one over all weekdays and widened for the mean's own uncertainty. Sold-out days are redistributed to the
/// right first; what stays beyond all days follows the negative binomial from there on, with its mean found by
/// iteration (EM). `days` is not empty.
[[nodiscard]] Marginal marginalOf(const std::vector<PastDay>& days, double relativeVariance);

} // namespace piewright::demand
