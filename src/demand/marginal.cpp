#include "demand/marginal.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace piewright::demand {

namespace {

constexpr double kParametricDays = 6; // weight of the negative binomial
constexpr double kVarianceDays = 8;   // weight of the variance over all weekdays
constexpr int kEmRounds = 40;
constexpr double kSmallestSize = 0.5; // a wider negative binomial says nothing a shop could use
constexpr double kMostMean = 100'000;

CountDistribution withMoments(double mean, double variance) {
    const double beyondChance = variance - mean;
    if (beyondChance <= mean * 1e-6) return poisson(mean);
    return negativeBinomial(mean, std::max(kSmallestSize, mean * mean / beyondChance));
}

struct Moments {
    double mean = 0;
    double square = 0; // of the value
};

Moments exactPart(const std::vector<PastDay>& days, const Redistributed& km) {
    Moments m;
    for (std::size_t i = 0; i < days.size(); ++i) {
        m.mean += km.mass[i] * days[i].seen.value;
        m.square += km.mass[i] * days[i].seen.value * days[i].seen.value;
    }
    return m;
}

} // namespace

Marginal marginalOf(const std::vector<PastDay>& days, double relativeVariance) {
    assert(!days.empty());
    std::vector<Seen> seen;
    seen.reserve(days.size());
    double weights = 0;
    double squaredWeights = 0;
    for (const PastDay& day : days) {
        seen.push_back(day.seen);
        weights += day.seen.weight;
        squaredWeights += day.seen.weight * day.seen.weight;
    }
    const double effective = weights * weights / squaredWeights;
    const Redistributed km = redistributeToRight(seen);
    const Moments exact = exactPart(days, km);
    const int beyondFrom = static_cast<int>(std::ceil(km.beyondValue - 1e-9));

    // The smallest variance that a mean of this size may have here.
    const auto pooledVariance = [&](double mean) { return mean + relativeVariance * mean * mean; };
    double mean = exact.mean + km.beyond * km.beyondValue;
    double variance = pooledVariance(mean);
    Moments beyond;
    std::vector<CountDistribution> parts;
    std::vector<double> shares;
    if (km.beyond > 0) {
        const double farthest = std::min(kMostMean, 2 * km.beyondValue + 10);
        for (int round = 0; round < kEmRounds; ++round) {
            const CountDistribution tail = givenAtLeast(withMoments(mean, variance), beyondFrom);
            beyond.mean = std::min(farthest, tail.mean());
            const double next = exact.mean + km.beyond * beyond.mean;
            const bool settled = std::abs(next - mean) < 1e-4 * (1 + mean);
            mean = next;
            variance = pooledVariance(mean);
            if (settled) break;
        }
        const CountDistribution tail = givenAtLeast(withMoments(mean, variance), beyondFrom);
        beyond.square = tail.variance() + tail.mean() * tail.mean();
        parts.push_back(tail);
        shares.push_back(km.beyond);
    }
    const double spread = std::max(0.0, exact.square + km.beyond * beyond.square - mean * mean);
    const double unbiased = effective > 1.5 ? spread * effective / (effective - 1) : spread;
    const double drawn = (effective * unbiased + kVarianceDays * pooledVariance(mean)) / (effective + kVarianceDays);
    variance = drawn * (1 + 1 / effective);

    const double pull = spread > 0 ? std::sqrt(std::max(0.0, variance - mean) / spread) : 0;
    for (std::size_t i = 0; i < days.size(); ++i) {
        if (km.mass[i] <= 0) continue;
        parts.push_back(poisson(std::max(0.0, mean + pull * (days[i].seen.value - mean))));
        shares.push_back(km.mass[i]);
    }
    const double parametric = kParametricDays / (effective + kParametricDays);
    for (double& share : shares) share *= 1 - parametric;
    parts.push_back(withMoments(mean, variance));
    shares.push_back(parametric);
    return {mixture(parts, shares), effective, mean, km.beyond};
}

} // namespace piewright::demand
