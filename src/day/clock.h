// The wall clock of the plan's date against the engine's ticks: minutes since the first hand comes in.
#pragma once

#include "book/book.h"
#include "schedule/problem.h"
#include "units/civil.h"

namespace piewright::day {

class Clock {
  public:
    Clock(Zone zone, Date date, Instant origin) : zone_(std::move(zone)), date_(date), origin_(origin) {}

    [[nodiscard]] Instant instant(ClockTime time) const { return zone_.at(date_, time); }
    [[nodiscard]] Instant instant(schedule::Tick tick) const { return origin_ + Minutes(tick); }
    /// May be negative: before the first hand.
    [[nodiscard]] schedule::Tick tick(ClockTime time) const { return tick(instant(time)); }
    [[nodiscard]] schedule::Tick tick(Instant time) const {
        return static_cast<schedule::Tick>(std::chrono::floor<Minutes>(time - origin_).count());
    }
    [[nodiscard]] ClockTime clock(schedule::Tick tick) const { return zone_.clockOf(instant(tick)); }
    [[nodiscard]] Date date() const { return date_; }
    [[nodiscard]] const Zone& zone() const { return zone_; }

  private:
    Zone zone_;
    Date date_;
    Instant origin_;
};

/// Whole minutes that hold a duration.
[[nodiscard]] constexpr schedule::Tick ticksFor(Seconds duration) {
    return static_cast<schedule::Tick>(std::chrono::ceil<Minutes>(duration).count());
}

} // namespace piewright::day
