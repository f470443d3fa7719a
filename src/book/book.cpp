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

} // namespace

std::vector<ClockSpan> hoursOn(const House& house, Date date) {
    if (const SpecialDay* day = specialOn(house, date)) return day->hours;
    return house.hours.at(date.weekday().c_encoding());
}

std::string noteOn(const House& house, Date date) {
    const SpecialDay* day = specialOn(house, date);
    return day ? day->note : std::string{};
}

std::optional<Date> nextOpen(const House& house, Date date) {
    constexpr Days kYear{366};
    for (Date next = date + Days(1); next - date <= kYear; next = next + Days(1))
        if (!hoursOn(house, next).empty()) return next;
    return std::nullopt;
}

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
