#include "schedule/line.h"

namespace piewright::schedule {

Line::Line(const Machine& machine) : machine_(&machine), away_(machine.away) {
    for (const std::vector<Tick>& row : machine.setup) {
        for (const Tick setup : row) {
            longestSetup_ = std::max(longestSetup_, setup);
        }
    }
    // Merged, so that ends are in order; touching spans stay apart: an activity of no duration fits between them.
    std::sort(away_.begin(), away_.end());
    std::size_t kept = 0;
    for (std::size_t i = 1; i < away_.size(); ++i) {
        if (away_[i].from < away_[kept].to) {
            away_[kept].to = std::max(away_[kept].to, away_[i].to);
        } else {
            away_[++kept] = away_[i];
        }
    }
    if (!away_.empty()) {
        away_.resize(kept + 1);
    }
}

std::size_t Line::firstNear(Tick start) const {
    const auto first = std::partition_point(bookings_.begin(), bookings_.end(), [&](const Booking& booking) {
        return booking.end + longestSetup_ <= start;
    });
    return static_cast<std::size_t>(first - bookings_.begin());
}

Tick Line::nextOpen(Tick from, Tick duration, FamilyIndex family) const {
    Tick start = machine_->first.empty() ? from : std::max(from, machine_->first[at(family)]);
    for (const Span& away : away_) {
        if (start < away.to && away.from < start + duration) {
            start = away.to;
        }
    }
    return start;
}

Tick Line::nextFit(Tick from, Tick duration, FamilyIndex family) const {
    Tick start = nextOpen(from, duration, family);
    for (bool moved = true; moved;) {
        moved = false;
        for (std::size_t i = firstNear(start); i < bookings_.size(); ++i) {
            const Booking& booking = bookings_[i];
            if (booking.start >= start + duration + longestSetup_ && booking.start >= start + duration) {
                break;
            }
            if (!apart(booking, start, start + duration, family)) {
                start = booking.end + setup(booking.family, family);
                moved = true;
            }
        }
        if (const Tick open = nextOpen(start, duration, family); open != start) {
            start = open;
            moved = true;
        }
    }
    return start;
}

void Line::put(const Booking& booking) {
    const auto after = std::partition_point(bookings_.begin(), bookings_.end(), [&](const Booking& other) {
        return other.start < booking.start || (other.start == booking.start && other.end <= booking.end);
    });
    bookings_.insert(after, booking);
}

void Line::take(std::size_t activity, Tick start) {
    auto it = std::partition_point(bookings_.begin(), bookings_.end(),
                                   [&](const Booking& booking) { return booking.start < start; });
    while (it->activity != activity) {
        ++it;
    }
    bookings_.erase(it);
}

} // namespace piewright::schedule
