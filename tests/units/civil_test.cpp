// Clock changes asserted here are those of the IANA database for zones whose rules have stood for years:
// the European Union and the United Kingdom change at 01:00 UTC on the last Sundays of March and October, the United
// States at 02:00 local time on the second Sunday of March and the first of November.
#include "units/civil.h"

#include <gtest/gtest.h>

namespace piewright {
namespace {

using namespace std::chrono_literals;

Zone zone(const char* name) { return Zone::named(name).value(); }
Date day(int y, unsigned m, unsigned d) {
    return Date(std::chrono::year(y) / std::chrono::month(m) / std::chrono::day(d));
}
ClockTime clock(int h, int m) { return ClockTime(std::chrono::hours(h) + Minutes(m)); }
Instant utc(int y, unsigned mo, unsigned d, int h, int mi) {
    return std::chrono::sys_days(day(y, mo, d).ymd()) + std::chrono::hours(h) + Minutes(mi);
}

TEST(Date, CountsDaysAndKnowsItsWeekday) {
    EXPECT_EQ(day(2026, 11, 27).weekday(), std::chrono::Friday);
    EXPECT_EQ(day(2026, 12, 31) + Days(1), day(2027, 1, 1));
    EXPECT_EQ(day(2028, 3, 1) - Days(1), day(2028, 2, 29));
    EXPECT_EQ(day(2027, 1, 1) - day(2026, 1, 1), Days(365));
    EXPECT_LT(day(2026, 11, 27), day(2026, 11, 28));
}

TEST(DateText, IsIso8601AndReadsBack) {
    EXPECT_EQ(toText(day(2026, 3, 9)), "2026-03-09");
    EXPECT_EQ(parseDate("2026-03-09"), day(2026, 3, 9));
    EXPECT_EQ(parseDate("2028-02-29"), day(2028, 2, 29));
}

TEST(DateText, IsReadStrictly) {
    for (const char* wrong : {"", "2026-3-9", "2026-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "2026/03/09",
                              "09-03-2026", "2026-03-09 ", " 026-03-09", "2026-03-0x", "-026-03-09", "+026-03-09"})
        EXPECT_FALSE(parseDate(wrong).has_value()) << wrong;
}

TEST(ClockText, RunsPastMidnightAndReadsBack) {
    EXPECT_EQ(toText(clock(4, 30)), "04:30");
    EXPECT_EQ(toText(clock(25, 10)), "25:10");
    EXPECT_EQ(parseClockTime("25:10"), clock(25, 10));
    EXPECT_EQ(parseClockTime("48:00"), clock(48, 0));
    for (const char* wrong :
         {"", "4:30", "04:60", "48:01", "49:00", "04.30", "04:3", "04:30:00", "-1:30", "0a:30", "+4:30"})
        EXPECT_FALSE(parseClockTime(wrong).has_value()) << wrong;
}

TEST(WeekdayText, SpellsSevenDays) {
    for (unsigned i = 0; i < 7; ++i) EXPECT_EQ(parseWeekday(toText(Weekday(i))), Weekday(i));
    EXPECT_EQ(toText(std::chrono::Monday), "mon");
    EXPECT_EQ(longName(std::chrono::Sunday), "Sunday");
    for (const char* wrong : {"", "Mon", "monday", "mo"}) EXPECT_FALSE(parseWeekday(wrong).has_value()) << wrong;
}

TEST(Zone, UnknownNamesAreRefused) {
    for (const char* wrong : {"", "Europe/Londn", "../../etc/passwd", "/etc/passwd", "GMT+99", "europe/london "}) {
        const auto result = Zone::named(wrong);
        ASSERT_FALSE(result.ok()) << wrong;
        EXPECT_EQ(result.problems().fault, Fault::Input);
    }
}

TEST(Zone, JoinsDayAndClock) {
    EXPECT_EQ(zone("Europe/London").at(day(2026, 1, 15), clock(12, 0)), utc(2026, 1, 15, 12, 0));
    EXPECT_EQ(zone("Europe/London").at(day(2026, 7, 15), clock(12, 0)), utc(2026, 7, 15, 11, 0));
    EXPECT_EQ(zone("Asia/Kolkata").at(day(2026, 7, 15), clock(12, 0)), utc(2026, 7, 15, 6, 30));
    EXPECT_EQ(zone("Europe/London").name(), "Europe/London");
    EXPECT_EQ(zone("Europe/London"), zone("Europe/London"));
}

TEST(Zone, ATimePastMidnightIsOnTheNextDay) {
    const Zone london = zone("Europe/London");
    EXPECT_EQ(london.at(day(2026, 11, 27), clock(25, 30)), london.at(day(2026, 11, 28), clock(1, 30)));
}

TEST(Zone, SpringDayHas23Hours) {
    const Zone london = zone("Europe/London");
    const Date change = day(2026, 3, 29);
    EXPECT_EQ(london.at(change + Days(1), clock(0, 0)) - london.at(change, clock(0, 0)), 23h);
    // A shift from 22:00 to 06:00 over that night is seven hours.
    EXPECT_EQ(london.at(change - Days(1), clock(30, 0)) - london.at(change - Days(1), clock(22, 0)), 7h);
}

TEST(Zone, AutumnDayHas25Hours) {
    const Zone london = zone("Europe/London");
    const Date change = day(2026, 10, 25);
    EXPECT_EQ(london.at(change + Days(1), clock(0, 0)) - london.at(change, clock(0, 0)), 25h);
    const Zone newYork = zone("America/New_York");
    EXPECT_EQ(newYork.at(day(2026, 11, 2), clock(0, 0)) - newYork.at(day(2026, 11, 1), clock(0, 0)), 25h);
}

TEST(Zone, ASkippedTimeIsTheMomentTheClocksSkip) {
    // 01:00 to 02:00 on that morning is not shown on any London clock.
    const Zone london = zone("Europe/London");
    for (const Choose choose : {Choose::Earliest, Choose::Latest}) {
        EXPECT_EQ(london.at(day(2026, 3, 29), clock(1, 0), choose), utc(2026, 3, 29, 1, 0));
        EXPECT_EQ(london.at(day(2026, 3, 29), clock(1, 30), choose), utc(2026, 3, 29, 1, 0));
    }
    EXPECT_EQ(london.at(day(2026, 3, 29), clock(2, 0)), utc(2026, 3, 29, 1, 0));
    EXPECT_EQ(london.at(day(2026, 3, 29), clock(0, 59)), utc(2026, 3, 29, 0, 59));
}

TEST(Zone, ATimeShownTwiceIsTheOneChosen) {
    const Zone london = zone("Europe/London");
    EXPECT_EQ(london.at(day(2026, 10, 25), clock(1, 30), Choose::Earliest), utc(2026, 10, 25, 0, 30));
    EXPECT_EQ(london.at(day(2026, 10, 25), clock(1, 30), Choose::Latest), utc(2026, 10, 25, 1, 30));
    EXPECT_EQ(london.at(day(2026, 10, 25), clock(2, 0)), utc(2026, 10, 25, 2, 0));
}

TEST(Zone, ShowsDayAndClockOfAnInstant) {
    const Zone london = zone("Europe/London");
    EXPECT_EQ(london.dateOf(utc(2026, 7, 15, 23, 30)), day(2026, 7, 16));
    EXPECT_EQ(london.clockOf(utc(2026, 7, 15, 23, 30)), clock(0, 30));
    // Both half past ones of the long day.
    EXPECT_EQ(london.clockOf(utc(2026, 10, 25, 0, 30)), clock(1, 30));
    EXPECT_EQ(london.clockOf(utc(2026, 10, 25, 1, 30)), clock(1, 30));
    EXPECT_EQ(zone("America/New_York").dateOf(utc(2026, 7, 16, 3, 59)), day(2026, 7, 15));
    EXPECT_EQ(zone("America/New_York").clockOf(utc(1969, 12, 31, 23, 30)), clock(18, 30)); // before the epoch
}

TEST(Zone, GoesThereAndBackEveryQuarterHourOfAYear) {
    // Every quarter-hour of 2026 in a zone that changes by half an hour and one that changes by one.
    for (const char* name : {"Australia/Lord_Howe", "Europe/Berlin"}) {
        const Zone here = zone(name);
        for (Instant t = utc(2026, 1, 1, 0, 0); t < utc(2027, 1, 1, 0, 0); t += 15min) {
            const Date date = here.dateOf(t);
            const ClockTime time = here.clockOf(t);
            const bool first = here.at(date, time, Choose::Earliest) == t;
            ASSERT_TRUE(first || here.at(date, time, Choose::Latest) == t) << toText(date) << ' ' << toText(time);
        }
    }
}

} // namespace
} // namespace piewright
