// Distributions over whole pieces: what a day may want.
#pragma once

#include <span>
#include <vector>

namespace piewright::demand {

/// A distribution over whole pieces: chance(k) of exactly k. Sums to 1 within 1e-9; never empty.
class CountDistribution {
  public:
    /// Weights need not sum to 1; at least one is positive, none negative.
    explicit CountDistribution(const std::vector<double>& weights);

    [[nodiscard]] double chance(int k) const;   ///< of exactly k; 0 outside
    [[nodiscard]] double atMost(int k) const;   ///< of k or fewer
    [[nodiscard]] int quantile(double p) const; ///< least k with atMost(k) >= p; p in (0, 1)
    [[nodiscard]] double mean() const;          ///< O(most)
    [[nodiscard]] double variance() const;      ///< O(most)
    [[nodiscard]] int most() const { return static_cast<int>(cumulative_.size()) - 1; }
    /// Expected min(demand, made), O(made).
    [[nodiscard]] double expectedSold(int made) const;

  private:
    std::vector<double> cumulative_;
};

/// Poisson; `mean` from 0 to 1e6. Worked outward from the mode by ratios of neighbours, so that nothing under- or
/// overflows and no library function decides the last bit; tails below 1e-15 of the whole are left off.
[[nodiscard]] CountDistribution poisson(double mean);

/// Negative binomial of variance mean + mean²/size; `mean` from 0 to 1e6, `size` > 0. Tends to the Poisson as size
/// grows.
[[nodiscard]] CountDistribution negativeBinomial(double mean, double size);

/// `d` given that at least `least` are wanted. All weight on `least` when that is beyond what `d` reaches.
[[nodiscard]] CountDistribution givenAtLeast(const CountDistribution& d, int least);

/// The mixture, each part by its weight (as many as parts, none negative, one positive).
/// Its quantile is not the mixture of the parts' quantiles.
[[nodiscard]] CountDistribution mixture(std::span<const CountDistribution> parts, std::span<const double> weights);

} // namespace piewright::demand
