// The level of a good's sales through time, apart from the weekday.
#pragma once

#include <span>
#include <vector>

namespace piewright::demand {

/// One open day of a good in date order.
struct LevelDay {
    double sold = 0;
    double exposure = 1;  ///< what the weekday alone makes of a level of 1; positive
    bool atLeast = false; ///< sold out
};

/// Level after each day: gamma-Poisson discount filter, a <- keep a + sold, b <- keep b + exposure, level = a / b, with
/// the mean over all days as a prior of two days' weight. Sales above four times the expected and four more count as
/// that much; a sold-out day counts as at least the expected. Levels stay within a quarter and four times the mean.
/// levels[i + 1] is the level after day i, levels[0] before the first. `keep` in (0, 1].
/// Source: M. West, J. Harrison, Bayesian Forecasting and Dynamic Models (1997), discount filters for Poisson counts.
[[nodiscard]] std::vector<double> levels(std::span<const LevelDay> days, double keep);

/// The `keep` among {1, 0.99, 0.97, 0.93, 0.88, 0.80} whose level `lead` days before told the days' sales best (mean
/// absolute error over the last 26 weeks of days, exact days only); slower ones win ties and near-ties (1 %).
/// `lead` counts days of the series, at least 1.
[[nodiscard]] double bestKeep(std::span<const LevelDay> days, std::size_t lead);

} // namespace piewright::demand
