#include "sales/import.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <numeric>
#include <sstream>

namespace piewright::sales {
namespace {

using testing::Contains;
using testing::HasSubstr;

const GoodId kBeef("beef-pie");
const GoodId kMash("mash");
const std::map<GoodId, std::string> kGoods{{kBeef, "Beef and onion pie"}, {kMash, "Mash"}};
const Mapping kMapping{{{"Beef Pie", kBeef}}, {"Cola"}};

Date day(const char* text) { return *parseDate(text); }

Result<Imported> taken(const std::string& text, const Columns& columns = {}, const Mapping& mapping = kMapping) {
    std::istringstream in(text);
    return importStream(in, "sales.csv", columns, mapping, kGoods);
}

Imported ok(const std::string& text, const Columns& columns = {}) {
    auto result = taken(text, columns);
    EXPECT_TRUE(result.ok()) << toText(result.problems().findings);
    return result.ok() ? *result : Imported{};
}

std::string refused(const std::string& text, const Columns& columns = {}) {
    const auto result = taken(text, columns);
    return result.ok() ? "taken" : toText(result.problems().findings);
}

int sold(const Imported& imported, const GoodId& good, const char* date) {
    const auto days = imported.history.sold.find(good);
    if (days == imported.history.sold.end() || !days->second.contains(day(date))) return -1;
    return days->second.at(day(date)).total;
}

std::string left(const Imported& imported) {
    std::string text;
    for (const LeftOut& out : imported.report.left)
        text += std::to_string(out.rows) + " " + out.why + " @" + std::to_string(out.firstLine) + "; ";
    return text;
}

TEST(Import, TransactionsGoIntoTheirQuarterHours) {
    const Imported i = ok("when,item,quantity\n"
                          "2026-11-27T12:00,Beef Pie,2\n"
                          "2026-11-27T12:14,beef pie,1\n"
                          "2026-11-27T12:15,BEEF-PIE,3\n"
                          "2026-11-27T12:15,Mash,1\n"
                          "2026-11-28T18:59:59,Beef and onion pie,4\n");
    EXPECT_EQ(sold(i, kBeef, "2026-11-27"), 6);
    EXPECT_EQ(sold(i, kMash, "2026-11-27"), 1);
    EXPECT_EQ(sold(i, kBeef, "2026-11-28"), 4);
    const auto& quarters = *i.history.sold.at(kBeef).at(day("2026-11-27")).byQuarter;
    EXPECT_EQ(quarters[48], 3);
    EXPECT_EQ(quarters[49], 3);
    EXPECT_EQ(i.history.sold.at(kBeef).at(day("2026-11-28")).byQuarter->at(75), 4);
    EXPECT_EQ(i.report.rows, 5U);
    EXPECT_EQ(i.report.taken, 5U);
    EXPECT_TRUE(i.report.left.empty());
    EXPECT_EQ(i.report.dateForm, "year-month-day");
    EXPECT_EQ(i.report.first, day("2026-11-27"));
    EXPECT_EQ(i.report.last, day("2026-11-28"));
}

TEST(Import, DailyTotalsHaveNoQuarterHours) {
    const Imported i =
        ok("Datum;Artikel;Menge\n27.11.2026;Beef Pie;1.234,00\n27.11.2026;Mash;12,0\n28.11.2026;Mash;9,0\n");
    EXPECT_EQ(sold(i, kBeef, "2026-11-27"), 1234);
    EXPECT_FALSE(i.history.sold.at(kMash).at(day("2026-11-27")).byQuarter);
    EXPECT_EQ(i.report.dailyTotals, 3U);
    EXPECT_EQ(i.report.dateForm, "day.month.year");
    EXPECT_TRUE(i.report.dialect.decimalComma);
}

TEST(Import, DatesExportedAsMidnightAreDailyTotals) {
    const Imported i = ok("date,item,qty\n2026-11-27 00:00:00,Mash,12\n2026-11-28 00:00:00,Mash,9\n");
    EXPECT_FALSE(i.history.sold.at(kMash).at(day("2026-11-27")).byQuarter);
    EXPECT_EQ(i.report.dailyTotals, 2U);
}

TEST(Import, AReturnComesOffTheDaysEarlierSales) {
    const Imported i = ok("when,item,quantity\n"
                          "2026-11-27T12:00,Mash,2\n2026-11-27T12:30,Mash,1\n2026-11-27T13:00,Mash,-2\n"
                          "2026-11-27T14:00,Mash,5\n");
    const demand::DaySales& sales = i.history.sold.at(kMash).at(day("2026-11-27"));
    EXPECT_EQ(sales.total, 6);
    EXPECT_EQ((*sales.byQuarter)[48], 1); // two off 12:30 and 12:00
    EXPECT_EQ((*sales.byQuarter)[50], 0);
    EXPECT_EQ((*sales.byQuarter)[52], 0);
    EXPECT_EQ((*sales.byQuarter)[56], 5);
    EXPECT_EQ(i.report.returns, 1U);
}

TEST(Import, MoreReturnedThanSoldIsNothingSold) {
    const Imported i =
        ok("when,item,quantity\n2026-11-27T12:00,Mash,(3)\n2026-11-27T12:00,Mash,1\n2026-11-27T12:00,Beef Pie,2\n");
    EXPECT_EQ(sold(i, kMash, "2026-11-27"), 0);
    EXPECT_EQ(i.report.flooredDays, 1U);
}

TEST(Import, WhatIsLeftIsSaidWithReasonLineAndExample) {
    const Imported i = ok("when,item,quantity\n"
                          "2026-11-27T12:00,Mash,2\n"
                          "2026-11-31T12:00,Mash,2\n"
                          "2026-11-27T25:10,Mash,2\n"
                          "2026-11-27T12:00,Mash,0.5\n"
                          "2026-11-27T12:00,Mash,many\n"
                          "2026-11-27T12:00,Mash,\n"
                          "2026-11-27T12:00,Mash,5012345678900\n"
                          "2026-11-27T12:00,Large tea,1\n"
                          "2026-11-27T12:01,Large tea,1\n"
                          "2026-11-27T12:02,Cola,1\n"
                          "2026-11-27T12:02\n"
                          "Total,,12\n");
    EXPECT_EQ(i.report.rows, 12U);
    EXPECT_EQ(i.report.taken, 1U);
    const std::string text = left(i);
    EXPECT_THAT(text, HasSubstr("2 no such date @3"));
    EXPECT_THAT(text, HasSubstr("1 no such time of day @4"));
    EXPECT_THAT(text, HasSubstr("1 a part of a piece @5"));
    EXPECT_THAT(text, HasSubstr("1 the quantity is no number @6"));
    EXPECT_THAT(text, HasSubstr("1 no quantity @7"));
    EXPECT_THAT(text, HasSubstr("1 more than 100,000 pieces in one row @8"));
    EXPECT_THAT(text, HasSubstr("2 item not mapped: \"Large tea\" @9"));
    EXPECT_THAT(text, HasSubstr("1 set aside by the mapping @11"));
    EXPECT_THAT(text, HasSubstr("1 fewer fields than columns @12"));
    EXPECT_EQ(std::accumulate(i.report.left.begin(), i.report.left.end(), std::size_t{0},
                              [](std::size_t sum, const LeftOut& out) { return sum + out.rows; }),
              i.report.rows - i.report.taken);
    EXPECT_EQ(i.report.left[0].example, "2026-11-31T12:00 | Mash | 2");
}

TEST(Import, AWordThatIsNearlyKnownGetsASuggestion) {
    EXPECT_THAT(left(ok("date,item,quantity\n2026-11-27,Beef Pei,2\n2026-11-27,Mash,1\n2026-11-27,Tea,1\n")),
                AllOf(HasSubstr("item not mapped: \"Beef Pei\" (did you mean \"beef pie\"?)"),
                      HasSubstr("item not mapped: \"Tea\" @")));
}

TEST(Import, DuplicateRowsAreSalesLikeAnyOther) {
    EXPECT_EQ(sold(ok("when,item,quantity\n2026-11-27T12:00,Mash,1\n2026-11-27T12:00,Mash,1\n"), kMash, "2026-11-27"),
              2);
}

TEST(Import, DayAndMonthAreSettledByTheWholeFile) {
    // The first 2,000 rows, beyond what is looked at first, leave it open
    std::string text = "date,item,quantity\n";
    for (int k = 0; k < 8000; ++k) text += "03/04/2026,Mash,1\n";
    text += "13/04/2026,Mash,1\n";
    const Imported i = ok(text);
    EXPECT_EQ(sold(i, kMash, "2026-04-03"), 8000);
    EXPECT_EQ(i.report.dateForm, "day/month/year");
    const Imported us = ok("date,item,quantity\n03/04/2026,Mash,1\n03/14/2026,Mash,1\n");
    EXPECT_EQ(sold(us, kMash, "2026-03-04"), 1);
    EXPECT_EQ(us.report.dateForm, "month/day/year");
}

TEST(Import, AnOpenOrderIsRefusedUnlessSaid) {
    const std::string text = "date,item,quantity\n03/04/2026,Mash,1\n";
    EXPECT_THAT(refused(text),
                AllOf(HasSubstr("sales.csv"), HasSubstr("3/4/2026"), HasSubstr("day or its month first")));
    Columns columns;
    columns.dayFirst = false;
    EXPECT_EQ(sold(ok(text, columns), kMash, "2026-03-04"), 1);
    columns.dayFirst = true;
    EXPECT_EQ(sold(ok(text, columns), kMash, "2026-04-03"), 1);
}

TEST(Import, ADayThatTheSettledOrderForbidsIsLeft) {
    const Imported i =
        ok("date,item,quantity\n13/04/2026,Mash,1\n14/04/2026,Mash,1\n04/15/2026,Mash,7\n04/15/2026,Mash,7\n");
    EXPECT_EQ(i.report.taken, 2U);
    EXPECT_THAT(left(i), HasSubstr("2 no such date @4"));
}

TEST(Import, TheTwelveHourClockAndATimeColumn) {
    const Imported i = ok("Date,Time,Product,Qty\n11/27/2026,12:05 AM,Mash,1\n11/27/2026,1:30 PM,Mash,2\n");
    const auto& quarters = *i.history.sold.at(kMash).at(day("2026-11-27")).byQuarter;
    EXPECT_EQ(quarters[0], 1);
    EXPECT_EQ(quarters[54], 2);
    EXPECT_EQ(i.report.timeColumn, "Time");
}

TEST(Import, TimesInUtcAreBroughtToTheShopsZone) {
    // Europe/London is UTC+1 until 2026-10-25: 23:30Z on the 23rd is 00:30 on the 24th
    const std::string text = "when,item,quantity\n2026-10-23T11:07:00Z,Mash,1\n2026-10-23T23:30:00Z,Mash,2\n"
                             "2026-11-27T12:00:00+00:00,Mash,4\n2026-11-27T14:20:00+02:00,Mash,8\n";
    Columns columns;
    columns.zone = *Zone::named("Europe/London");
    const Imported i = ok(text, columns);
    EXPECT_EQ(i.history.sold.at(kMash).at(day("2026-10-23")).byQuarter->at(48), 1); // 12:07
    EXPECT_EQ(i.history.sold.at(kMash).at(day("2026-10-24")).byQuarter->at(2), 2);
    EXPECT_EQ(i.history.sold.at(kMash).at(day("2026-11-27")).byQuarter->at(48), 4);
    EXPECT_EQ(i.history.sold.at(kMash).at(day("2026-11-27")).byQuarter->at(49), 8); // 12:20
    EXPECT_TRUE(i.report.notes.empty());
    const Imported asIs = ok(text);
    EXPECT_EQ(asIs.history.sold.at(kMash).at(day("2026-10-23")).total, 3);
    EXPECT_THAT(asIs.report.notes, Contains(HasSubstr("as they stand")));
}

TEST(Import, SoldOutByFlagAndByTime) {
    const Imported flag = ok("date,item,quantity,sold_out\n2026-11-27,Mash,30,yes\n2026-11-28,Mash,20,no\n");
    EXPECT_TRUE(flag.history.sold.at(kMash).at(day("2026-11-27")).soldOut);
    EXPECT_FALSE(flag.history.sold.at(kMash).at(day("2026-11-28")).soldOut);
    const Imported time = ok("date,item,quantity,sold out at\n2026-11-27,Mash,30,17:40\n2026-11-28,Mash,20,\n");
    EXPECT_EQ(time.history.sold.at(kMash).at(day("2026-11-27")).soldOutAt, ClockTime(Minutes(17 * 60 + 40)));
    EXPECT_FALSE(time.history.sold.at(kMash).at(day("2026-11-28")).soldOut);
    Columns named; // when a person names the column, what is neither is left with its reason
    named.soldOut = "sold out";
    EXPECT_THAT(left(ok("date,item,quantity,sold out\n2026-11-27,Mash,30,perhaps\n2026-11-28,Mash,20,1\n", named)),
                HasSubstr("neither yes, no nor a time"));
}

TEST(Import, ADateWithNothingSoldOfSeveralItemsIsShut) {
    const Imported i =
        ok("date,item,quantity\n2026-11-27,Mash,3\n2026-11-27,Beef Pie,2\n2026-11-29,Mash,0\n2026-11-29,Beef Pie,0\n"
           "2026-11-30,Mash,0\n2026-11-30,Beef Pie,4\n");
    EXPECT_EQ(i.history.openDates.size(), 2U);
    EXPECT_EQ(i.report.shutDays, 1U);
    EXPECT_EQ(sold(i, kMash, "2026-11-29"), -1);
    EXPECT_EQ(sold(i, kMash, "2026-11-30"), 0);
    const Imported one = ok("date,item,quantity\n2026-11-27,Mash,3\n2026-11-28,Mash,0\n");
    EXPECT_EQ(sold(one, kMash, "2026-11-28"), 0); // one item alone may well sell none
}

TEST(Import, WhatIsNotOursStillShowsThatTheShopWasOpen) {
    const Imported i = ok("date,item,quantity\n2026-11-27,Mash,3\n2026-11-27,Beef Pie,3\n2026-11-28,Large tea,2\n");
    EXPECT_EQ(i.history.openDates.size(), 2U);
    EXPECT_EQ(i.report.last, day("2026-11-28"));
}

TEST(Import, ATitleAndAByteOrderMarkDoNotMatter) {
    EXPECT_EQ(sold(ok("\xEF\xBB\xBFSales report\n\ndate;item;quantity\n27.11.2026;Mash;3\n27.11.2026;Beef Pie;3\n"),
                   kMash, "2026-11-27"),
              3);
}

TEST(Import, Latin1WordsAreMatched) {
    Mapping mapping;
    mapping.goods["Pürée"] = kMash;
    const auto result = taken("Datum;Artikel;Menge\n27.11.2026;P\xDCR\xC9"
                              "E;3\n",
                              {}, mapping);
    ASSERT_TRUE(result.ok());
    EXPECT_EQ(sold(*result, kMash, "2026-11-27"), 3);
}

TEST(Import, NothingTakenIsRefusedWithTheReasons) {
    EXPECT_THAT(
        refused("date,item,quantity\n2026-11-27,Tea,3\n2026-11-27,Coffee,3\n"),
        AllOf(HasSubstr("sales.csv:2"), HasSubstr("no row could be taken"), HasSubstr("item not mapped: \"Tea\"")));
    EXPECT_THAT(refused("date,item,quantity\n"), HasSubstr("no"));
    EXPECT_THAT(refused(""), HasSubstr("empty"));
}

TEST(Import, ATruncatedQuoteRefusesTheFileWithItsLine) {
    EXPECT_THAT(refused("date,item,quantity\n2026-11-27,Mash,3\n2026-11-27,\"Mash,3\n"),
                AllOf(HasSubstr("sales.csv:3"), HasSubstr("not closed")));
}

TEST(Import, AFileThatIsNotThereIsTheWorldsFault) {
    const auto result = importFile("no/such/file.csv", {}, {}, kGoods);
    ASSERT_FALSE(result.ok());
    EXPECT_EQ(result.problems().fault, Fault::World);
    const auto folder = importFile(PIEWRIGHT_SOURCE, {}, {}, kGoods);
    ASSERT_FALSE(folder.ok());
    EXPECT_EQ(folder.problems().fault, Fault::World);
}

TEST(Import, TenThousandUnknownItemsStayBounded) {
    std::string text = "date,item,quantity\n2026-11-27,Mash,3\n";
    for (int i = 0; i < 10'000; ++i) text += "2026-11-27,thing " + std::to_string(i) + ",1\n";
    const Imported i = ok(text);
    EXPECT_LE(i.report.left.size(), 101U);
    EXPECT_EQ(i.report.left[0].why, "further reasons, not told apart");
    EXPECT_EQ(i.report.left[0].rows, 9'900U);
}

TEST(Import, MostlyPartsOfPiecesIsQuestioned) {
    EXPECT_THAT(
        ok("date,item,quantity\n2026-11-27,Mash,3.2\n2026-11-27,Beef Pie,2.7\n2026-11-27,Mash,4\n").report.notes,
        Contains(HasSubstr("a weight or an amount of money")));
}

TEST(Import, TheReportTellsAPerson) {
    const std::string text =
        toText(ok("Datum;Artikel;Menge\n27.11.2026;Beef Pie;-1\n27.11.2026;Mash;12\n27.11.2026;Tea;2\n").report);
    for (const char* part : {"3 rows, 2 taken", "semicolon", "Datum (day.month.year)", "Artikel", "1 row, taken off",
                             "1 row: item not mapped: \"Tea\""})
        EXPECT_THAT(text, HasSubstr(part));
}

RC_GTEST_PROP(ImportProperty, TotalsAgreeWhateverTheDress, ()) {
    struct Line {
        int day, minute, good, pieces;
    };
    const auto lines = *rc::gen::nonEmpty(rc::gen::container<std::vector<Line>>(
        rc::gen::map(rc::gen::tuple(rc::gen::inRange(0, 28), rc::gen::inRange(1, 1440), rc::gen::inRange(0, 2),
                                    rc::gen::inRange(-3, 60)),
                     [](const std::tuple<int, int, int, int>& t) {
                         return Line{std::get<0>(t), std::get<1>(t), std::get<2>(t), std::get<3>(t)};
                     })));
    const char delimiter = *rc::gen::element(',', ';', '\t', '|');
    const int dress = *rc::gen::inRange(0, 4);
    const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
    std::string text = std::string("when") + delimiter + "item" + delimiter + "quantity\n";
    std::map<std::pair<GoodId, Date>, std::int64_t> want;
    // One date that settles day and month, and one that makes the shop's hours known
    const auto write = [&](const Line& line) {
        const int d = line.day + 1;
        const std::string time = two(line.minute / 60) + ":" + two(line.minute % 60);
        const std::string date = dress == 0   ? "2026-11-" + two(d) + "T"
                                 : dress == 1 ? two(d) + "/11/2026 "
                                 : dress == 2 ? two(d) + ".11.2026 "
                                              : std::to_string(d) + " Nov 2026 ";
        const std::string good = line.good == 0 ? "beef-pie" : "Mash";
        text += date + time + delimiter + good + delimiter + std::to_string(line.pieces) + "\n";
        want[{line.good == 0 ? kBeef : kMash, Date(std::chrono::year(2026) / 11 / d)}] += line.pieces;
    };
    write({27, 720, 0, 1});
    write({26, 720, 1, 1});
    for (const Line& line : lines) write(line);
    const auto result = taken(text);
    RC_ASSERT(result.ok());
    RC_ASSERT(result->report.taken == lines.size() + 2);
    for (const auto& [key, total] : want) {
        const auto& days = result->history.sold.at(key.first);
        const auto found = days.find(key.second);
        if (found == days.end()) { // nothing at all sold that day
            RC_ASSERT(total == 0);
            continue;
        }
        RC_ASSERT(found->second.total == std::max<std::int64_t>(0, total));
        RC_ASSERT(found->second.byQuarter.has_value());
        int sum = 0;
        for (const int pieces : *found->second.byQuarter) {
            RC_ASSERT(pieces >= 0);
            sum += pieces;
        }
        RC_ASSERT(sum == found->second.total);
    }
}

RC_GTEST_PROP(ImportProperty, NoBytesBringItDown, ()) {
    const auto text = *rc::gen::container<std::string>(rc::gen::weightedOneOf<char>(
        {{6, rc::gen::elementOf(std::string("2026-11-27,Mash;\n\"1:0./() \t"))}, {1, rc::gen::arbitrary<char>()}}));
    (void)taken("date,item,quantity\n2026-11-27,Mash,1\n" + text);
    (void)taken(text);
}

} // namespace
} // namespace piewright::sales
