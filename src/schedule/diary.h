// What one worker does over time.
#pragma once

#include "schedule/problem.h"

#include <vector>

namespace piewright::schedule {

class Diary {
  public:
    struct Booking {
        Tick start;
        Tick end;
        std::size_t activity;
    };

    explicit Diary(const Worker& worker) : present_(&worker.present) {}

    /// Earliest start >= from at which the worker is there and free for `duration`; kNever when there is none.
    [[nodiscard]] Tick nextFit(Tick from, Tick duration) const;
    [[nodiscard]] bool present(Tick start, Tick end) const;
    void put(const Booking& booking);
    void take(std::size_t activity, Tick start);

    template <class Visit> void forBlockers(Tick start, Tick end, Visit visit) const {
        for (std::size_t i = firstNear(start); i < bookings_.size() && bookings_[i].start < end; ++i) {
            if (start < bookings_[i].end) {
                visit(bookings_[i]);
            }
        }
    }

  private:
    [[nodiscard]] std::size_t firstNear(Tick start) const;

    const std::vector<Span>* present_;
    std::vector<Booking> bookings_; ///< in order of start, then end; apart, so ends are in order too
};

} // namespace piewright::schedule
