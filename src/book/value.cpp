#include "book/value.h"

#include "finding/suggest.h"

#include <algorithm>
#include <limits>

namespace piewright::book {

namespace {

constexpr std::size_t kLongestName = 40;
constexpr std::size_t kLongestText = 500;

constexpr std::string_view kTimeWant = "a time such as \"04:30\"";
constexpr std::string_view kSpanWant = "two times such as \"05:30-13:30\"";
constexpr std::string_view kDayWant = "one of \"mon\", \"tue\", \"wed\", \"thu\", \"fri\", \"sat\", \"sun\"";
constexpr std::string_view kDateWant = "a date such as 2026-12-25, without quotation marks";
constexpr std::string_view kCurrencyWant = "the three capital letters of a currency, such as \"GBP\"";
constexpr std::string_view kZoneWant = "an IANA time zone such as \"Europe/London\"";

Problems notThat(const Node& node, const std::string& noun, std::string want, std::string hint = {}) {
    Problems problems = Problems::one(Fault::Input, seen(node) + " is not " + noun, std::move(want));
    problems.findings.front().hint = std::move(hint);
    return problems;
}

template <class T> Result<T> readAmount(const Node& node, Result<T> (*parse)(std::string_view)) {
    if (node.kind == Node::Kind::Text) return parse(node.text);
    return wrongKind(node, std::string(kTextWant) + parse({}).problems().findings.front().want);
}

// A duration of whole `Unit`s.
template <class Unit> Result<Unit> readWhole(const Node& node, const std::string& noun, const std::string& want) {
    const auto exact = readAmount<Seconds>(node, parseSeconds);
    if (!exact) {
        Problems problems = exact.problems();
        problems.findings.front().want =
            (node.kind == Node::Kind::Text ? std::string{} : std::string(kTextWant)) + want;
        return problems;
    }
    const auto whole = std::chrono::duration_cast<Unit>(*exact);
    if (whole != *exact) return notThat(node, noun, want);
    return whole;
}

const std::string kMinutesWant = "whole minutes, as in \"30 min\" or \"1 h 30 min\"";
const std::string kDaysWant = "whole days, as in \"2 d\"";

} // namespace

std::string seen(const Node& node) {
    switch (node.kind) {
    case Node::Kind::Text:
        return inQuotes(node.text);
    case Node::Kind::Integer:
        return "the number " + std::to_string(node.number);
    case Node::Kind::Real:
        return "a number with a point";
    case Node::Kind::Truth:
        return node.truth ? "true" : "false";
    case Node::Kind::Day:
        return "the date " + toText(node.date);
    case Node::Kind::Time:
        return "a time";
    case Node::Kind::List:
        return "a list";
    case Node::Kind::Table:
        return "a table";
    }
    return {};
}

Problems wrongKind(const Node& node, std::string want) {
    return Problems::one(Fault::Input, seen(node) + " does not belong here", std::move(want));
}

std::string literal(std::string_view text) {
    constexpr std::string_view kHex = "0123456789ABCDEF";
    std::string quoted = "\"";
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\') {
            quoted += '\\';
            quoted += c;
        } else if (byte < 0x20 || byte == 0x7F) {
            quoted += "\\u00";
            quoted += kHex[byte >> 4U];
            quoted += kHex[byte & 0xFU];
        } else {
            quoted += c;
        }
    }
    return quoted + '"';
}

bool isName(std::string_view text) {
    return !text.empty() && text.size() <= kLongestName && std::all_of(text.begin(), text.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
    });
}

Result<std::string> readName(const Node& node) {
    if (node.kind != Node::Kind::Text) return wrongKind(node, std::string(kTextWant) + "a name, as in \"plain-flour\"");
    if (!isName(node.text)) return notThat(node, "a name", std::string(kNameWant));
    return node.text;
}

