#include "day/amounts.h"

#include "cost/standard.h"
#include "demand/sum.h"

#include <algorithm>

namespace piewright::day {

namespace {

using book::Book;
using book::Formula;
using book::Good;

Chosen chosen(const Book& book, const Good& good, const demand::CountDistribution& wanted,
              const demand::GoodDemand& first, std::vector<Date> dates) {
    Chosen c;
    c.good = good.id;
    c.price = good.price;
    c.cost = cost::ingredientsOf(book, good);
    c.leftover = good.leftover;
    c.amount =
        demand::amountFor(wanted, {c.price.inUnits(), c.cost.inUnits(), c.leftover.inUnits()}, good.least, good.most);
    c.low = wanted.quantile(0.1);
    c.middle = wanted.quantile(0.5);
    c.high = wanted.quantile(0.9);
    c.profile = first.profile;
    c.dates = std::move(dates);
    c.because = first.because;
    return c;
}

bool deliversOn(const book::Supplier& supplier, Date date) {
    return std::find(supplier.delivers.begin(), supplier.delivers.end(), date.weekday()) != supplier.delivers.end();
}

} // namespace

std::vector<Chosen> amountsOn(const Book& book, const demand::Forecaster& forecaster, Date date) {
    const auto open = hoursOn(book.house, date);
    std::vector<GoodId> goods;
    for (const auto& [id, good] : book.goods)
        if (soldOn(book.house, good, date)) goods.push_back(id);
    std::vector<Chosen> amounts;
    if (open.empty() || goods.empty()) return amounts;
    const auto day = forecaster.forecast(goods, date, open);
    for (const demand::GoodDemand& wanted : day->goods())
        amounts.push_back(chosen(book, book.goods.at(wanted.good), wanted.daily, wanted, {date}));
    return amounts;
}

Chosen amountOver(const Book& book, const demand::Forecaster& forecaster, const Good& good,
                  const std::vector<Date>& dates) {
    std::optional<demand::CountDistribution> sum;
    std::optional<demand::GoodDemand> first;
    const GoodId id = good.id;
    for (const Date date : dates) {
        const auto day = forecaster.forecast(std::span(&id, 1), date, hoursOn(book.house, date));
        const demand::GoodDemand& wanted = day->goods().front();
        sum = sum ? demand::sumOf(*sum, wanted.daily) : wanted.daily;
        if (!first) first = wanted;
    }
    return chosen(book, good, *sum, *first, dates);
}

const book::Stuff* mostPerishable(const Book& book, const Formula& formula) {
    const book::Stuff* least = nullptr;
    for (const book::Line& line : formula.lines) {
        const auto* id = std::get_if<StuffId>(&line.of);
        if (!id) continue;
        const book::Stuff& stuff = book.stuffs.at(*id);
        if (stuff.life && (!least || *stuff.life < *least->life)) least = &stuff;
    }
    return least;
}

const book::Supplier* supplierOf(const Book& book, const book::Stuff& stuff) {
    return stuff.packs.empty() ? nullptr : &book.suppliers.at(stuff.packs.front().supplier);
}

bool madeBefore(const Book& book, const Formula& formula, Date date) {
    if (formula.made != book::Made::DayBefore) return formula.made == book::Made::Delivery;
    const auto last = lastOpen(book.house, date);
    return last && (!formula.keeps || Seconds(date - *last) <= *formula.keeps);
}

bool comesInOn(const Book& book, const Formula& formula, Date date) {
    const book::Stuff* stuff = mostPerishable(book, formula);
    const book::Supplier* supplier = stuff ? supplierOf(book, *stuff) : nullptr;
    return supplier && deliversOn(*supplier, date) && !hoursOn(book.house, date).empty();
}

std::vector<Date> datesServed(const Book& book, const Formula& formula, const Good& good, Date date) {
    // Made during one day, it has rested by the next opening when its rest is no longer than a night; else a day later.
    constexpr Seconds kNight = std::chrono::hours(14);
    const auto restDays = [&](Date made) { return made + (formula.rest <= kNight ? Days(1) : Days(2)); };
    const Days kept = formula.keeps ? std::chrono::floor<Days>(*formula.keeps) : Days(1);
    Date next = date + Days(1);
    while (next - date <= Days(14) && !comesInOn(book, formula, next)) next = next + Days(1);
    std::vector<Date> dates;
    for (Date d = restDays(date); d < restDays(next) && d - date <= kept; d = d + Days(1))
        if (soldOn(book.house, good, d)) dates.push_back(d);
    return dates;
}

} // namespace piewright::day
