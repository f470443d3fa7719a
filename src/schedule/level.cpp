#include "schedule/level.h"

#include <algorithm>

namespace piewright::schedule {

Level::Level(const Cumulative& cumulative) : capacity_(cumulative.capacity), steps_{{-kNever - 1, 0}} {
    for (const Cumulative::Reserved& reserved : cumulative.reserved) {
        add(reserved.span.from, reserved.span.to, reserved.amount);
    }
}

std::size_t Level::stepAt(Tick tick) const {
    const auto after =
        std::upper_bound(steps_.begin(), steps_.end(), tick, [](Tick t, const Step& step) { return t < step.from; });
    return static_cast<std::size_t>(after - steps_.begin()) - 1;
}

Tick Level::nextFit(Tick from, const Stretch& stretch, int amount) const {
    if (stretch.duration() == 0 || amount == 0) return from;
    Tick start = from;
    Tick end = stretch.end(start);
    for (std::size_t i = stepAt(from); i < steps_.size() && (steps_[i].from < start || steps_[i].from < end); ++i) {
        if (steps_[i].taken + amount > capacity_) {
            if (i + 1 == steps_.size()) return kNever;
            start = stretch.start(steps_[i + 1].from);
            end = stretch.end(start);
        }
    }
    return start;
}

std::size_t Level::splitAt(Tick tick) {
    const std::size_t i = stepAt(tick);
    if (steps_[i].from == tick) {
        return i;
    }
    steps_.insert(steps_.begin() + static_cast<std::ptrdiff_t>(i) + 1, Step{tick, steps_[i].taken});
    return i + 1;
}

void Level::add(Tick start, Tick end, std::int64_t amount) {
    if (start >= end || amount == 0) {
        return;
    }
    std::size_t first = splitAt(start);
    std::size_t last = splitAt(end);
    for (std::size_t i = first; i < last; ++i) {
        steps_[i].taken += amount;
    }
    // Steps of the same height are one step.
    if (steps_[last].taken == steps_[last - 1].taken) {
        steps_.erase(steps_.begin() + static_cast<std::ptrdiff_t>(last));
    }
    if (first > 0 && steps_[first].taken == steps_[first - 1].taken) {
        steps_.erase(steps_.begin() + static_cast<std::ptrdiff_t>(first));
    }
}

} // namespace piewright::schedule
