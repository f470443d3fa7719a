#include "day/houses.h"

#include <gtest/gtest.h>

namespace piewright::test {

namespace {

// Quarters of an hour of a day's sales out of 100: a midday peak and a tea-time one.
int shareOf(int minuteOfDay) {
    const int hour = minuteOfDay / 60;
    if (hour == 12 || hour == 13) return 6;
    if (hour == 17 || hour == 18) return 4;
    return 2;
}

demand::DaySales spreadOver(int total, const std::vector<ClockSpan>& open) {
    demand::DaySales day;
    day.total = total;
    day.byQuarter.emplace();
    day.byQuarter->fill(0);
    int weights = 0;
    for (const ClockSpan& span : open)
        for (auto t = span.from; t < span.to; t = t + Minutes(15))
            weights += shareOf(static_cast<int>(t.sinceMidnight().count()));
    int seen = 0;
    int given = 0;
    for (const ClockSpan& span : open)
        for (auto t = span.from; t < span.to; t = t + Minutes(15)) {
            const auto minute = static_cast<int>(t.sinceMidnight().count());
            seen += shareOf(minute);
            const int upTo = total * seen / weights;
            day.byQuarter->at(static_cast<std::size_t>(minute / 15)) = upTo - given;
            given = upTo;
        }
    return day;
}

} // namespace

book::Book ropewalk() {
    auto read = book::readFolder(std::string(PIEWRIGHT_SOURCE) + "/data/houses/ropewalk");
    if (!read) {
        ADD_FAILURE() << toText(read.problems().findings);
        return {};
    }
    return std::move(read->book);
}

demand::History history(const book::Book& book, Date until, const std::map<std::string, int>& perDay) {
    demand::History history;
    for (Date d = until - Days(16 * 7); d < until; d = d + Days(1)) {
        const auto open = hoursOn(book.house, d);
        if (open.empty()) continue;
        history.openDates.insert(d);
        const int week = static_cast<int>((until - d).count() / 7);
        for (const auto& [name, usual] : perDay) {
            const book::Good& good = book.goods.at(GoodId(name));
            if (!soldOn(book.house, good, d)) continue;
            const int busy = d.weekday() == std::chrono::Saturday ? 150 : 100;
            const int total = usual * busy * (95 + (week * 7) % 11) / 10'000;
            history.sold[good.id][d] = spreadOver(total, open);
        }
    }
    return history;
}

const std::map<std::string, int>& usualSales() {
    static const std::map<std::string, int> usual{
        {"beef-pie", 170},      {"chicken-pie", 95}, {"cheese-pie", 60}, {"large-beef-pie", 45}, {"mash", 180},
        {"parsley-sauce", 110}, {"gravy", 85},       {"peas", 70},       {"stewed-hake", 32},    {"set-hake", 26}};
    return usual;
}

Date date(int year, unsigned month, unsigned day) {
    return Date(std::chrono::year_month_day(std::chrono::year(year), std::chrono::month(month), std::chrono::day(day)));
}

day::Plan planFor(const book::Book& book, Date date, const std::map<std::string, int>& perDay) {
    const auto forecaster = demand::sameWeekdays(history(book, date, perDay));
    auto plan = day::makePlan(book, *forecaster, {date, 1, 600'000});
    if (!plan) {
        ADD_FAILURE() << toText(plan.problems().findings);
        return {};
    }
    return std::move(*plan);
}

} // namespace piewright::test
