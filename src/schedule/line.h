// What a machine does over time, one activity after the other, with setups between families.
#pragma once

#include "schedule/problem.h"

#include <algorithm>
#include <vector>

namespace piewright::schedule {

class Line {
  public:
    struct Booking {
        Tick start;
        Tick end;
        FamilyIndex family;
        std::size_t activity;
    };

    explicit Line(const Machine& machine);

    /// Earliest start >= from for `duration` in `family`; kNever when there is none.
    [[nodiscard]] Tick nextFit(Tick from, Tick duration, FamilyIndex family) const;
    void put(const Booking& booking);
    void take(std::size_t activity, Tick start);

    /// Every booking that an activity from start to end would be in the way of.
    template <class Visit> void forBlockers(Tick start, Tick end, FamilyIndex family, Visit visit) const {
        for (std::size_t i = firstNear(start); i < bookings_.size(); ++i) {
            if (bookings_[i].start >= end + longestSetup_ && bookings_[i].start >= end) {
                break;
            }
            if (!apart(bookings_[i], start, end, family)) {
                visit(bookings_[i]);
            }
        }
    }
    /// Whether the machine itself, empty, allows it: first setup and `away`.
    [[nodiscard]] bool open(Tick start, Tick end, FamilyIndex family) const {
        return nextOpen(start, end - start, family) == start;
    }

  private:
    [[nodiscard]] Tick setup(FamilyIndex from, FamilyIndex to) const {
        return machine_->setup.empty() ? 0 : machine_->setup[at(from)][at(to)];
    }
    [[nodiscard]] bool apart(const Booking& booking, Tick start, Tick end, FamilyIndex family) const {
        return booking.end + setup(booking.family, family) <= start ||
               end + setup(family, booking.family) <= booking.start;
    }
    [[nodiscard]] std::size_t firstNear(Tick start) const;
    [[nodiscard]] Tick nextOpen(Tick from, Tick duration, FamilyIndex family) const;

    const Machine* machine_;
    Tick longestSetup_ = 0;
    std::vector<Span> away_;        ///< in order, merged
    std::vector<Booking> bookings_; ///< in order of start, then end; apart, so ends are in order too
};

} // namespace piewright::schedule
