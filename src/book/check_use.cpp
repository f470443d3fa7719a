// What a person should look at, though the book can be used: things that nothing uses, rules that nobody verified, days
// without hands.
#include "book/checks.h"

#include <algorithm>
#include <set>

namespace piewright::book {

namespace {

constexpr std::string_view kHouseFile = "house.toml";
constexpr unsigned kWeekDays = 7;

struct Used {
    std::set<StuffId> stuffs;
    std::set<FormulaId> formulas;
    std::set<TinId> tins;
    std::set<RouteId> routes;
};

Used usedIn(const Book& book) {
    Used used;
    for (const auto& [id, good] : book.goods) {
        if (good.tin) used.tins.insert(*good.tin);
        if (good.base) used.formulas.insert(good.base->paste);
        if (good.lid) used.formulas.insert(good.lid->paste);
        for (const Deposit& deposit : good.deposits) used.formulas.insert(deposit.formula);
        used.routes.insert(good.route);
    }
    for (const auto& [id, formula] : book.formulas) {
        used.routes.insert(formula.route);
        for (const Line& line : formula.lines) {
            if (const auto* stuff = std::get_if<StuffId>(&line.of)) used.stuffs.insert(*stuff);
            const auto* of = std::get_if<FormulaId>(&line.of);
            if (of != nullptr && *of != id) used.formulas.insert(*of);
        }
    }
    return used;
}

template <class Key, class Value>
void unused(const Checking& checking, const std::map<Key, Value>& things, const std::set<Key>& used,
            std::string_view file, const std::string& table, const std::string& by) {
    for (const auto& [id, thing] : things)
        if (!used.contains(id)) checking.warning(file, table + '.' + id.name(), "is used by no " + by, {});
}

Minutes sinceSunday(unsigned day, ClockTime time) {
    constexpr Minutes kDay{24 * 60};
    return static_cast<int>(day) * kDay + time.sinceMidnight();
}

} // namespace

void warnOfUnused(const Checking& checking) {
    if (checking.report.errors() > 0) return; // a name misspelt elsewhere would make its thing look unused
    const Book& book = checking.book;
    const Used used = usedIn(book);
    unused(checking, book.stuffs, used.stuffs, "stuffs.toml", "stuff", "formula");
    unused(checking, book.formulas, used.formulas, "formulas.toml", "formula", "good and no other formula");
    unused(checking, book.tins, used.tins, "tins.toml", "tin", "good");
    unused(checking, book.routes, used.routes, "routes.toml", "route", "formula and no good");
}

void warnOfUnverifiedRules(const Checking& checking) {
    const auto& hands = checking.book.hands;
    const bool young = std::any_of(hands.begin(), hands.end(), [](const auto& each) { return each.second.under18; });
    for (const Rule& rule : checking.book.rules.rules)
        if (rule.confidence == Confidence::Memory && (young || !rule.id.name().ends_with("-under-18")))
            checking.warning(kHouseFile, "house.rules",
                             "the rule " + rule.id.name() + " of " + checking.book.rules.name + " is not verified",
                             "the house to check it (" + rule.source + ") and say so under [confirm]");
}

void warnOfDaysWithoutHands(const Checking& checking) {
    const House& house = checking.book.house;
    if (!checking.sources.known("hands.toml")) return;
    std::array<bool, kWeekDays> staffed{};
    for (const auto& [id, hand] : checking.book.hands)
        for (const Shift& shift : hand.shifts)
            for (const Weekday day : shift.days) staffed.at(day.c_encoding()) = true;
    for (unsigned day = 0; day < kWeekDays; ++day)
        if (!house.hours.at(day).empty() && !staffed.at(day))
            checking.warning(kHouseFile, "hours." + toText(Weekday(day)), "open on a day without hands",
                             "a shift on " + longName(Weekday(day)) + " in hands.toml");
    for (std::size_t i = 0; i < house.special.size(); ++i) {
        const SpecialDay& special = house.special[i];
        if (checking.sound("special[" + std::to_string(i) + ']') && !special.hours.empty() &&
            !staffed.at(special.date.weekday().c_encoding()))
            checking.warning(kHouseFile, "special[" + std::to_string(i) + "].date",
                             "open on a day without hands, " + longName(special.date.weekday()),
                             "a shift on that weekday in hands.toml");
    }
}

void warnOfShortKeeping(const Checking& checking) {
    constexpr Minutes kWeek{7 * 24 * 60};
    const House& house = checking.book.house;
    Minutes longest{0};
    std::optional<Minutes> first;
    std::optional<Minutes> closed;
    for (unsigned day = 0; day < kWeekDays; ++day) {
        if (house.hours.at(day).empty()) continue;
        const Minutes opens = sinceSunday(day, house.hours.at(day).front().from);
        if (!first) first = opens;
        if (closed) longest = std::max(longest, opens - *closed);
        closed = sinceSunday(day, house.hours.at(day).back().to);
    }
    if (closed && first) longest = std::max(longest, *first + kWeek - *closed);
    for (const auto& [id, formula] : checking.book.formulas)
        if (formula.made == Made::DayBefore && formula.keeps && *formula.keeps < longest &&
            checking.sound("formula." + id.name()))
            checking.warning("formulas.toml", "formula." + id.name() + ".keeps",
                             "keeps " + exactText(*formula.keeps) + ", and the house is shut for " +
                                 exactText(Seconds(longest)) + " at a stretch",
                             "what is made before it to last until after it, or made on the day");
}

} // namespace piewright::book
