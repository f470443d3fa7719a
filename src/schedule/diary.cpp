#include "schedule/diary.h"

#include <algorithm>

namespace piewright::schedule {

std::size_t Diary::firstNear(Tick start) const {
    const auto first = std::partition_point(bookings_.begin(), bookings_.end(),
                                            [&](const Booking& booking) { return booking.end <= start; });
    return static_cast<std::size_t>(first - bookings_.begin());
}

bool Diary::present(Tick start, Tick end) const {
    return std::any_of(present_->begin(), present_->end(),
                       [&](const Span& span) { return span.from <= start && end <= span.to; });
}

Tick Diary::nextFit(Tick from, Tick duration) const {
    Tick start = from;
    std::size_t i = firstNear(from);
    for (const Span& span : *present_) {
        if (span.to - duration < start) {
            continue;
        }
        start = std::max(start, span.from);
        for (; i < bookings_.size() && bookings_[i].start < start + duration; ++i) {
            if (start < bookings_[i].end) {
                start = bookings_[i].end;
            }
        }
        if (start <= span.to - duration) {
            return start;
        }
    }
    return kNever;
}

void Diary::put(const Booking& booking) {
    const auto after = std::partition_point(bookings_.begin(), bookings_.end(), [&](const Booking& other) {
        return other.start < booking.start || (other.start == booking.start && other.end <= booking.end);
    });
    bookings_.insert(after, booking);
}

void Diary::take(std::size_t activity, Tick start) {
    auto it = std::partition_point(bookings_.begin(), bookings_.end(),
                                   [&](const Booking& booking) { return booking.start < start; });
    while (it->activity != activity) {
        ++it;
    }
    bookings_.erase(it);
}

} // namespace piewright::schedule
