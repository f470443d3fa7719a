// What a machine does over time: load after load, with setups between families.
#pragma once

#include "schedule/problem.h"
#include "schedule/stretch.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace piewright::schedule {

class Line {
  public:
    struct Booking {
        Tick start;
        Tick end;
        FamilyIndex family;
        std::size_t activity;
        int amount;
    };

    explicit Line(const Machine& machine);

    /// Earliest start >= from for `amount` in `family`, in a load that is there or in one of its own; kNever when there
    /// is none.
    [[nodiscard]] Tick nextFit(Tick from, const Stretch& stretch, FamilyIndex family, int amount) const;
    void put(const Booking& booking);
    void take(std::size_t activity, Tick start);
    [[nodiscard]] const std::vector<Booking>& bookings() const { return bookings_; }
    /// Families of the loads before and after one that starts then, and whether there is such a load already.
    struct Neighbours {
        const Booking* before = nullptr;
        const Booking* after = nullptr;
        bool isThere = false;
    };
    [[nodiscard]] Neighbours neighbours(Tick start) const;

    /// Every booking that an activity from start to end would be in the way of, were it a load by itself.
    template <class Visit> void forBlockers(Tick start, Tick end, FamilyIndex family, Visit visit) const {
        for (std::size_t i = firstNear(start); i < bookings_.size(); ++i) {
            if (bookings_[i].start >= end + longestSetup_ && bookings_[i].start >= end) break;
            if (!apart(bookings_[i], start, end, family)) visit(bookings_[i]);
        }
    }
    /// Whether the machine itself, empty, allows it: first setup and `away`.
    [[nodiscard]] bool open(Tick start, const Stretch& stretch, FamilyIndex family) const {
        return nextOpen(start, stretch, family) == start;
    }
    /// Whether the two could be of one load.
    [[nodiscard]] bool joins(const Booking& booking, Tick start, FamilyIndex family) const {
        return machine_->together > 1 && booking.start == start && booking.family == family;
    }
    [[nodiscard]] Tick setup(FamilyIndex from, FamilyIndex to) const {
        return machine_->setup.empty() ? 0 : machine_->setup[at(from)][at(to)];
    }

  private:
    [[nodiscard]] bool apart(const Booking& booking, Tick start, Tick end, FamilyIndex family) const {
        return booking.end + setup(booking.family, family) <= start ||
               end + setup(family, booking.family) <= booking.start;
    }
    [[nodiscard]] std::size_t firstNear(Tick start) const;
    [[nodiscard]] Tick nextOpen(Tick from, const Stretch& stretch, FamilyIndex family) const;

    const Machine* machine_;
    Tick longestSetup_ = 0;
    std::vector<Span> away_;        ///< in order, merged
    std::vector<Booking> bookings_; ///< in order of start, then end; loads are apart, so ends are in order too
};

} // namespace piewright::schedule
