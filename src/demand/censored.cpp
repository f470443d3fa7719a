#include "demand/censored.h"

#include <algorithm>
#include <cassert>
#include <numeric>

namespace piewright::demand {

Redistributed redistributeToRight(std::span<const Seen> seen) {
    assert(!seen.empty());
    std::vector<std::size_t> order(seen.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        if (seen[a].value != seen[b].value) return seen[a].value < seen[b].value;
        return !seen[a].atLeast && seen[b].atLeast;
    });
    std::vector<double> right(seen.size() + 1); // weight from place i on
    for (std::size_t i = seen.size(); i-- > 0;) right[i] = right[i + 1] + seen[order[i]].weight;

    Redistributed result;
    result.mass.assign(seen.size(), 0);
    // Every hand-over scales all that is to the right by one factor, so the factor is all there is to carry.
    double scale = 1 / right[0];
    for (std::size_t i = 0; i < order.size(); ++i) {
        const Seen& day = seen[order[i]];
        if (!day.atLeast) {
            result.mass[order[i]] = day.weight * scale;
        } else if (right[i + 1] > 0) {
            scale *= right[i] / right[i + 1];
        } else {
            result.beyond = day.weight * scale;
            result.beyondValue = day.value;
        }
    }
    return result;
}

} // namespace piewright::demand
