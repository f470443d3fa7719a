#include "demand/distribution.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>

namespace piewright::demand {

namespace {

constexpr double kTail = 1e-15;
// Rounding in a running sum must not push a quantile past the step it stands on.
constexpr double kRounding = 1e-12;

std::size_t at(int k) { return static_cast<std::size_t>(k); }

/// Weights over 0, 1, … given the mode and the ratio of chance(k + 1) to chance(k), which falls below 1 past the mode.
template <class Ratio> CountDistribution fromMode(int mode, Ratio ratio) {
    std::vector<double> weights(at(mode) + 1);
    weights[at(mode)] = 1;
    double sum = 1;
    for (int k = mode; k > 0; --k) {
        const double weight = weights[at(k)] / ratio(k - 1);
        weights[at(k - 1)] = weight;
        sum += weight;
        if (weight < kTail * sum) break;
    }
    for (int k = mode;; ++k) {
        const double weight = weights.back() * ratio(k);
        if (weight < kTail * sum) break;
        weights.push_back(weight);
        sum += weight;
    }
    return CountDistribution(weights);
}

} // namespace

CountDistribution::CountDistribution(const std::vector<double>& weights) {
    assert(!weights.empty());
    cumulative_.reserve(weights.size());
    double sum = 0;
    for (const double weight : weights) {
        assert(weight >= 0);
        cumulative_.push_back(sum += weight);
    }
    assert(sum > 0);
    for (double& c : cumulative_) c = std::min(1.0, c / sum);
    // Trailing pieces of no chance would make `most` meaningless.
    while (cumulative_.size() > 1 && cumulative_[cumulative_.size() - 2] >= 1.0) cumulative_.pop_back();
    cumulative_.back() = 1.0;
}

double CountDistribution::atMost(int k) const {
    if (k < 0) return 0;
    return k > most() ? 1.0 : cumulative_[at(k)];
}

double CountDistribution::chance(int k) const { return atMost(k) - atMost(k - 1); }

int CountDistribution::quantile(double p) const {
    const auto found = std::lower_bound(cumulative_.begin(), cumulative_.end(), p - kRounding);
    return found == cumulative_.end() ? most() : static_cast<int>(found - cumulative_.begin());
}

double CountDistribution::mean() const { return expectedSold(most()); }

double CountDistribution::variance() const {
    const double m = mean();
    double sum = 0;
    for (int k = 0; k <= most(); ++k) sum += chance(k) * (k - m) * (k - m);
    return sum;
}

double CountDistribution::expectedSold(int made) const {
    // E min(D, n) = P(D > 0) + P(D > 1) + … + P(D > n - 1)
    double sum = 0;
    for (int k = 0, end = std::min(made, most()); k < end; ++k) sum += 1 - cumulative_[at(k)];
    return sum;
}

CountDistribution poisson(double mean) {
    assert(mean >= 0 && mean <= 1e6);
    return fromMode(static_cast<int>(mean), [mean](int k) { return mean / (k + 1); });
}

CountDistribution negativeBinomial(double mean, double size) {
    assert(mean >= 0 && mean <= 1e6 && size > 0);
    if (size > 1e12) return poisson(mean);
    const double success = mean / (mean + size);
    const int mode = size > 1 ? static_cast<int>((size - 1) / size * mean) : 0;
    return fromMode(mode, [=](int k) { return success * (k + size) / (k + 1); });
}

CountDistribution givenAtLeast(const CountDistribution& d, int least) {
    std::vector<double> weights(at(std::max(least, d.most())) + 1);
    double sum = 0;
    for (int k = std::max(0, least); k <= d.most(); ++k) sum += weights[at(k)] = std::max(0.0, d.chance(k));
    if (sum <= 0) weights[at(std::max(0, least))] = 1;
    return CountDistribution(weights);
}

CountDistribution mixture(std::span<const CountDistribution> parts, std::span<const double> weights) {
    assert(parts.size() == weights.size());
    std::vector<double> sum;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (weights[i] <= 0) continue;
        if (sum.size() <= at(parts[i].most())) sum.resize(at(parts[i].most()) + 1);
        double below = 0;
        for (int k = 0; k <= parts[i].most(); ++k) {
            const double upTo = parts[i].atMost(k);
            sum[at(k)] += weights[i] * (upTo - below);
            below = upTo;
        }
    }
    return CountDistribution(sum);
}

} // namespace piewright::demand
