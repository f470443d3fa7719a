// Whether what is bought is still good on every day it is used.
#include "book/checks.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>

namespace piewright::book {

namespace {

constexpr std::string_view kFile = "stuffs.toml";
constexpr unsigned kWeekDays = 7;

// Weekdays, as bits.
using WeekdaySet = std::array<bool, kWeekDays>;

bool openOn(const House& house, unsigned day) { return !house.hours.at(day).empty(); }

WeekdaySet soldDays(const House& house, const Good& good) {
    WeekdaySet days{};
    for (unsigned day = 0; day < kWeekDays; ++day) {
        const bool sold =
            good.soldOn.empty() || std::find(good.soldOn.begin(), good.soldOn.end(), Weekday(day)) != good.soldOn.end();
        days.at(day) = sold && openOn(house, day);
    }
    return days;
}

// The days on which something is made for use on `used`.
WeekdaySet madeDays(const House& house, const Formula& formula, const WeekdaySet& used) {
    if (formula.made == Made::SameDay) return used;
    WeekdaySet made{};
    for (unsigned day = 0; day < kWeekDays; ++day) {
        if (!used.at(day)) continue;
        for (unsigned back = 1; back <= kWeekDays; ++back) {
            const unsigned before = (day + kWeekDays - back) % kWeekDays;
            if (!openOn(house, before)) continue;
            made.at(before) = true;
            break;
        }
    }
    return made;
}

// Follows every good down to what it is bought as, and notes on which weekdays each stuff is used.
class Uses {
  public:
    explicit Uses(const Book& book) : book_(book) {
        for (const auto& [id, good] : book.goods) {
            const WeekdaySet days = soldDays(book.house, good);
            if (good.base) make(good.base->paste, days);
            if (good.lid) make(good.lid->paste, days);
            for (const Deposit& deposit : good.deposits) make(deposit.formula, days);
        }
    }
    [[nodiscard]] const std::map<StuffId, WeekdaySet>& all() const { return used_; }

  private:
    void make(const FormulaId& id, const WeekdaySet& used) {
        const auto found = book_.formulas.find(id);
        if (found == book_.formulas.end() || found->second.made == Made::Delivery) return; // made when it comes in
        WeekdaySet days = madeDays(book_.house, found->second, used);
        // Only what this walk adds is followed further: loops, which another check reports, come to an end too.
        WeekdaySet& known = made_[id];
        bool more = false;
        for (unsigned day = 0; day < kWeekDays; ++day) {
            days.at(day) = days.at(day) && !known.at(day);
            known.at(day) = known.at(day) || days.at(day);
            more = more || days.at(day);
        }
        if (!more) return;
        for (const Line& line : found->second.lines) {
            if (const auto* formula = std::get_if<FormulaId>(&line.of)) make(*formula, days);
            if (const auto* stuff = std::get_if<StuffId>(&line.of))
                for (unsigned day = 0; day < kWeekDays; ++day)
                    if (days.at(day)) used_[*stuff].at(day) = true;
        }
    }

    const Book& book_;
    std::map<FormulaId, WeekdaySet> made_;
    std::map<StuffId, WeekdaySet> used_;
};

// Days from the last delivery to `day`, by the supplier that came last; nothing when nobody delivers.
std::optional<unsigned> daysSinceDelivery(const Book& book, const Stuff& stuff, unsigned day) {
    for (unsigned back = 0; back < kWeekDays; ++back)
        for (const Pack& pack : stuff.packs) {
            const auto supplier = book.suppliers.find(pack.supplier);
            if (supplier == book.suppliers.end()) continue;
            const Weekday came((day + kWeekDays - back) % kWeekDays);
            const auto& days = supplier->second.delivers;
            if (std::find(days.begin(), days.end(), came) != days.end()) return back;
        }
    return std::nullopt;
}

} // namespace

void checkLivesCoverDeliveries(const Checking& checking) {
    const Book& book = checking.book;
    const Uses uses(book);
    for (const auto& [id, days] : uses.all()) {
        const auto found = book.stuffs.find(id);
        const std::string path = "stuff." + id.name();
        if (found == book.stuffs.end() || !checking.sound(path)) continue;
        const std::optional<Seconds> life = found->second.life;
        if (!life) continue;
        std::string stale;
        for (unsigned day = 0; day < kWeekDays; ++day) {
            const auto since = days.at(day) ? daysSinceDelivery(book, found->second, day) : std::nullopt;
            // On the day of delivery it is fresh; it must last into the last of the days it waits.
            if (since && *since > 0 && Days(*since) >= *life)
                stale += (stale.empty() ? "" : ", ") + longName(Weekday(day));
        }
        if (!stale.empty())
            checking.warning(kFile, path + ".life",
                             "keeps " + exactText(*life) + ", and is used too long after delivery on " + stale,
                             "days of sale that its deliveries reach, or another delivery");
    }
}

} // namespace piewright::book
