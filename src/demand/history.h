// What was sold, by good, date and quarter of an hour.
#pragma once

#include "units/civil.h"
#include "units/id.h"

#include <array>
#include <map>
#include <optional>
#include <set>

namespace piewright::demand {

constexpr int kQuarters = 96; ///< quarter-hours of a day
using Quarters = std::array<int, kQuarters>;

struct DaySales {
    int total = 0;                     ///< net of returns, never negative
    std::optional<Quarters> byQuarter; ///< none when only the day's total is known
    bool soldOut = false;              ///< then the total is a lower bound of what people wanted
    std::optional<ClockTime> soldOutAt;
};

/// Sales of a shop. A date that is not among `openDates` is shut: that is not the same as nothing sold.
struct History {
    std::map<GoodId, std::map<Date, DaySales>> sold;
    std::set<Date> openDates; ///< every date on which anything was sold, or which the file names as open

    [[nodiscard]] std::optional<Date> lastDate() const {
        return openDates.empty() ? std::nullopt : std::optional(*openDates.rbegin());
    }
};

} // namespace piewright::demand
