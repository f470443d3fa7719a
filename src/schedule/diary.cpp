#include "schedule/diary.h"

#include <algorithm>

namespace piewright::schedule {

std::size_t Diary::firstNear(Tick start) const {
    const auto first = std::partition_point(bookings_.begin(), bookings_.end(),
                                            [&](const Booking& booking) { return booking.end <= start; });
    return static_cast<std::size_t>(first - bookings_.begin());
}

Tick Diary::nextPresentBetweenPauses(Tick from, const Stretch& stretch) const {
    for (Tick start = stretch.start(from);;) {
        if (present_->empty() || start >= present_->back().to) return kNever;
        Tick next = start;
        stretch.forParts(start, [&](Tick partFrom, Tick partTo) {
            const auto span = std::partition_point(present_->begin(), present_->end(),
                                                   [&](const Span& one) { return one.to <= partFrom; });
            if (span != present_->end() && span->from <= partFrom && partTo <= span->to) return true;
            if (partFrom > start) {
                next = partFrom; // as long as it starts earlier, it has this part, as long or longer
            } else if (span == present_->end()) {
                next = kNever;
            } else {
                next = span->from > start ? span->from : span->to;
            }
            return false;
        });
        if (next == start) return start;
        if (next >= kNever) return kNever;
        start = stretch.start(next);
    }
}

Tick Diary::nextFit(Tick from, const Stretch& stretch) const {
    std::size_t i = firstNear(from);
    for (Tick start = from;;) {
        start = nextPresent(start, stretch);
        if (start >= kNever) return kNever;
        const Tick end = stretch.end(start);
        const Tick before = start;
        for (; i < bookings_.size() && bookings_[i].start < end; ++i) {
            if (start < bookings_[i].end) {
                start = bookings_[i].end;
                break;
            }
        }
        if (start == before) return start;
    }
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
    while (it->activity != activity) ++it;
    bookings_.erase(it);
}

} // namespace piewright::schedule
