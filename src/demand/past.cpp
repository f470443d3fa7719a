#include "demand/past.h"

#include "demand/level.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace piewright::demand {

namespace {

constexpr Days kYear{364};
constexpr Days kRecent{182};
constexpr double kHalvesIn = 56;        // days
constexpr double kMostPieces = 50'000;  // of one good on one day: beyond any counter, and it bounds what follows
constexpr double kFarthestLevel = 4;    // a past day is scaled by no more than this, up or down
constexpr double kWeekdayPriorDays = 4; // of a weekday at the shop's own factor
constexpr double kOtherWeekdays = 0.2;  // weight of a day of another weekday
constexpr double kSurelyWouldSell = 7;  // expected pieces over days that sold none: chance under 1 in 1,000

std::size_t weekdayOf(Date date) { return date.weekday().c_encoding(); }

/// A good's days since its first sale, on weekdays on which it is sold.
struct Series {
    std::vector<std::size_t> day; // in ShopPast::days
    std::vector<LevelDay> level;
};

std::vector<LevelDay> rawDays(const History& history, const ShopPast& shop, const GoodId& good) {
    std::vector<LevelDay> raw(shop.days.size());
    const auto found = history.sold.find(good);
    if (found == history.sold.end()) return raw;
    auto next = shop.days.empty() ? found->second.end() : found->second.lower_bound(shop.days.front());
    for (std::size_t i = 0; i < shop.days.size(); ++i) {
        while (next != found->second.end() && next->first < shop.days[i]) ++next;
        if (next == found->second.end()) break;
        if (next->first != shop.days[i]) continue;
        raw[i].sold = std::clamp(static_cast<double>(next->second.total), 0.0, kMostPieces);
        raw[i].atLeast = next->second.soldOut;
    }
    return raw;
}

/// The first of the shop's days on which the good was known to be on sale: before it there is nothing to count, not
/// zero.
std::size_t firstOnSale(const History& history, const ShopPast& shop, const GoodId& good) {
    const auto found = history.sold.find(good);
    if (found == history.sold.end()) return shop.days.size();
    for (const auto& [date, sales] : found->second)
        if (sales.total > 0 || sales.soldOut)
            return static_cast<std::size_t>(std::lower_bound(shop.days.begin(), shop.days.end(), date) -
                                            shop.days.begin());
    return shop.days.size();
}

} // namespace

double ageWeight(Days age) { return std::exp2(-static_cast<double>(age.count()) / kHalvesIn); }

double dayWeight(Date date, Date past) {
    return ageWeight(date - past) * (past.weekday() == date.weekday() ? 1.0 : kOtherWeekdays);
}

ShopPast shopPast(const History& history, Date date) {
    ShopPast shop{date, {}, {}, {}, 0, 0};
    const auto from = history.openDates.lower_bound(date - kYear);
    const auto to = history.openDates.lower_bound(date);
    shop.days.assign(from, to);
    shop.total.assign(shop.days.size(), 0);
    for (const auto& [good, days] : history.sold) {
        const std::vector<LevelDay> raw = rawDays(history, shop, good);
        for (std::size_t i = 0; i < raw.size(); ++i) shop.total[i] += raw[i].sold;
    }
    shop.firstRecent = static_cast<std::size_t>(std::lower_bound(shop.days.begin(), shop.days.end(), date - kRecent) -
                                                shop.days.begin());
    std::array<double, 7> sum{};
    std::array<double, 7> count{};
    double all = 0;
    for (std::size_t i = shop.firstRecent; i < shop.days.size(); ++i) {
        const std::size_t w = weekdayOf(shop.days[i]);
        sum[w] += shop.total[i];
        count[w] += 1;
        all += shop.total[i];
        if (w == weekdayOf(date)) ++shop.sameWeekday;
    }
    const auto recent = static_cast<double>(shop.days.size() - shop.firstRecent);
    const double mean = recent > 0 ? all / recent : 0;
    for (std::size_t w = 0; w < 7; ++w)
        shop.weekday[w] = mean > 0 ? (sum[w] / mean + kWeekdayPriorDays / 4) / (count[w] + kWeekdayPriorDays / 4) : 1;
    return shop;
}

