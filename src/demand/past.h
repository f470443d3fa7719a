// Past days made comparable with the day that is forecast: each at the present level and on that weekday.
#pragma once

#include "demand/censored.h"
#include "demand/history.h"

#include <array>
#include <cstddef>
#include <string>
#include <vector>

namespace piewright::demand {

/// The shop's open days of the year before a date, in order, and what they say of its weekdays.
struct ShopPast {
    Date date;                     ///< the day to be forecast; nothing on or after it is looked at
    std::vector<Date> days;        ///< of the 52 weeks before
    std::vector<double> total;     ///< of all goods, by day
    std::array<double, 7> weekday; ///< mean of a weekday against the mean of all days; 1 where the shop never opened
    std::size_t firstRecent = 0;   ///< first of `days` that is within the last 26 weeks
    std::size_t sameWeekday = 0;   ///< recent days of the date's weekday
};
[[nodiscard]] ShopPast shopPast(const History& history, Date date);

/// Weight of a past day by its age: halves every eight weeks.
[[nodiscard]] double ageWeight(Days age);
/// Weight of a past day in the forecast of `date`: by its age, and a fifth of that when it is another weekday.
[[nodiscard]] double dayWeight(Date date, Date past);

/// A recent day of one good.
struct PastDay {
    std::size_t day = 0; ///< in ShopPast::days
    Seen seen;           ///< pieces as they would be at the present level, on the date's weekday
    bool sameWeekday = false;
};

/// A good's recent days, those of the date's weekday and, of less weight, the others.
struct GoodPast {
    std::vector<PastDay> days;
    std::size_t sameWeekday = 0; ///< of these, of the date's weekday
    double change = 1;           ///< present level against the mean of the last 26 weeks
    double relativeVariance = 0; ///< of a day's sales about what was expected, beyond chance alone, over all weekdays
    bool weekdayUnsold = false;  ///< never sold on that weekday, though it is sold on others
};

/// Nothing in `days` when the good sold nothing in the year before.
[[nodiscard]] GoodPast goodPast(const History& history, const ShopPast& shop, const GoodId& good);

} // namespace piewright::demand
