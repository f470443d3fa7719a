#include "schedule/stock.h"

#include <algorithm>

namespace piewright::schedule {

void Stock::renew() {
    steps_.clear();
    std::int64_t level = reservoir_->initial;
    for (const Booking& booking : bookings_) {
        level += booking.amount;
        if (!steps_.empty() && steps_.back().from == booking.when) {
            steps_.back().level = level;
        } else {
            steps_.push_back({booking.when, level, level, level});
        }
    }
    std::int64_t least = level;
    std::int64_t most = level;
    isSound_ = true;
    for (std::size_t i = steps_.size(); i-- > 0;) {
        least = std::min(least, steps_[i].level);
        most = std::max(most, steps_[i].level);
        steps_[i].least = least;
        steps_[i].most = most;
    }
    isSound_ = least >= reservoir_->least && most <= reservoir_->most;
}

Tick Stock::nextFit(Tick from, int amount) const {
    if (amount == 0) return from;
    const auto isGood = [&](std::int64_t least, std::int64_t most) {
        return amount > 0 ? most + amount <= reservoir_->most : least + amount >= reservoir_->least;
    };
    // What lies before the first step is part of it: the level there must do as well, if we come before that step.
    const auto next =
        std::partition_point(steps_.begin(), steps_.end(), [&](const Step& step) { return step.from <= from; });
    const std::int64_t now = next == steps_.begin() ? reservoir_->initial : (next - 1)->level;
    const bool isGoodNow = isGood(now, now);
    if (isGoodNow && (next == steps_.end() || isGood(next->least, next->most))) return from;
    const auto good =
        std::partition_point(next, steps_.end(), [&](const Step& step) { return !isGood(step.least, step.most); });
    return good == steps_.end() ? kNever : good->from;
}

Stock::Change Stock::firstBeyond(std::span<const Change> more) const {
    std::vector<Change> changes(more.begin(), more.end());
    std::sort(changes.begin(), changes.end(), [](const Change& x, const Change& y) { return x.when < y.when; });
    std::size_t i = 0;
    std::size_t j = 0;
    std::int64_t level = reservoir_->initial;
    std::int64_t added = 0;
    while (i < steps_.size() || j < changes.size()) {
        const Tick when = j == changes.size()  ? steps_[i].from
                          : i == steps_.size() ? changes[j].when
                                               : std::min(steps_[i].from, changes[j].when);
        for (; i < steps_.size() && steps_[i].from == when; ++i) level = steps_[i].level;
        for (; j < changes.size() && changes[j].when == when; ++j) added += changes[j].amount;
        if (level + added < reservoir_->least) return {when, level + added - reservoir_->least};
        if (level + added > reservoir_->most) return {when, level + added - reservoir_->most};
    }
    return {0, 0};
}

bool Stock::fits(std::span<const Change> changes) const { return firstBeyond(changes).amount == 0; }

Tick Stock::wait(std::span<const Change> changes) const {
    Tick least = kNever;
    for (const Change& change : changes) {
        const auto next = std::partition_point(steps_.begin(), steps_.end(),
                                               [&](const Step& step) { return step.from <= change.when; });
        if (next != steps_.end()) least = std::min(least, next->from - change.when);
    }
    return least;
}

void Stock::put(const Booking& booking) {
    const auto after = std::partition_point(bookings_.begin(), bookings_.end(),
                                            [&](const Booking& other) { return other.when <= booking.when; });
    bookings_.insert(after, booking);
    renew();
}

void Stock::take(std::size_t activity, Tick when, int amount) {
    auto it = std::partition_point(bookings_.begin(), bookings_.end(),
                                   [&](const Booking& booking) { return booking.when < when; });
    while (it->activity != activity || it->amount != amount) ++it;
    bookings_.erase(it);
    renew();
}

} // namespace piewright::schedule
