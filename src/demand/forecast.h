// Predictive distributions of a day's demand, whatever model made them.
#pragma once

#include "demand/distribution.h"
#include "demand/history.h"
#include "demand/profile.h"

#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <vector>

namespace piewright::demand {

struct GoodDemand {
    GoodId good;
    CountDistribution daily;
    Profile profile;
    std::vector<std::string> because; ///< how it came about and what was assumed, for people
};

/// One sampled day: pieces wanted by good (in the order of `goods`) and quarter-hour.
using SampledDay = std::vector<Quarters>;

/// The demand of one date for several goods together.
class DayDemand {
  public:
    virtual ~DayDemand() = default;
    [[nodiscard]] virtual Date date() const = 0;
    [[nodiscard]] virtual const std::vector<GoodDemand>& goods() const = 0;
    /// The k-th sampled day of a seed: the same for the same seed and k, goods jointly (a busy day is busy for all).
    [[nodiscard]] virtual SampledDay sample(std::uint64_t seed, std::uint64_t k) const = 0;
};

/// Makes demand from history. Later models stand behind this same interface.
class Forecaster {
  public:
    virtual ~Forecaster() = default;
    /// `open`: the hours of that date. `goods` with no history get a wide distribution and say so in `because`.
    [[nodiscard]] virtual std::unique_ptr<DayDemand> forecast(std::span<const GoodId> goods, Date date,
                                                              std::span<const ClockSpan> open) const = 0;
};

/// Baseline: the last same weekdays (up to 26 weeks, nearer ones heavier), brought to the present level of the good's
/// sales; days that sold out count as at least what was sold. Whole days are resampled, so goods stay correlated.
/// Shut days and dates on or after the forecast date are never used. How it works, step by step: README.md of this
/// room. A date without open hours has no demand: all chance on 0. The history is copied.
[[nodiscard]] std::unique_ptr<Forecaster> sameWeekdays(const History& history);

} // namespace piewright::demand
