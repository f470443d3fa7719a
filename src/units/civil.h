// Dates, clock times and the zone that joins them. Wall clock and instant are different types and meet only through
// a Zone, which knows about the days of 23 and 25 hours.
#pragma once

#include "finding/result.h"

#include <chrono>
#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace piewright {

using Minutes = std::chrono::minutes;
using Seconds = std::chrono::seconds;
using Days = std::chrono::days;
using Weekday = std::chrono::weekday;

/// A point of time, the same everywhere.
using Instant = std::chrono::sys_seconds;

/// A day on the house's calendar.
class Date {
  public:
    constexpr Date() = default;
    constexpr explicit Date(std::chrono::local_days days) : days_(days) {}
    constexpr explicit Date(std::chrono::year_month_day ymd) : days_(ymd) {}
    [[nodiscard]] constexpr std::chrono::local_days days() const { return days_; }
    [[nodiscard]] constexpr std::chrono::year_month_day ymd() const { return std::chrono::year_month_day(days_); }
    [[nodiscard]] constexpr Weekday weekday() const { return Weekday(days_); }
    constexpr auto operator<=>(const Date&) const = default;
    friend constexpr Date operator+(Date a, Days d) { return Date(a.days_ + d); }
    friend constexpr Date operator-(Date a, Days d) { return Date(a.days_ - d); }
    friend constexpr Days operator-(Date a, Date b) { return a.days_ - b.days_; }

  private:
    std::chrono::local_days days_{};
};

/// A time on the wall clock, in whole minutes since the day's 00:00; past 24:00 means the next day (up to 48:00).
class ClockTime {
  public:
    constexpr ClockTime() = default;
    constexpr explicit ClockTime(Minutes sinceMidnight) : minutes_(sinceMidnight) {}
    [[nodiscard]] constexpr Minutes sinceMidnight() const { return minutes_; }
    constexpr auto operator<=>(const ClockTime&) const = default;
    friend constexpr ClockTime operator+(ClockTime a, Minutes d) { return ClockTime(a.minutes_ + d); }
    friend constexpr ClockTime operator-(ClockTime a, Minutes d) { return ClockTime(a.minutes_ - d); }
    friend constexpr Minutes operator-(ClockTime a, ClockTime b) { return a.minutes_ - b.minutes_; }

  private:
    Minutes minutes_{0};
};

/// From `from` up to but not including `to`.
struct ClockSpan {
    ClockTime from;
    ClockTime to;
    auto operator<=>(const ClockSpan&) const = default;
};

/// Which of two readings to take when the wall clock shows a time twice (or never) as the clocks change.
enum class Choose { Earliest, Latest };

/// A time zone of the IANA database, by name. Copies are cheap.
class Zone {
  public:
    /// The zone of that name, or what is wrong with the name. Reads the system's time zone files.
    static Result<Zone> named(std::string_view name);

    [[nodiscard]] const std::string& name() const { return name_; }

    /// When the wall clock of `date` shows `time`. A time the clocks skip is read as the moment they skip it.
    [[nodiscard]] Instant at(Date date, ClockTime time, Choose choose = Choose::Earliest) const;

    /// What the calendar and the wall clock show at `instant`.
    [[nodiscard]] Date dateOf(Instant instant) const;
    [[nodiscard]] ClockTime clockOf(Instant instant) const;

    friend bool operator==(const Zone& a, const Zone& b) { return a.name_ == b.name_; }

  private:
    std::string name_;
    const void* zone_ = nullptr; // date::time_zone; the database lives as long as the program
};

/// `2026-11-27`, ISO 8601.
[[nodiscard]] std::string toText(Date date);
/// `04:30`; past midnight `25:10` as stored, for files.
[[nodiscard]] std::string toText(ClockTime time);
/// `mon` … `sun`, as the book's files spell them.
[[nodiscard]] std::string toText(Weekday weekday);
/// `Monday` … `Sunday`, for people.
[[nodiscard]] std::string longName(Weekday weekday);

/// Strict readers; nothing when the text is not exactly of that form or names no real day.
[[nodiscard]] std::optional<Date> parseDate(std::string_view text);
[[nodiscard]] std::optional<ClockTime> parseClockTime(std::string_view text);
[[nodiscard]] std::optional<Weekday> parseWeekday(std::string_view text);

} // namespace piewright
