#include "sales/when.h"

#include "sales/fold.h"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace piewright::sales {

namespace {

constexpr int kFirstYear = 1990;
constexpr int kLastYear = 2100;

bool digit(char c) { return c >= '0' && c <= '9'; }

/// Up to `most` digits off the front; -1 when there is none.
int number(std::string_view& text, std::size_t most) {
    std::size_t length = 0;
    int value = 0;
    while (length < text.size() && length < most && digit(text[length])) value = value * 10 + (text[length++] - '0');
    text.remove_prefix(length);
    return length == 0 ? -1 : value;
}

int twoDigits(std::string_view text, std::size_t at) { return (text[at] - '0') * 10 + (text[at + 1] - '0'); }

bool letter(char c) { return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80; }

/// Month by its folded name, of three letters or more (`jui` is both June and July in French: four).
int monthOf(std::string_view name) {
    struct Month {
        std::string_view name;
        int month;
    };
    constexpr std::array kMonths{
        Month{"january", 1},    Month{"januar", 1},     Month{"jänner", 1},    Month{"janvier", 1},
        Month{"enero", 1},      Month{"february", 2},   Month{"februar", 2},   Month{"février", 2},
        Month{"fevrier", 2},    Month{"febrero", 2},    Month{"march", 3},     Month{"märz", 3},
        Month{"maerz", 3},      Month{"mars", 3},       Month{"marzo", 3},     Month{"mrz", 3},
        Month{"april", 4},      Month{"avril", 4},      Month{"abril", 4},     Month{"may", 5},
        Month{"mai", 5},        Month{"mayo", 5},       Month{"june", 6},      Month{"juni", 6},
        Month{"juin", 6},       Month{"junio", 6},      Month{"july", 7},      Month{"juli", 7},
        Month{"juillet", 7},    Month{"julio", 7},      Month{"august", 8},    Month{"août", 8},
        Month{"aout", 8},       Month{"agosto", 8},     Month{"september", 9}, Month{"septembre", 9},
        Month{"septiembre", 9}, Month{"setiembre", 9},  Month{"sept", 9},      Month{"october", 10},
        Month{"oktober", 10},   Month{"octobre", 10},   Month{"octubre", 10},  Month{"november", 11},
        Month{"novembre", 11},  Month{"noviembre", 11}, Month{"december", 12}, Month{"dezember", 12},
        Month{"décembre", 12},  Month{"decembre", 12},  Month{"diciembre", 12}};
    if (name.size() < 3 || name == "jui") return 0;
    for (const Month& month : kMonths)
        if (month.name.starts_with(name)) return month.month;
    return 0;
}

int fullYear(int year, std::size_t digits) { return digits == 2 ? 2000 + year : year; }

void skip(std::string_view& text, std::string_view marks) {
    while (!text.empty() && marks.find(text.front()) != std::string_view::npos) text.remove_prefix(1);
}

/// `27-Nov-2026`, `27. November 2026`, `Nov 27, 2026`, all folded to small letters.
std::optional<DateText> withName(std::string_view text) {
    int day = 0;
    int month = 0;
    for (int part = 0; part < 2; ++part) {
        if (text.empty()) return std::nullopt;
        if (digit(text.front())) {
            if (day != 0) return std::nullopt;
            day = number(text, 2);
            if (!text.empty() && digit(text.front())) return std::nullopt; // `Nov 2026` has no day
            for (const std::string_view ending : {"st", "nd", "rd", "th", "er"})
                if (text.starts_with(ending) && (text.size() == 2 || !letter(text[2]))) text.remove_prefix(2);
        } else {
            std::size_t length = 0;
            while (length < text.size() && letter(text[length])) ++length;
            if (month != 0) return std::nullopt;
            month = monthOf(text.substr(0, length));
            if (month == 0) return std::nullopt;
            text.remove_prefix(length);
        }
        skip(text, " -/.,");
        if (part == 0 && (text.starts_with("de ") || text.starts_with("of "))) text.remove_prefix(3);
    }
    if (text.starts_with("de ")) text.remove_prefix(3);
    const std::size_t before = text.size();
    const int year = number(text, 4);
    const std::size_t digits = before - text.size();
    if (day <= 0 || year < 0 || !text.empty() || (digits != 2 && digits != 4)) return std::nullopt;
    return DateText{DateForm::DayNameYear, fullYear(year, digits), month, day, ' '};
}

/// Numbers and marks alone.
std::optional<DateText> withNumbers(std::string_view text) {
    if (text.empty() || !digit(text.front())) return std::nullopt;
    std::string_view rest = text;
    const int one = number(rest, 8);
    const std::size_t oneDigits = text.size() - rest.size();
    if (rest.empty()) {
        if (oneDigits != 8) return std::nullopt;
        return DateText{DateForm::Compact, one / 10'000, one / 100 % 100, one % 100, '\0'};
    }
    const char mark = rest.front();
    if (mark != '-' && mark != '/' && mark != '.') return std::nullopt;
    rest.remove_prefix(1);
    const int two = number(rest, 2);
    if (two < 0 || rest.empty() || rest.front() != mark) return std::nullopt;
    rest.remove_prefix(1);
    const std::size_t before = rest.size();
    const int three = number(rest, 4);
    const std::size_t threeDigits = before - rest.size();
    if (three < 0 || !rest.empty()) return std::nullopt;
    if (oneDigits == 4 && threeDigits <= 2) return DateText{DateForm::YearMonthDay, one, two, three, mark};
    if (oneDigits > 2 || (threeDigits != 2 && threeDigits != 4)) return std::nullopt;
    const int year = fullYear(three, threeDigits);
    if (mark == '.') return DateText{DateForm::DayMonthYearDots, year, two, one, mark};
    return DateText{DateForm::TwoNumbersYear, year, one, two, mark};
}

} // namespace

std::optional<DateText> parseDateText(std::string_view text) {
    // Letters mean a weekday's or a month's name.
    const auto plain = [](char c) { return digit(c) || c == '-' || c == '/' || c == '.'; };
    if (std::all_of(text.begin(), text.end(), plain)) return withNumbers(text);
    if (text.size() > 64) return std::nullopt;
    const std::string folded = fold(text);
    text = folded;
    std::string_view rest = text;
    std::size_t word = 0;
    while (word < rest.size() && letter(rest[word])) ++word;
    rest.remove_prefix(word);
    skip(rest, " ,.");
    if (rest.starts_with("den ")) rest.remove_prefix(4);
    // `mar 24/11/2026` is a French Tuesday, not March: numbers alone behind a word settle it.
    if (word > 0)
        if (const auto numbers = withNumbers(rest)) return numbers;
    return withName(word > 0 && monthOf(text.substr(0, word)) == 0 ? rest : text);
}

std::optional<Date> dateOf(const DateText& text, bool dayFirst) {
    const bool swapped = text.form == DateForm::TwoNumbersYear && dayFirst;
    const int month = swapped ? text.second : text.first;
    const int day = swapped ? text.first : text.second;
    if (text.year < kFirstYear || text.year > kLastYear || month < 1 || month > 12 || day < 1) return std::nullopt;
    const std::chrono::year_month_day ymd{std::chrono::year(text.year),
                                          std::chrono::month(static_cast<unsigned>(month)),
                                          std::chrono::day(static_cast<unsigned>(day))};
    return ymd.ok() ? std::optional(Date(ymd)) : std::nullopt;
}

std::optional<bool> dayFirstOf(std::span<const DateText> dates) {
    std::size_t firstAbove = 0;
    std::size_t secondAbove = 0;
    std::size_t open = 0;
    for (const DateText& text : dates) {
        if (text.form != DateForm::TwoNumbersYear) continue;
        ++open;
        if (text.first > 12) ++firstAbove;
        if (text.second > 12) ++secondAbove;
    }
    if (open == 0) return std::nullopt;
    // A few impossible dates of the other kind are slips, to be left out row by row.
    if (firstAbove != secondAbove) return firstAbove > secondAbove;
    if (firstAbove > 0) return std::nullopt;

    struct Run {
        bool forward = true;
        bool backward = true;
        bool any = false;
        Date least, most, last;
    };
    std::array<Run, 2> runs; // month first, day first
    for (const DateText& text : dates) {
        for (std::size_t i = 0; i < 2; ++i) {
            const auto date = dateOf(text, i == 1);
            if (!date) continue;
            Run& run = runs.at(i);
            if (run.any && *date < run.last) run.forward = false;
            if (run.any && *date > run.last) run.backward = false;
            run.last = *date;
            run.least = run.any ? std::min(run.least, *date) : *date;
            run.most = run.any ? std::max(run.most, *date) : *date;
            run.any = true;
        }
    }
    const auto ordered = [](const Run& run) { return run.forward || run.backward; };
    if (ordered(runs[0]) != ordered(runs[1])) return ordered(runs[1]);
    if (dates.size() < 4 || !runs[0].any || !runs[1].any) return std::nullopt;
    const Days monthFirst = runs[0].most - runs[0].least;
    const Days dayFirst = runs[1].most - runs[1].least;
    if (dayFirst * 5 <= monthFirst) return true;
    if (monthFirst * 5 <= dayFirst) return false;
    return std::nullopt;
}

std::optional<TimeText> parseTimeText(std::string_view text) {
    text = trimmed(text);
    // The commonest by far: 12:34 and 12:34:56.
    const auto colonAt = [&](std::size_t at) { return text[at] == ':' && digit(text[at + 1]) && digit(text[at + 2]); };
    if ((text.size() == 5 || text.size() == 8) && digit(text[0]) && digit(text[1]) && colonAt(2) &&
        (text.size() == 5 || colonAt(5))) {
        const int hour = twoDigits(text, 0);
        const int minute = twoDigits(text, 3);
        if (hour > 23 || minute > 59 || (text.size() == 8 && twoDigits(text, 6) > 60)) return std::nullopt;
        return TimeText{hour * 60 + minute, std::nullopt};
    }
    if (text.size() > 40) return std::nullopt;
    const std::string folded = fold(text);
    text = folded;
    const std::string_view whole = text;
    int hour = number(text, 6);
    const std::size_t digits = whole.size() - text.size();
    int minute = 0;
    int second = 0;
    bool mayOffset = false;
    bool partless = false;
    if (hour < 0) return std::nullopt;
    if (digits == 4 || digits == 6) {
        second = digits == 6 ? hour % 100 : 0;
        minute = digits == 6 ? hour / 100 % 100 : hour % 100;
        hour = digits == 6 ? hour / 10'000 : hour / 100;
        mayOffset = true;
    } else if (digits > 2) {
        return std::nullopt;
    } else if (!text.empty() && (text.front() == ':' || text.front() == '.' || text.front() == 'h')) {
        const char mark = text.front();
        mayOffset = mark == ':';
        text.remove_prefix(1);
        const std::size_t before = text.size();
        minute = number(text, 2);
        if (minute < 0 && mark == 'h')
            minute = 0; // 12h
        else if (before - text.size() != 2)
            return std::nullopt;
        if (!text.empty() && text.front() == mark && mark != 'h') {
            text.remove_prefix(1);
            const std::size_t left = text.size();
            second = number(text, 2);
            if (left - text.size() != 2) return std::nullopt;
            if (!text.empty() && (text.front() == '.' || text.front() == ',')) {
                text.remove_prefix(1);
                if (number(text, 1) < 0) return std::nullopt;
                while (!text.empty() && digit(text.front())) text.remove_prefix(1);
            }
        }
    } else {
        partless = true;
    }
    text = trimmed(text);
    if (text == "uhr" || text == "h") text = {};
    for (const bool afternoon : {false, true}) {
        for (const std::string_view mark : afternoon ? std::array<std::string_view, 3>{"pm", "p.m.", "p"}
                                                     : std::array<std::string_view, 3>{"am", "a.m.", "a"}) {
            if (text != mark) continue;
            if (hour < 1 || hour > 12) return std::nullopt;
            hour = hour % 12 + (afternoon ? 12 : 0);
            text = {};
            partless = false;
            break;
        }
    }
    TimeText time;
    if (mayOffset && !text.empty()) {
        if (text == "z" || text == "utc") {
            time.offsetMinutes = 0;
            text = {};
        } else if (text.front() == '+' || text.front() == '-') {
            const int sign = text.front() == '-' ? -1 : 1;
            text.remove_prefix(1);
            const std::size_t before = text.size();
            int hours = number(text, 4);
            int minutes = 0;
            if (before - text.size() == 4) {
                minutes = hours % 100;
                hours /= 100;
            } else if (before - text.size() != 2) {
                return std::nullopt;
            } else if (!text.empty() && text.front() == ':') {
                text.remove_prefix(1);
                minutes = number(text, 2);
            }
            if (hours > 18 || minutes < 0 || minutes > 59) return std::nullopt;
            time.offsetMinutes = sign * (hours * 60 + minutes);
        }
    }
    if (partless || !text.empty() || hour > 23 || minute > 59 || second > 60) return std::nullopt;
    time.minute = hour * 60 + minute;
    return time;
}

WhenText splitWhen(std::string_view text) {
    text = trimmed(text);
    const std::size_t colon = text.find(':');
    if (colon != std::string_view::npos) {
        std::size_t start = colon;
        while (start > 0 && colon - start < 2 && digit(text[start - 1])) --start;
        std::size_t end = start;
        while (end > 0 &&
               (text[end - 1] == ' ' || text[end - 1] == 'T' || text[end - 1] == 't' || text[end - 1] == ','))
            --end;
        return {text.substr(0, end), text.substr(start)};
    }
    // 202611271230 and 20261127123059
    if ((text.size() == 12 || text.size() == 14) && std::all_of(text.begin(), text.end(), digit))
        return {text.substr(0, 8), text.substr(8)};
    // 20261127T123059, ISO 8601's basic form
    if (text.size() >= 13 && (text[8] == 'T' || text[8] == 't') && digit(text[0]) && digit(text[7]) && digit(text[9]))
        return {text.substr(0, 8), text.substr(9)};
    // A last word that is a time without a colon: 12.30, 12h30.
    const std::size_t space = text.rfind(' ');
    if (space != std::string_view::npos) {
        const std::string_view word = text.substr(space + 1);
        if (word.find_first_of(".h") != std::string_view::npos && parseTimeText(word))
            return {trimmed(text.substr(0, space)), word};
    }
    return {text, {}};
}

std::string formName(const DateText& text, bool dayFirst) {
    const std::string mark(1, text.mark);
    switch (text.form) {
    case DateForm::YearMonthDay:
        return "year" + mark + "month" + mark + "day";
    case DateForm::Compact:
        return "yearmonthday";
    case DateForm::DayMonthYearDots:
        return "day.month.year";
    case DateForm::DayNameYear:
        return "day, month's name, year";
    case DateForm::TwoNumbersYear:
        return dayFirst ? "day" + mark + "month" + mark + "year" : "month" + mark + "day" + mark + "year";
    }
    return {};
}

} // namespace piewright::sales
