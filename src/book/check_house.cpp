// Hours and special days.
#include "book/checks.h"

#include <algorithm>

namespace piewright::book {

namespace {

constexpr std::string_view kFile = "house.toml";
constexpr Minutes kDay{24 * 60};

// The reader leaves out nothing, so that the i-th span stands at the i-th place of the list.
void spansApart(const Checking& checking, const std::vector<ClockSpan>& spans, const std::string& path) {
    if (!checking.sound(path)) return;
    for (std::size_t i = 0; i < spans.size(); ++i)
        if (spans[i].from >= ClockTime(kDay))
            checking.error(kFile, path + '[' + std::to_string(i) + ']',
                           "begins on the day after, at " + toText(spans[i].from), "a beginning before 24:00");
    for (std::size_t i = 1; i < spans.size(); ++i)
        if (spans[i].from <= spans[i - 1].to)
            checking.error(kFile, path + '[' + std::to_string(i) + ']',
                           "begins at " + toText(spans[i].from) + ", not after the hours before it",
                           "hours in order and apart: after " + toText(spans[i - 1].to));
}

} // namespace

void checkHours(const Checking& checking) {
    const House& house = checking.book.house;
    if (checking.sources.root(kFile) == nullptr) return;
    bool open = false;
    for (unsigned day = 0; day < house.hours.size(); ++day) {
        const std::vector<ClockSpan>& spans = house.hours.at(day);
        const std::string path = "hours." + toText(Weekday(day));
        spansApart(checking, spans, path);
        open = open || !spans.empty();
        const std::vector<ClockSpan>& next = house.hours.at((day + 1) % house.hours.size());
        if (!spans.empty() && !next.empty() && checking.sound(path) && spans.back().to - kDay >= next.front().from)
            checking.error(kFile, path, "open into the hours of the next day",
                           "an end before " + toText(next.front().from + kDay));
    }
    if (!open && checking.sources.root(kFile)->find("hours") != nullptr)
        checking.error(kFile, "hours", "never open",
                       "the selling hours of at least one day, as in tue = [\"11:00-19:00\"]");
    for (std::size_t i = 0; i < house.special.size(); ++i)
        if (checking.sound("special[" + std::to_string(i) + ']'))
            spansApart(checking, house.special[i].hours, "special[" + std::to_string(i) + "].hours");
}

void checkSpecialDays(const Checking& checking) {
    std::vector<Date> seen;
    const std::vector<SpecialDay>& days = checking.book.house.special;
    for (std::size_t i = 0; i < days.size(); ++i) {
        if (!checking.sound("special[" + std::to_string(i) + ']')) continue;
        if (std::find(seen.begin(), seen.end(), days[i].date) != seen.end())
            checking.error(kFile, "special[" + std::to_string(i) + "].date",
                           toText(days[i].date) + " stands there twice", "each date once");
        seen.push_back(days[i].date);
    }
}

} // namespace piewright::book
