#include "units/civil.h"

#include <array>
#include <cctype>
#include <charconv>
#include <date/tz.h>
#include <exception>

namespace piewright {

namespace {

constexpr std::array<const char*, 7> kShortDays{"sun", "mon", "tue", "wed", "thu", "fri", "sat"};
constexpr std::array<const char*, 7> kLongDays{"Sunday",   "Monday", "Tuesday", "Wednesday",
                                               "Thursday", "Friday", "Saturday"};

const date::time_zone& zoneOf(const void* zone) { return *static_cast<const date::time_zone*>(zone); }

std::string padded(unsigned value, std::size_t width) {
    std::string text = std::to_string(value);
    return text.size() < width ? std::string(width - text.size(), '0') + text : text;
}

std::optional<unsigned> digits(std::string_view text) {
    unsigned value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
    return value;
}

date::local_seconds localAt(Date date, ClockTime time) {
    return date::local_seconds(date.days().time_since_epoch() + time.sinceMidnight());
}

} // namespace

Result<Zone> Zone::named(std::string_view name) {
    try {
        Zone zone;
        zone.zone_ = date::locate_zone(name);
        zone.name_ = name;
        return zone;
    } catch (const std::exception&) {
        return Problems::one(Fault::Input, "no time zone \"" + std::string(name) + "\" is known",
                             "an IANA name such as \"Europe/London\"");
    }
}

Instant Zone::at(Date date, ClockTime time, Choose choose) const {
    const auto way = choose == Choose::Earliest ? date::choose::earliest : date::choose::latest;
    return zoneOf(zone_).to_sys(localAt(date, time), way);
}

Date Zone::dateOf(Instant instant) const {
    const auto local = zoneOf(zone_).to_local(instant);
    return Date(std::chrono::local_days(std::chrono::floor<Days>(local.time_since_epoch())));
}

ClockTime Zone::clockOf(Instant instant) const {
    const auto since = zoneOf(zone_).to_local(instant).time_since_epoch();
    return ClockTime(std::chrono::floor<Minutes>(since - std::chrono::floor<Days>(since)));
}

std::string toText(Date date) {
    const auto ymd = date.ymd();
    return padded(static_cast<unsigned>(static_cast<int>(ymd.year())), 4) + '-' +
           padded(static_cast<unsigned>(ymd.month()), 2) + '-' + padded(static_cast<unsigned>(ymd.day()), 2);
}

std::string toText(ClockTime time) {
    const auto minutes = static_cast<unsigned>(time.sinceMidnight().count());
    return padded(minutes / 60, 2) + ':' + padded(minutes % 60, 2);
}

std::string toText(Weekday weekday) { return kShortDays.at(weekday.c_encoding()); }
std::string longName(Weekday weekday) { return kLongDays.at(weekday.c_encoding()); }

std::optional<Date> parseDate(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const auto year = digits(text.substr(0, 4));
    const auto month = digits(text.substr(5, 2));
    const auto day = digits(text.substr(8, 2));
    if (!year || !month || !day) return std::nullopt;
    const std::chrono::year_month_day ymd{std::chrono::year(static_cast<int>(*year)), std::chrono::month(*month),
                                          std::chrono::day(*day)};
    if (!ymd.ok()) return std::nullopt;
    return Date(ymd);
}

std::optional<ClockTime> parseClockTime(std::string_view text) {
    if (text.size() != 5 || text[2] != ':') return std::nullopt;
    const auto hours = digits(text.substr(0, 2));
    const auto minutes = digits(text.substr(3, 2));
    if (!hours || !minutes || *hours > 48 || *minutes > 59 || (*hours == 48 && *minutes > 0)) return std::nullopt;
    return ClockTime(std::chrono::hours(*hours) + Minutes(*minutes));
}

std::optional<Weekday> parseWeekday(std::string_view text) {
    for (unsigned i = 0; i < kShortDays.size(); ++i)
        if (text == kShortDays[i]) return Weekday(i);
    return std::nullopt;
}

} // namespace piewright
