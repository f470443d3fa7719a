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

Tick Line::nextOpen(Tick from, const Stretch& stretch, FamilyIndex family) const {
    Tick start = stretch.start(machine_->first.empty() ? from : std::max(from, machine_->first[at(family)]));
    if (away_.empty()) return start;
    Tick end = stretch.end(start);
    for (const Span& away : away_) {
        if (start < away.to && away.from < end) {
            start = stretch.start(away.to);
            end = stretch.end(start);
        }
    }
    return start;
}

Tick Line::nextFit(Tick from, const Stretch& stretch, FamilyIndex family, int amount) const {
    Tick start = nextOpen(from, stretch, family);
    const int lasting = stretch.duration() > 0 ? amount : 0;
    for (bool moved = true; moved;) {
        moved = false;
        Tick end = stretch.end(start);
        int load = lasting;
        for (std::size_t i = firstNear(start); i < bookings_.size(); ++i) {
            const Booking& booking = bookings_[i];
            if (booking.start >= end + longestSetup_ && booking.start >= end) break;
            const bool isOwn = joins(booking, start, family);
            if (isOwn) {
                load += booking.end > booking.start ? booking.amount : 0;
                if (load <= machine_->together) continue;
            } else if (apart(booking, start, end, family)) {
                continue;
            }
            // Into the next load, where it could be of it, else behind it.
            const bool mayJoin = !isOwn && machine_->together > 1 && booking.family == family && booking.start > start;
            const Tick behind = booking.end + setup(booking.family, family);
            start = mayJoin ? std::min(booking.start, behind) : std::max(behind, start + (isOwn ? 1 : 0));
            moved = true;
            break;
        }
        if (const Tick open = nextOpen(start, stretch, family); open != start) {
            start = open;
            moved = true;
        }
    }
    return start;
}

Line::Neighbours Line::neighbours(Tick start) const {
    auto here = std::partition_point(bookings_.begin(), bookings_.end(),
                                     [&](const Booking& booking) { return booking.start < start; });
    Neighbours found;
    if (here != bookings_.begin()) found.before = &*(here - 1);
    for (; here != bookings_.end() && here->start == start; ++here) found.isThere = true;
    if (here != bookings_.end()) found.after = &*here;
    return found;
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
