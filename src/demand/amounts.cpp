#include "demand/amounts.h"

#include <algorithm>

namespace piewright::demand {

namespace {

// Where one more always pays, the last thousandth of days is as far as a distribution's tail can be believed.
constexpr double kSurest = 0.999;

} // namespace

double criticalFractile(const Worth& worth) {
    const double missed = worth.price - worth.cost;  // lost by making one too few
    const double left = worth.cost - worth.leftover; // lost by making one too many
    if (missed <= 0) return 0;
    if (left <= 0) return 1;
    return missed / (missed + left);
}

Amount amountFor(const CountDistribution& daily, const Worth& worth, std::optional<int> least,
                 std::optional<int> most) {
    Amount amount;
    amount.fractile = criticalFractile(worth);
    if (amount.fractile > 0) amount.pieces = daily.quantile(std::min(amount.fractile, kSurest));
    if (most) amount.pieces = std::min(amount.pieces, *most);
    if (least) amount.pieces = std::max(amount.pieces, *least);
    amount.pieces = std::max(amount.pieces, 0);
    amount.expectedSold = daily.expectedSold(amount.pieces);
    amount.expectedLeft = amount.pieces - amount.expectedSold;
    amount.expectedMissed = daily.mean() - amount.expectedSold;
    return amount;
}

} // namespace piewright::demand
