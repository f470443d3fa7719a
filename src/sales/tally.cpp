#include "sales/tally.h"

#include <algorithm>
#include <set>

namespace piewright::sales {

namespace {

constexpr std::size_t kMostDateTexts = 50'000;
constexpr std::size_t kMostCells = 400'000; // good-days: about 170 MB
constexpr std::size_t kMostPlaces = 20'000'000;
constexpr std::int32_t kMostInAQuarter = 1'000'000'000;

DateText textOf(Date date) {
    const auto ymd = date.ymd();
    return {DateForm::YearMonthDay, static_cast<int>(ymd.year()), static_cast<int>(static_cast<unsigned>(ymd.month())),
            static_cast<int>(static_cast<unsigned>(ymd.day())), '-'};
}

/// Returns come off earlier sales of the day, then later ones, so that no quarter-hour is negative and the sum stays.
demand::Quarters settled(const std::array<std::int32_t, demand::kQuarters>& net, std::int64_t total) {
    demand::Quarters quarters{};
    if (total <= 0) return quarters;
    std::int64_t owed = 0;
    for (std::size_t q = 0; q < net.size(); ++q) {
        if (net[q] >= 0) {
            quarters[q] = net[q];
            continue;
        }
        std::int64_t back = -static_cast<std::int64_t>(net[q]);
        for (std::size_t earlier = q; earlier-- > 0 && back > 0;) {
            const std::int64_t part = std::min<std::int64_t>(back, quarters[earlier]);
            quarters[earlier] -= static_cast<int>(part);
            back -= part;
        }
        owed += back;
    }
    for (int& pieces : quarters) {
        const std::int64_t part = std::min<std::int64_t>(owed, pieces);
        pieces -= static_cast<int>(part);
        owed -= part;
    }
    return quarters;
}

int earlier(int a, int b) { return a < 0 ? b : b < 0 ? a : std::min(a, b); }

} // namespace

std::size_t Tally::dateOf(std::string_view text) {
    if (last_ != kNoDate && text == lastText_) return last_;
    const auto before = places_.find(text);
    if (before != places_.end()) {
        if (before->second != kNoDate) {
            lastText_ = text;
            last_ = before->second;
        }
        return before->second;
    }
    const auto parsed = parseDateText(text);
    std::size_t place = kNoDate;
    if (parsed && (sales::dateOf(*parsed, false) || sales::dateOf(*parsed, true)) && dates_.size() < kMostDateTexts &&
        (dates_.size() + 1) * goods_ <= kMostPlaces) {
        place = dates_.size();
        dates_.push_back({*parsed, false, 0, 0, 0, 0, {}});
        cellOf_.resize(dates_.size() * goods_);
    }
    if (places_.size() < 2 * kMostDateTexts && text.size() <= 64) places_.emplace(std::string(text), place);
    return place;
}

std::size_t Tally::dateOf(Date date) {
    const auto known = byDate_.find(date);
    if (known != byDate_.end()) return known->second;
    if (dates_.size() >= kMostDateTexts || (dates_.size() + 1) * goods_ > kMostPlaces) return kNoDate;
    dates_.push_back({textOf(date), false, 0, 0, 0, 0, {}});
    cellOf_.resize(dates_.size() * goods_);
    return byDate_[date] = dates_.size() - 1;
}

std::optional<Date> Tally::certain(std::size_t date) const {
    const DateText& text = dates_[date].text;
    return text.form == DateForm::TwoNumbersYear ? std::nullopt : sales::dateOf(text, false);
}

bool Tally::add(const Sale& sale, const csv::Row& row) {
    std::uint32_t& at = cellOf_[sale.date * goods_ + static_cast<std::size_t>(sale.good)];
    if (at == 0) {
        if (cells_.size() >= kMostCells) return false;
        cells_.emplace_back();
        at = static_cast<std::uint32_t>(cells_.size());
    }
    Cell& cell = cells_[at - 1];
    cell.total += sale.pieces;
    if (sale.minute >= 0) {
        std::int32_t& quarter = cell.quarters[static_cast<std::size_t>(sale.minute / 15)];
        quarter = std::clamp(quarter + sale.pieces, -kMostInAQuarter, kMostInAQuarter);
        timesSeen_ = timesSeen_ || sale.minute > 0;
    } else {
        cell.untimed = true;
    }
    if (sale.soldOut) {
        cell.soldOut = true;
        cell.soldOutMinute = earlier(cell.soldOutMinute, sale.soldOutMinute);
    }
    DatePlace& date = dates_[sale.date];
    if (date.rows++ == 0) {
        date.firstLine = row.line;
        date.example = exampleOf(row);
    }
    if (sale.pieces < 0) ++date.returns;
    if (sale.minute < 0) ++date.untimed;
    if (sale.pieces != 0 || sale.soldOut) date.sold = true;
    return true;
}

void Tally::into(std::map<Date, Cell>& days, Date date, const Cell& cell) const {
    Cell& day = days[date]; // the same date may be written in more than one way
    day.total += cell.total;
    for (std::size_t q = 0; q < cell.quarters.size(); ++q)
        day.quarters[q] = std::clamp(day.quarters[q] + cell.quarters[q], -kMostInAQuarter, kMostInAQuarter);
    day.untimed = day.untimed || cell.untimed || !timesSeen_;
    day.soldOut = day.soldOut || cell.soldOut;
    day.soldOutMinute = earlier(day.soldOutMinute, cell.soldOutMinute);
}

Result<demand::History> Tally::history(const std::vector<GoodId>& goods, std::optional<bool> dayFirst, LeftRows& left,
                                       Report& report) {
    std::vector<DateText> texts;
    texts.reserve(dates_.size());
    for (const DatePlace& date : dates_) texts.push_back(date.text);
    const bool open = std::any_of(texts.begin(), texts.end(),
                                  [](const DateText& text) { return text.form == DateForm::TwoNumbersYear; });
    if (open && !dayFirst) {
        dayFirst = dayFirstOf(texts);
        if (!dayFirst) {
            const auto example = std::find_if(
                texts.begin(), texts.end(), [](const DateText& text) { return text.form == DateForm::TwoNumbersYear; });
            const std::string mark(1, example->mark);
            return Problems::one(Fault::Input,
                                 "whether " + std::to_string(example->first) + mark + std::to_string(example->second) +
                                     mark + std::to_string(example->year) +
                                     " has its day or its month first does not show in this file",
                                 "the order said, dates such as 2026-11-27, or a file that has a day after the 12th");
        }
    }

    demand::History history;
    std::vector<std::map<Date, Cell>> days(goods.size());
    std::map<std::string, std::size_t> forms;
    std::set<Date> named;
    std::set<std::size_t> goodsSeen;
    for (std::size_t d = 0; d < dates_.size(); ++d) {
        const DatePlace& place = dates_[d];
        const auto date = sales::dateOf(place.text, dayFirst.value_or(false));
        if (!date) {
            if (place.rows > 0) left.add({"no such date", place.rows, place.firstLine, place.example});
            continue;
        }
        report.taken += place.rows;
        report.returns += place.returns;
        report.dailyTotals += timesSeen_ ? place.untimed : place.rows;
        if (place.rows > 0 || place.sold) {
            named.insert(*date);
            forms[formName(place.text, dayFirst.value_or(false))] += std::max<std::size_t>(1, place.rows);
        }
        if (place.sold) history.openDates.insert(*date);
        for (std::size_t g = 0; g < goods_; ++g) {
            const std::uint32_t at = cellOf_[d * goods_ + g];
            if (at == 0) continue;
            goodsSeen.insert(g);
            into(days[g], *date, cells_[at - 1]);
        }
    }
    // One item alone may well have a day without a sale; a shop of several has none while it is open.
    if (goodsSeen.size() < 2) history.openDates = named;
    report.shutDays = named.size() - history.openDates.size();
    for (std::size_t g = 0; g < goods_; ++g) {
        for (const auto& [date, cell] : days[g]) {
            if (!history.openDates.contains(date)) continue;
            demand::DaySales day;
            if (cell.total < 0) ++report.flooredDays;
            day.total = static_cast<int>(std::clamp<std::int64_t>(cell.total, 0, kMostInAQuarter));
            if (!cell.untimed) day.byQuarter = settled(cell.quarters, cell.total);
            day.soldOut = cell.soldOut;
            if (cell.soldOutMinute >= 0) day.soldOutAt = ClockTime(Minutes(cell.soldOutMinute));
            history.sold[goods[g]].emplace(date, day);
        }
    }
    std::size_t most = 0;
    for (const auto& [form, rows] : forms) {
        if (rows <= most) continue;
        most = rows;
        report.dateForm = form;
    }
    if (forms.size() > 1)
        report.notes.push_back("dates are written in " + std::to_string(forms.size()) +
                               " forms; the commonest is shown");
    if (!history.openDates.empty()) {
        report.first = *history.openDates.begin();
        report.last = *history.openDates.rbegin();
    }
    return history;
}

} // namespace piewright::sales
