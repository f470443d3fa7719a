#include "demand/profile.h"

#include <algorithm>
#include <cassert>
#include <cstddef>
#include <cstdint>

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
    constexpr std::array<double, 3> kWeights{3, 2, 1}; // by distance
    Profile result{};
    for (std::size_t q = 0; q < kQuarters; ++q) {
        if (profile[q] <= 0) continue;
        // A quarter hands its share to itself and its open neighbours; what would fall outside the hours stays inside.
        const std::size_t first = q < 2 ? 0 : q - 2;
        const std::size_t last = std::min<std::size_t>(q + 2, kQuarters - 1);
        const auto weight = [&](std::size_t to) { return kWeights.at(to > q ? to - q : q - to) * openParts[to]; };
        double sum = 0;
        for (std::size_t to = first; to <= last; ++to) sum += weight(to);
        if (sum <= 0) {
            result[q] += profile[q];
            continue;
        }
        for (std::size_t to = first; to <= last; ++to) result[to] += profile[q] * weight(to) / sum;
    }
    return result;
}

} // namespace piewright::demand
