// Dates and times as tills write them.
#pragma once

#include "units/civil.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace piewright::sales {

enum class DateForm {
    YearMonthDay,     ///< 2026-11-27, 2026/11/27, 2026.11.27
    Compact,          ///< 20261127
    DayMonthYearDots, ///< 27.11.2026
    DayNameYear,      ///< 27-Nov-2026, 27 novembre 2026, Nov 27, 2026
    TwoNumbersYear,   ///< 27/11/2026 or 11/27/2026, with / or -: which, only the whole file can tell
};

/// A date's parts as written. For TwoNumbersYear `first` and `second` are in the order of the text, else month and day.
struct DateText {
    DateForm form = DateForm::YearMonthDay;
    int year = 0; ///< a year of two digits is of this century
    int first = 0;
    int second = 0;
    char mark = '-'; ///< between the parts
};

/// The parts, or nothing when the text is no date of a form above. A weekday's name before it is passed over. Month
/// names: English, German, French, Spanish, three letters or more. Whether the day exists is not asked here.
[[nodiscard]] std::optional<DateText> parseDateText(std::string_view text);

/// The date, of the years 1990 to 2100; nothing when there is no such day. `dayFirst` matters to TwoNumbersYear only.
[[nodiscard]] std::optional<Date> dateOf(const DateText& text, bool dayFirst);

/// How the file's distinct dates (in the order met) settle which of two numbers is the day: a number above 12; else the
/// one order under which the dates run forward or backward; else, of four dates or more, the order under which they lie
/// five times closer together. Nothing when it stays open or when none has two numbers.
[[nodiscard]] std::optional<bool> dayFirstOf(std::span<const DateText> dates);

struct TimeText {
    int minute = 0;                   ///< of the day
    std::optional<int> offsetMinutes; ///< `Z` is 0
};

/// `9:05`, `09:05:59.5`, `1:05 pm`, `9 am`, `12.30`, `12h30`, `12.30 Uhr`, `1230`, with `Z` or an offset behind
/// colons or plain digits. Nothing when it is no time of a day (24:00 included).
[[nodiscard]] std::optional<TimeText> parseTimeText(std::string_view text);

struct WhenText {
    std::string_view date;
    std::string_view time; ///< empty: a date alone
};
/// Parts a field that may hold a date, or a date and a time. Trims.
[[nodiscard]] WhenText splitWhen(std::string_view text);

/// `day/month/year`, …, for people.
[[nodiscard]] std::string formName(const DateText& text, bool dayFirst);

} // namespace piewright::sales
