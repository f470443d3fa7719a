#include "book/book.h"

#include <algorithm>

namespace piewright::book {

namespace {

const SpecialDay* specialOn(const House& house, Date date) {
    const auto found = std::find_if(house.special.begin(), house.special.end(),
                                    [&](const SpecialDay& day) { return day.date == date; });
    return found == house.special.end() ? nullptr : &*found;
}

bool listed(const std::vector<Weekday>& days, Weekday day) {
    return std::find(days.begin(), days.end(), day) != days.end();
}

/// The nearest open date going by `step`, within a year.
std::optional<Date> openFrom(const House& house, Date date, Days step) {
    constexpr int kYear = 366;
    for (int i = 1; i <= kYear; ++i)
        if (!hoursOn(house, date + step * i).empty()) return date + step * i;
    return std::nullopt;
}

} // namespace

std::vector<ClockSpan> hoursOn(const House& house, Date date) {
    if (const SpecialDay* day = specialOn(house, date)) return day->hours;
    return house.hours.at(date.weekday().c_encoding());
}

std::string noteOn(const House& house, Date date) {
    const SpecialDay* day = specialOn(house, date);
    return day ? day->note : std::string{};
}

std::optional<Date> nextOpen(const House& house, Date date) { return openFrom(house, date, Days(1)); }
std::optional<Date> lastOpen(const House& house, Date date) { return openFrom(house, date, Days(-1)); }

bool soldOn(const House& house, const Good& good, Date date) {
    return !hoursOn(house, date).empty() && (good.soldOn.empty() || listed(good.soldOn, date.weekday()));
}

const Shift* shiftOn(const Hand& hand, Date date) {
    const bool away = std::any_of(hand.away.begin(), hand.away.end(),
                                  [&](const Away& days) { return days.from <= date && date <= days.to; });
    if (away) return nullptr;
    const auto found = std::find_if(hand.shifts.begin(), hand.shifts.end(),
                                    [&](const Shift& shift) { return listed(shift.days, date.weekday()); });
    return found == hand.shifts.end() ? nullptr : &*found;
}

} // namespace piewright::book
