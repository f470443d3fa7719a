#include "demand/profile.h"

#include <algorithm>
#include <cassert>
#include <cstddef>
#include <cstdlib>

namespace piewright::demand {

QuarterWeights openParts(std::span<const ClockSpan> open) {
    QuarterWeights parts{};
    for (const ClockSpan& span : open) {
        for (std::size_t q = 0; q < kQuarters; ++q) {
            const auto from = std::max(span.from.sinceMidnight().count(), static_cast<std::int64_t>(q) * 15);
            const auto to = std::min(span.to.sinceMidnight().count(), static_cast<std::int64_t>(q + 1) * 15);
            if (to > from) parts[q] = std::min(1.0, parts[q] + static_cast<double>(to - from) / 15);
        }
    }
    return parts;
}

Profile towards(const Profile& prior, double priorPieces, const QuarterWeights& seen, const QuarterWeights& openParts) {
    assert(priorPieces > 0);
    double pieces = priorPieces;
    for (std::size_t q = 0; q < kQuarters; ++q)
        if (openParts[q] > 0) pieces += seen[q];
    Profile result{};
    for (std::size_t q = 0; q < kQuarters; ++q)
        if (openParts[q] > 0) result[q] = (seen[q] + priorPieces * prior[q]) / pieces;
    return result;
}

Profile even(const QuarterWeights& openParts) {
    double sum = 0;
    for (const double part : openParts) sum += part;
    Profile result{};
    if (sum <= 0) return result;
    for (std::size_t q = 0; q < kQuarters; ++q) result[q] = openParts[q] / sum;
    return result;
}

Profile smoothed(const Profile& profile, const QuarterWeights& openParts) {
    Profile result{};
    for (int q = 0; q < kQuarters; ++q) {
        const double share = profile[static_cast<std::size_t>(q)];
        if (share <= 0) continue;
        // A quarter hands its share to itself and its open neighbours; what would fall outside the hours stays inside.
        std::array<double, 5> weight{};
        double sum = 0;
        for (int step = -2; step <= 2; ++step) {
            const int to = q + step;
            if (to < 0 || to >= kQuarters) continue;
            sum += weight[static_cast<std::size_t>(step + 2)] =
                (3 - std::abs(step)) * openParts[static_cast<std::size_t>(to)];
        }
        if (sum <= 0) {
            result[static_cast<std::size_t>(q)] += share;
            continue;
        }
        for (int step = -2; step <= 2; ++step) {
            const double part = weight[static_cast<std::size_t>(step + 2)];
            if (part > 0) result[static_cast<std::size_t>(q + step)] += share * part / sum;
        }
    }
    return result;
}

} // namespace piewright::demand
