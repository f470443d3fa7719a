// The book: all that the house knows, checked. Plain values; made only by reading (read.h), so that whoever holds a
// Book may rely on every reference in it leading somewhere and every formula coming to an end.
#pragma once

#include "book/formula.h"
#include "book/gear.h"
#include "book/good.h"
#include "book/hand.h"
#include "book/route.h"
#include "book/rules.h"
#include "book/stuff.h"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace piewright::book {

enum class Paper { A4, Letter };
enum class Shown { Metric, Imperial };

/// Usual temperatures for the water sum.
struct UsualTemperatures {
    Celsius room = celsius(20);
    Celsius flour = celsius(18);
    Celsius fat = celsius(6);
    Celsius tap = celsius(12);
    Celsius ice = celsius(0);

    bool operator==(const UsualTemperatures&) const = default;
};

/// A date that is not as its weekday: shut (no spans) or other hours.
struct SpecialDay {
    Date date;
    std::vector<ClockSpan> hours;
    std::string note;

    bool operator==(const SpecialDay&) const = default;
};

struct House {
    std::string name;
    std::string place;
    Zone zone;
    Currency currency;
    std::string ruleBook; ///< name of the rule book in force
    Mass scaleStep = grams(5);
    Paper paper = Paper::A4;
    Shown shown = Shown::Metric;
    UsualTemperatures usual;
    std::array<std::vector<ClockSpan>, 7> hours; ///< by Weekday::c_encoding(); empty: shut
    std::vector<SpecialDay> special;
    Money energyPrice; ///< of a kilowatt-hour

    bool operator==(const House&) const = default;
};

struct Book {
    House house;
    std::map<SupplierId, Supplier> suppliers;
    std::map<StuffId, Stuff> stuffs;
    std::map<FormulaId, Formula> formulas;
    std::map<TinId, Tin> tins;
    std::map<GoodId, Good> goods;
    std::map<GearId, Gear> gear;
    std::map<HandId, Hand> hands;
    std::map<SkillId, std::string> skills; ///< every skill that a step may ask for, with its name for people
    std::map<RouteId, Route> routes;
    RuleBook rules;

    bool operator==(const Book&) const = default;
};

/// Opening hours on a date, special days considered; empty when shut.
[[nodiscard]] std::vector<ClockSpan> hoursOn(const House& house, Date date);
/// The note of a special day, if the date is one.
[[nodiscard]] std::string noteOn(const House& house, Date date);
/// The next date after `date` on which the house is open; none within a year.
[[nodiscard]] std::optional<Date> nextOpen(const House& house, Date date);
/// The last date before `date` on which the house was open; none within a year.
[[nodiscard]] std::optional<Date> lastOpen(const House& house, Date date);
/// Whether the good is sold on that date.
[[nodiscard]] bool soldOn(const House& house, const Good& good, Date date);
/// The hand's shift on `date`, if any: by its weekday, none when away.
[[nodiscard]] const Shift* shiftOn(const Hand& hand, Date date);

} // namespace piewright::book
