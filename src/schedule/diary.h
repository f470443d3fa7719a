// What one worker does over time.
#pragma once

#include "schedule/problem.h"
#include "schedule/stretch.h"

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

    /// Earliest start >= from at which the worker is there and free; kNever when there is none.
    [[nodiscard]] Tick nextFit(Tick from, const Stretch& stretch) const;
    /// Whether the worker is there whenever the stretch does not pause.
    [[nodiscard]] bool present(Tick start, const Stretch& stretch) const {
        return nextPresent(start, stretch) == start;
    }
    void put(const Booking& booking);
    void take(std::size_t activity, Tick start);
    [[nodiscard]] const std::vector<Booking>& bookings() const { return bookings_; }

    template <class Visit> void forBlockers(Tick start, Tick end, Visit visit) const {
        for (std::size_t i = firstNear(start); i < bookings_.size() && bookings_[i].start < end; ++i) {
            if (start < bookings_[i].end) visit(bookings_[i]);
        }
    }

  private:
    [[nodiscard]] std::size_t firstNear(Tick start) const;
    [[nodiscard]] Tick nextPresent(Tick from, const Stretch& stretch) const {
        if (stretch.pauses()) return nextPresentBetweenPauses(from, stretch);
        for (const Span& span : *present_) {
            const Tick start = from < span.from ? span.from : from;
            if (start <= span.to - stretch.duration()) return start;
        }
        return kNever;
    }
    [[nodiscard]] Tick nextPresentBetweenPauses(Tick from, const Stretch& stretch) const;

    const std::vector<Span>* present_;
    std::vector<Booking> bookings_; ///< in order of start, then end; apart, so ends are in order too
};

} // namespace piewright::schedule
