// What a reservoir holds over time: a step function that flows raise and lower from some moment on.
#pragma once

#include "schedule/problem.h"

#include <cstdint>
#include <span>
#include <vector>

namespace piewright::schedule {

class Stock {
  public:
    struct Booking {
        Tick when;
        int amount;
        std::size_t activity;
    };
    /// A change at some moment.
    struct Change {
        Tick when;
        std::int64_t amount;
    };

    explicit Stock(const Reservoir& reservoir) : reservoir_(&reservoir) {}

    /// Earliest moment >= from from which on the amount may flow in, or out; kNever when there is none. Where the stock
    /// is beyond its limits already, none that leaves it so for longer than it was.
    [[nodiscard]] Tick nextFit(Tick from, int amount) const;
    /// All these together.
    [[nodiscard]] bool fits(std::span<const Change> changes) const;
    /// Shortest wait > 0 that brings one of the changes to where the level changes; kNever when there is none.
    [[nodiscard]] Tick wait(std::span<const Change> changes) const;

    void put(const Booking& booking);
    void take(std::size_t activity, Tick when, int amount);
    [[nodiscard]] const std::vector<Booking>& bookings() const { return bookings_; } ///< in order of time
    /// Below the least (negative) or above the most (positive) somewhere at or after `from`: the first moment, and by
    /// how much; nothing (0) otherwise.
    [[nodiscard]] Change firstBeyond(std::span<const Change> more = {}) const;
    [[nodiscard]] bool isSound() const { return isSound_; } ///< within its limits all the time

  private:
    void renew();

    const Reservoir* reservoir_;
    std::vector<Booking> bookings_;
    struct Step {
        Tick from;
        std::int64_t level;
        std::int64_t least; ///< from here on
        std::int64_t most;
    };
    bool isSound_ = true;
    std::vector<Step> steps_; ///< without the first, which is the initial level
};

} // namespace piewright::schedule