GoodPast goodPast(const History& history, const ShopPast& shop, const GoodId& good) {
    GoodPast past;
    const std::vector<LevelDay> raw = rawDays(history, shop, good);
    const std::size_t first = firstOnSale(history, shop, good);
    std::array<double, 7> sum{};
    std::array<double, 7> count{};
    double all = 0;
    for (std::size_t i = first; i < raw.size(); ++i) {
        sum[weekdayOf(shop.days[i])] += raw[i].sold;
        count[weekdayOf(shop.days[i])] += 1;
        all += raw[i].sold;
    }
    if (all <= 0) return past;

    // A weekday on which a good that sells well never sells is a weekday on which it isn't offered.
    std::array<bool, 7> offered{};
    double offeredDays = 0;
    for (std::size_t w = 0; w < 7; ++w) {
        const double others = static_cast<double>(raw.size() - first) - count[w];
        offered[w] = sum[w] > 0 || others <= 0 || all / others * count[w] < kSurelyWouldSell;
        if (offered[w]) offeredDays += count[w];
    }
    const double mean = all / offeredDays;
    const std::size_t weekday = weekdayOf(shop.date);
    past.weekdayUnsold = !offered[weekday];
    std::array<double, 7> factor{};
    for (std::size_t w = 0; w < 7; ++w)
        factor[w] = offered[w] ? (sum[w] / mean + kWeekdayPriorDays * shop.weekday[w]) / (count[w] + kWeekdayPriorDays)
                               : shop.weekday[w];

    Series series;
    for (std::size_t i = first; i < raw.size(); ++i) {
        const std::size_t w = weekdayOf(shop.days[i]);
        if (!offered[w]) continue;
        series.day.push_back(i);
        series.level.push_back({raw[i].sold, factor[w], raw[i].atLeast});
    }
    // A day is judged by the level known as long before it as the present level is before the date.
    const double openShare = static_cast<double>(series.day.size()) /
                             static_cast<double>((shop.date - shop.days[series.day.front()]).count());
    const double gap = static_cast<double>((shop.date - shop.days[series.day.back()]).count());
    const auto lead = static_cast<std::size_t>(std::max(1.0, std::round(gap * openShare)));
    const std::vector<double> level = levels(series.level, bestKeep(series.level, lead));
    const double now = level.back();

    double squares = 0;
    double expectedSum = 0;
    double expectedSquares = 0;
    double levelSum = 0;
    for (std::size_t j = 0; j < series.day.size(); ++j) {
        const Date date = shop.days[series.day[j]];
        if (series.day[j] < shop.firstRecent) continue;
        const bool same = weekdayOf(date) == weekday;
        const double then = level[j + 1 > lead ? j + 1 - lead : 0];
        const double ratio = then > 0 ? std::clamp(now / then, 1 / kFarthestLevel, kFarthestLevel) : 1;
        const double value = series.level[j].sold * ratio * factor[weekday] / series.level[j].exposure;
        const double weight = dayWeight(shop.date, date);
        past.days.push_back({series.day[j], {value, weight, series.level[j].atLeast}, same});
        if (same) ++past.sameWeekday;
        levelSum += then;
        // A sold-out day's error is only known to be at least so much.
        if (series.level[j].atLeast) continue;
        const double expected = then * series.level[j].exposure;
        const double error =
            std::clamp(series.level[j].sold - expected, -kFarthestLevel * expected, kFarthestLevel * (expected + 1));
        squares += error * error;
        expectedSum += expected;
        expectedSquares += expected * expected;
    }
    if (!past.days.empty() && levelSum > 0) past.change = now * static_cast<double>(past.days.size()) / levelSum;
    // Var = expected + relative x expected²: what chance alone (Poisson) leaves unexplained.
    if (expectedSquares > 0) past.relativeVariance = std::max(0.0, squares - expectedSum) / expectedSquares;
    return past;
}

} // namespace piewright::demand