Result<std::size_t> readWord(const Node& node, std::string_view noun, std::span<const std::string_view> words) {
    const auto found = std::find(words.begin(), words.end(), node.text);
    if (node.kind == Node::Kind::Text && found != words.end()) return static_cast<std::size_t>(found - words.begin());
    std::string want = "one of";
    for (const std::string_view word : words) {
        want += want.ends_with("of") ? " \"" : ", \"";
        want += word;
        want += '"';
    }
    if (node.kind != Node::Kind::Text) return wrongKind(node, std::move(want));
    const std::vector<std::string> known(words.begin(), words.end());
    return notThat(node, std::string(noun), std::move(want), didYouMean(node.text, known));
}

template <> Result<std::string> readValue<std::string>(const Node& node) {
    constexpr std::string_view kWant = "text in quotation marks, at most 500 bytes long";
    if (node.kind != Node::Kind::Text) return wrongKind(node, std::string(kWant));
    if (node.text.empty()) return notThat(node, "fit to show", "some text, or the key left out");
    if (node.text.size() > kLongestText) return notThat(node, "short enough", std::string(kWant));
    const bool plain = std::none_of(node.text.begin(), node.text.end(),
                                    [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
    if (!plain) return notThat(node, "fit to show", "text on one line, without tabs or control characters");
    return node.text;
}

template <> Result<bool> readValue<bool>(const Node& node) {
    if (node.kind != Node::Kind::Truth) return wrongKind(node, "true or false, without quotation marks");
    return node.truth;
}

template <> Result<int> readValue<int>(const Node& node) {
    constexpr std::int64_t kMost = 1'000'000'000;
    if (node.kind != Node::Kind::Integer) return wrongKind(node, "a whole number, without quotation marks");
    if (node.number > kMost || node.number < -kMost)
        return notThat(node, "a number that belongs here", "a smaller whole number");
    return static_cast<int>(node.number);
}

// clang-format off
template <> Result<Mass> readValue<Mass>(const Node& node) { return readAmount(node, parseMass); }
template <> Result<Volume> readValue<Volume>(const Node& node) { return readAmount(node, parseVolume); }
template <> Result<Length> readValue<Length>(const Node& node) { return readAmount(node, parseLength); }
template <> Result<Celsius> readValue<Celsius>(const Node& node) { return readAmount(node, parseCelsius); }
template <> Result<Kelvin> readValue<Kelvin>(const Node& node) { return readAmount(node, parseKelvin); }
template <> Result<Density> readValue<Density>(const Node& node) { return readAmount(node, parseDensity); }
template <> Result<Share> readValue<Share>(const Node& node) { return readAmount(node, parseShare); }
template <> Result<BakersPercent> readValue<BakersPercent>(const Node& node) { return readAmount(node, parseBakersPercent); }
template <> Result<Power> readValue<Power>(const Node& node) { return readAmount(node, parsePower); }
template <> Result<Money> readValue<Money>(const Node& node) { return readAmount(node, parseMoney); }
template <> Result<Seconds> readValue<Seconds>(const Node& node) { return readAmount(node, parseSeconds); }
template <> Result<Minutes> readValue<Minutes>(const Node& node) { return readWhole<Minutes>(node, "whole minutes", kMinutesWant); }
template <> Result<Days> readValue<Days>(const Node& node) { return readWhole<Days>(node, "whole days", kDaysWant); }
// clang-format on

template <> Result<Currency> readValue<Currency>(const Node& node) {
    if (node.kind != Node::Kind::Text) return wrongKind(node, std::string(kCurrencyWant));
    const auto currency = Currency::of(node.text);
    if (!currency) return notThat(node, "a currency", std::string(kCurrencyWant));
    return *currency;
}

template <> Result<Date> readValue<Date>(const Node& node) {
    if (node.kind != Node::Kind::Day) return wrongKind(node, std::string(kDateWant));
    return node.date;
}

template <> Result<ClockTime> readValue<ClockTime>(const Node& node) {
    if (node.kind != Node::Kind::Text) return wrongKind(node, std::string(kTextWant) + std::string(kTimeWant));
    const auto time = parseClockTime(node.text);
    if (!time || *time >= ClockTime(std::chrono::hours(24)))
        return notThat(node, "a time of the day", std::string(kTimeWant) + ", before \"24:00\"");
    return *time;
}

template <> Result<ClockSpan> readValue<ClockSpan>(const Node& node) {
    constexpr std::size_t kDash = 5;
    if (node.kind != Node::Kind::Text) return wrongKind(node, std::string(kTextWant) + std::string(kSpanWant));
    const std::string_view text = node.text;
    if (text.size() != 2 * kDash + 1 || text[kDash] != '-')
        return notThat(node, "from one time to another", std::string(kSpanWant));
    const auto from = parseClockTime(text.substr(0, kDash));
    const auto to = parseClockTime(text.substr(kDash + 1));
    if (!from || !to) return notThat(node, "from one time to another", std::string(kSpanWant));
    if (*to <= *from)
        return notThat(node, "a span of time", "an end after the beginning",
                       "past midnight is written past 24:00: \"22:00-30:00\" ends at six");
    return ClockSpan{*from, *to};
}

template <> Result<Weekday> readValue<Weekday>(const Node& node) {
    if (node.kind != Node::Kind::Text) return wrongKind(node, std::string(kDayWant));
    if (const auto day = parseWeekday(node.text)) return *day;
    std::string lower = node.text.substr(0, 3);
    for (char& c : lower)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return notThat(node, "a weekday", std::string(kDayWant),
                   parseWeekday(lower) ? "did you mean \"" + lower + "\"?" : std::string{});
}

template <> Result<Zone> readValue<Zone>(const Node& node) {
    constexpr std::size_t kLongestZone = 64;
    if (node.kind != Node::Kind::Text) return wrongKind(node, std::string(kZoneWant));
    if (node.text.size() <= kLongestZone)
        if (auto zone = Zone::named(node.text)) return zone;
    return notThat(node, "a known time zone", std::string(kZoneWant));
}

// clang-format off
template <> std::string writeValue<std::string>(const std::string& value) { return literal(value); }
template <> std::string writeValue<bool>(const bool& value) { return value ? "true" : "false"; }
template <> std::string writeValue<int>(const int& value) { return std::to_string(value); }
template <> std::string writeValue<Mass>(const Mass& value) { return literal(exactText(value)); }
template <> std::string writeValue<Volume>(const Volume& value) { return literal(exactText(value)); }
template <> std::string writeValue<Length>(const Length& value) { return literal(exactText(value)); }
template <> std::string writeValue<Celsius>(const Celsius& value) { return literal(exactText(value)); }
template <> std::string writeValue<Kelvin>(const Kelvin& value) { return literal(exactText(value)); }
template <> std::string writeValue<Density>(const Density& value) { return literal(exactText(value)); }
template <> std::string writeValue<Share>(const Share& value) { return literal(exactText(value)); }
template <> std::string writeValue<BakersPercent>(const BakersPercent& value) { return literal(exactText(value)); }
template <> std::string writeValue<Power>(const Power& value) { return literal(exactText(value)); }
template <> std::string writeValue<Money>(const Money& value) { return literal(exactText(value)); }
template <> std::string writeValue<Currency>(const Currency& value) { return literal(value.code()); }
template <> std::string writeValue<Seconds>(const Seconds& value) { return literal(exactText(value)); }
template <> std::string writeValue<Minutes>(const Minutes& value) { return literal(exactText(Seconds(value))); }
template <> std::string writeValue<Days>(const Days& value) { return literal(exactText(Seconds(value))); }
template <> std::string writeValue<Date>(const Date& value) { return toText(value); }
template <> std::string writeValue<ClockTime>(const ClockTime& value) { return literal(toText(value)); }
template <> std::string writeValue<ClockSpan>(const ClockSpan& value) { return literal(toText(value.from) + '-' + toText(value.to)); }
template <> std::string writeValue<Weekday>(const Weekday& value) { return literal(toText(value)); }
template <> std::string writeValue<Zone>(const Zone& value) { return literal(value.name()); }
// clang-format on

} // namespace piewright::book
