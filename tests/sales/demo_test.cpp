// The demo house's sales, from till to forecast.
#include "demand/forecast.h"
#include "sales/import.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

namespace piewright::sales {
namespace {

const std::filesystem::path kHouse = std::filesystem::path(PIEWRIGHT_SOURCE) / "data" / "houses" / "ropewalk";

std::map<GoodId, std::string> goods() {
    std::map<GoodId, std::string> names;
    for (const char* id : {"beef-pie", "chicken-pie", "cheese-pie", "large-beef-pie", "mash", "parsley-sauce", "gravy",
                           "peas", "stewed-hake", "set-hake"})
        names[GoodId(id)] = id;
    return names;
}

Imported imported() {
    std::set<GoodId> known;
    for (const auto& [id, name] : goods()) known.insert(id);
    std::ifstream till(kHouse / "till.toml");
    std::ostringstream text;
    text << till.rdbuf();
    const auto mapping = readMapping("till.toml", text.str(), known);
    EXPECT_TRUE(mapping.ok()) << toText(mapping.problems().findings);
    auto result = importFile(kHouse / "sales.csv", {}, *mapping, goods());
    EXPECT_TRUE(result.ok()) << toText(result.problems().findings);
    return *result;
}

TEST(Demo, EveryLineIsTaken) {
    const Imported i = imported();
    EXPECT_EQ(i.report.taken, i.report.rows);
    EXPECT_TRUE(i.report.left.empty());
    EXPECT_GT(i.report.returns, 100U);
    EXPECT_EQ(i.report.dailyTotals, 0U);
    EXPECT_EQ(i.history.sold.size(), 10U);
    EXPECT_EQ(i.report.first, parseDate("2024-11-26"));
    EXPECT_EQ(i.report.last, parseDate("2026-11-25"));
}

TEST(Demo, TheShopIsShutWhenItSaysSo) {
    const Imported i = imported();
    for (const Date date : i.history.openDates) {
        EXPECT_NE(date.weekday(), Weekday(0)) << toText(date);
        EXPECT_NE(date.weekday(), Weekday(1)) << toText(date);
        EXPECT_FALSE(date >= *parseDate("2026-08-10") && date <= *parseDate("2026-08-23")) << toText(date);
    }
    for (const char* shut : {"2024-12-25", "2024-12-26", "2025-01-01"})
        EXPECT_FALSE(i.history.openDates.contains(*parseDate(shut)));
    for (const auto& [date, sales] : i.history.sold.at(GoodId("stewed-hake")))
        EXPECT_NE(date.weekday(), Weekday(4)) << toText(date);
}

TEST(Demo, ASaturdayIsForecastBusierThanATuesday) {
    const auto forecaster = demand::sameWeekdays(imported().history);
    const std::vector<GoodId> beef{GoodId("beef-pie")};
    const std::vector<ClockSpan> open{{ClockTime(Minutes(660)), ClockTime(Minutes(1140))}};
    const double saturday = forecaster->forecast(beef, *parseDate("2026-11-28"), open)->goods()[0].daily.mean();
    const double tuesday = forecaster->forecast(beef, *parseDate("2026-12-01"), open)->goods()[0].daily.mean();
    EXPECT_NEAR(saturday, 0.45 * 900, 60);
    EXPECT_NEAR(tuesday, 0.45 * 330, 30);
}

} // namespace
} // namespace piewright::sales
