#include "demand/joint.h"

#include <algorithm>
#include <cassert>

namespace piewright::demand {

double uniform(Generator& generator) {
    // 53 bits, moved half a step so that neither end is reached.
    return (static_cast<double>(generator() >> 11U) + 0.5) * 0x1p-53;
}

Ranks::Ranks(std::span<const Seen> days) {
    for (std::size_t i = 0; i < days.size(); ++i)
        if (days[i].weight > 0) order_.push_back(i);
    std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
        if (days[a].value != days[b].value) return days[a].value < days[b].value;
        return !days[a].atLeast && days[b].atLeast;
    });
    placeOf_.assign(days.size(), order_.size());
    if (order_.empty()) return;

    std::vector<Seen> sorted;
    sorted.reserve(order_.size());
    for (const std::size_t day : order_) sorted.push_back(days[day]);
    const Redistributed km = redistributeToRight(sorted);
    double sum = 0;
    double weight = 0;
    for (std::size_t i = 0; i < sorted.size(); ++i) {
        placeOf_[order_[i]] = i;
        places_.push_back({sum, sum + km.mass[i], sorted[i].atLeast});
        sum += km.mass[i];
        weightTo_.push_back(weight += sorted[i].weight);
    }
    // The sold-out days above all others share what is left at the top.
    for (std::size_t i = sorted.size(); i > 0 && sorted[i - 1].atLeast; --i) places_[i - 1] = {1 - km.beyond, 1, false};
    // Equal exact values share one stretch of ranks: the order of the days in the list says nothing.
    for (std::size_t i = 0; i < sorted.size();) {
        std::size_t end = i + 1;
        if (!places_[i].atLeast && !sorted[i].atLeast) {
            while (end < sorted.size() && sorted[end].value == sorted[i].value && !sorted[end].atLeast) ++end;
            const Place shared{places_[i].from, places_[end - 1].to, false};
            std::fill(places_.begin() + static_cast<std::ptrdiff_t>(i),
                      places_.begin() + static_cast<std::ptrdiff_t>(end), shared);
        }
        i = end;
    }
}

double Ranks::draw(std::size_t day, Generator& generator) const {
    assert(day < placeOf_.size());
    std::size_t place = placeOf_[day];
    if (place == order_.size()) return uniform(generator);
    while (places_[place].atLeast) {
        const double left = weightTo_[place];
        const double target = left + uniform(generator) * (weightTo_.back() - left);
        const auto found =
            std::upper_bound(weightTo_.begin() + static_cast<std::ptrdiff_t>(place) + 1, weightTo_.end(), target);
        place = std::min(static_cast<std::size_t>(found - weightTo_.begin()), places_.size() - 1);
    }
    const Place& at = places_[place];
    return std::clamp(at.from + uniform(generator) * (at.to - at.from), 0x1p-54, 1 - 0x1p-53);
}

} // namespace piewright::demand
