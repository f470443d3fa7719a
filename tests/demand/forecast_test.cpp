#include "demand/forecast.h"

#include <cmath>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <functional>
#include <numeric>
#include <random>

namespace piewright::demand {
namespace {

using testing::Contains;
using testing::HasSubstr;

const GoodId kBeef("beef-pie");
const GoodId kMash("mash");
const Date kSaturday = *parseDate("2026-11-28");

ClockTime clock(int hours, int minutes = 0) { return ClockTime(Minutes(60 * hours + minutes)); }
const std::vector<ClockSpan> kOpen{{clock(11), clock(19)}};

/// Every day but Sunday and Monday of the weeks before the Saturday; pieces by a rule.
History shopOf(int weeks, const std::function<int(const GoodId&, Date)>& sold,
               const std::vector<GoodId>& goods = {kBeef, kMash}) {
    History history;
    for (Date date = kSaturday - Days(7 * weeks); date < kSaturday; date = date + Days(1)) {
        const unsigned w = date.weekday().c_encoding();
        if (w == 0 || w == 1) continue;
        history.openDates.insert(date);
        for (const GoodId& good : goods) {
            DaySales sales;
            sales.total = sold(good, date);
            Quarters quarters{};
            quarters[50] = sales.total / 2;               // 12:30
            quarters[70] = sales.total - sales.total / 2; // 17:30
            sales.byQuarter = quarters;
            history.sold[good][date] = sales;
        }
    }
    return history;
}

/// Chance without a device: two streams that differ by good and day.
int noise(const GoodId& good, Date date, int spread) {
    std::mt19937_64 g(static_cast<std::uint64_t>(date.days().time_since_epoch().count()) * 31 + good.name().size());
    return static_cast<int>(g() % static_cast<std::uint64_t>(2 * spread + 1)) - spread;
}

bool isSaturday(Date date) { return date.weekday() == Weekday(6); }

GoodDemand one(const History& history, const GoodId& good = kBeef, Date date = kSaturday) {
    const std::vector<GoodId> goods{good};
    return sameWeekdays(history)->forecast(goods, date, kOpen)->goods().front();
}

TEST(Forecast, ASaturdayIsForecastFromSaturdays) {
    const GoodDemand d =
        one(shopOf(20, [](const GoodId& g, Date date) { return (isSaturday(date) ? 200 : 80) + noise(g, date, 10); }));
    EXPECT_NEAR(d.daily.mean(), 200, 8);
    EXPECT_NEAR(d.daily.quantile(0.5), 200, 8);
    EXPECT_GT(d.daily.quantile(0.1), 150);
    EXPECT_LT(d.daily.quantile(0.9), 250);
    EXPECT_THAT(d.because, Contains(HasSubstr("from 20 past Saturdays")));
}

TEST(Forecast, TheRiseOfTheLastWeeksIsTaken) {
    const Date rose = kSaturday - Days(42);
    const GoodDemand d =
        one(shopOf(26, [&](const GoodId& g, Date date) { return (date < rose ? 100 : 150) + noise(g, date, 8); }));
    EXPECT_NEAR(d.daily.mean(), 150, 12);
    EXPECT_THAT(d.because, Contains(HasSubstr("present level")));
}

TEST(Forecast, SoldOutSaturdaysDoNotDragItDown) {
    const auto wanted = [](const GoodId& g, Date date) { return 100 + noise(g, date, 40); };
    const History known = shopOf(26, wanted);
    History cut = known;
    for (auto& [date, sales] : cut.sold[kBeef])
        if (sales.total > 110) {
            sales.total = 110;
            sales.soldOut = true;
        }
    History believed = cut; // the flag not given: sales taken as all that was wanted
    for (auto& [date, sales] : believed.sold[kBeef]) sales.soldOut = false;
    const double truth = one(known).daily.mean();
    const double flagged = one(cut).daily.mean();
    const double naive = one(believed).daily.mean();
    EXPECT_LT(naive, truth - 5);
    EXPECT_GT(flagged, naive + 3);
    EXPECT_GT(one(cut).daily.quantile(0.9), 112); // more than was ever seen sold
    EXPECT_THAT(one(cut).because, Contains(HasSubstr("sold out on")));
}

TEST(Forecast, EverySaturdaySoldOutSaysThatMoreWasNeverSeen) {
    History history = shopOf(12, [](const GoodId&, Date) { return 60; });
    for (auto& [date, sales] : history.sold[kBeef]) sales.soldOut = true;
    const GoodDemand d = one(history);
    EXPECT_GT(d.daily.mean(), 60);
    EXPECT_LT(d.daily.mean(), 200);
    EXPECT_THAT(d.because, Contains(HasSubstr("true wish was seldom seen")));
}

TEST(Forecast, AShutDayIsNotADayOfNoSales) {
    const auto sold = [](const GoodId& g, Date date) { return 100 + noise(g, date, 5); };
    History history = shopOf(20, sold);
    const double before = one(history).daily.mean();
    for (const Date shut : {kSaturday - Days(14), kSaturday - Days(21), kSaturday - Days(28)}) {
        history.openDates.erase(shut);
        history.sold[kBeef].erase(shut);
        history.sold[kMash].erase(shut);
    }
    EXPECT_NEAR(one(history).daily.mean(), before, 3);
}

TEST(Forecast, AnOpenDayWithoutASaleIsADayOfNoSales) {
    History history = shopOf(20, [](const GoodId& g, Date date) { return 100 + noise(g, date, 5); });
    const double before = one(history).daily.mean();
    for (int week = 1; week <= 10; ++week) history.sold[kBeef].erase(kSaturday - Days(14 * week));
    EXPECT_LT(one(history).daily.mean(), before - 20);
}

TEST(Forecast, NothingOnOrAfterTheDateIsLookedAt) {
    History history = shopOf(20, [](const GoodId& g, Date date) { return 100 + noise(g, date, 5); });
    const GoodDemand before = one(history);
    for (int day = 0; day < 30; ++day) {
        DaySales sales;
        sales.total = 5000;
        history.openDates.insert(kSaturday + Days(day));
        history.sold[kBeef][kSaturday + Days(day)] = sales;
    }
    const GoodDemand after = one(history);
    for (int k = 0; k <= before.daily.most(); ++k) EXPECT_EQ(before.daily.atMost(k), after.daily.atMost(k));
    EXPECT_EQ(before.profile, after.profile);
    EXPECT_EQ(before.because, after.because);
}

TEST(Forecast, AShutDateWantsNothing) {
    const std::vector<GoodId> goods{kBeef};
    const auto day = sameWeekdays(shopOf(5, [](const GoodId&, Date) { return 50; }))->forecast(goods, kSaturday, {});
    EXPECT_EQ(day->goods()[0].daily.most(), 0);
    EXPECT_THAT(day->goods()[0].because, Contains(HasSubstr("shut")));
    const SampledDay sampled = day->sample(1, 1);
    EXPECT_EQ(std::accumulate(sampled[0].begin(), sampled[0].end(), 0), 0);
}

TEST(Forecast, AGoodWithoutSalesIsWideAndSaysSo) {
    const History history = shopOf(20, [](const GoodId&, Date) { return 60; });
    const GoodDemand d = one(history, GoodId("new-pie"));
    EXPECT_THAT(d.because, Contains(HasSubstr("no sales known")));
    EXPECT_GT(d.daily.quantile(0.9), 3 * d.daily.quantile(0.1));
    EXPECT_NEAR(d.daily.mean(), 60, 6);
}

TEST(Forecast, AnEmptyHistoryStatesItsAssumption) {
    const GoodDemand d = one(History{});
    EXPECT_THAT(d.because, Contains(HasSubstr("assumed 20 a day")));
    EXPECT_NEAR(std::accumulate(d.profile.begin(), d.profile.end(), 0.0), 1, 1e-9);
    const std::vector<GoodId> goods{kBeef};
    const auto day = sameWeekdays(History{})->forecast(goods, kSaturday, kOpen);
    EXPECT_EQ(day->sample(3, 4), day->sample(3, 4));
}

TEST(Forecast, AGoodNeverSoldOnThatWeekdayBorrowsFromTheOthers) {
    const History history = shopOf(20, [](const GoodId& good, Date date) {
        if (good == kBeef && isSaturday(date)) return 0;
        return isSaturday(date) ? 120 : 60;
    });
    const GoodDemand d = one(history);
    EXPECT_THAT(d.because, Contains(HasSubstr("never sold on a Saturday")));
    EXPECT_GT(d.daily.mean(), 40);
}

TEST(Forecast, DaysBeforeTheFirstSaleAreNotDaysOfNoSales) {
    const Date launch = kSaturday - Days(28);
    History history =
        shopOf(26, [&](const GoodId& good, Date date) { return good == kBeef && date < launch ? 0 : 50; });
    EXPECT_NEAR(one(history).daily.mean(), 50, 5);
}

TEST(Forecast, TheProfileLiesInTheHoursAndFollowsTheSales) {
    const GoodDemand d = one(shopOf(26, [](const GoodId&, Date) { return 100; }));
    EXPECT_NEAR(std::accumulate(d.profile.begin(), d.profile.end(), 0.0), 1, 1e-9);
    for (std::size_t q = 0; q < kQuarters; ++q) {
        if (q >= 44 && q < 76) // 11:00 to 19:00
            EXPECT_GT(d.profile[q], 0) << q;
        else
            EXPECT_EQ(d.profile[q], 0) << q;
    }
    EXPECT_GT(d.profile[50], 5 * d.profile[60]); // sold at 12:30 and 17:30
    EXPECT_GT(d.profile[70], 5 * d.profile[60]);
}

/// Two goods, high and low together, or against each other.
History together(int sign) {
    return shopOf(26, [sign](const GoodId& good, Date date) {
        const int swing = noise(kBeef, date, 40);
        return 100 + (good == kBeef ? swing : sign * swing) + noise(GoodId(good.name() + "x"), date, 5);
    });
}

double sampledCorrelation(const DayDemand& day) {
    constexpr int kDays = 2000;
    double sx = 0, sy = 0, sxx = 0, syy = 0, sxy = 0;
    for (std::uint64_t k = 0; k < kDays; ++k) {
        const SampledDay s = day.sample(11, k);
        const double x = std::accumulate(s[0].begin(), s[0].end(), 0);
        const double y = std::accumulate(s[1].begin(), s[1].end(), 0);
        sx += x;
        sy += y;
        sxx += x * x;
        syy += y * y;
        sxy += x * y;
    }
    return (sxy - sx * sy / kDays) / std::sqrt((sxx - sx * sx / kDays) * (syy - sy * sy / kDays));
}

TEST(Sample, GoodsThatWentTogetherGoTogether) {
    const std::vector<GoodId> goods{kBeef, kMash};
    EXPECT_GT(sampledCorrelation(*sameWeekdays(together(1))->forecast(goods, kSaturday, kOpen)), 0.7);
    EXPECT_LT(sampledCorrelation(*sameWeekdays(together(-1))->forecast(goods, kSaturday, kOpen)), -0.7);
}

TEST(Sample, GoodsThatWentTheirOwnWaysStillDo) {
    const History history = shopOf(26, [](const GoodId& good, Date date) { return 100 + noise(good, date, 40); });
    const std::vector<GoodId> goods{kBeef, kMash};
    // The history's own chance correlation over 26 Saturdays is within 2 / sqrt(26) = 0.4
    EXPECT_LT(std::abs(sampledCorrelation(*sameWeekdays(history)->forecast(goods, kSaturday, kOpen))), 0.5);
}

TEST(Sample, AgreesWithTheDistributionItComesFrom) {
    History history = together(1);
    int i = 0;
    for (auto& [date, sales] : history.sold[kBeef]) sales.soldOut = ++i % 5 == 0;
    const std::vector<GoodId> goods{kBeef, kMash};
    const auto day = sameWeekdays(history)->forecast(goods, kSaturday, kOpen);
    constexpr int kDays = 20'000;
    for (std::size_t g = 0; g < 2; ++g) {
        const GoodDemand& good = day->goods()[g];
        std::vector<int> totals;
        std::vector<double> byQuarter(kQuarters);
        double pieces = 0;
        for (std::uint64_t k = 0; k < kDays; ++k) {
            const SampledDay s = day->sample(2026, k);
            totals.push_back(std::accumulate(s[g].begin(), s[g].end(), 0));
            pieces += totals.back();
            for (std::size_t q = 0; q < kQuarters; ++q) byQuarter[q] += s[g][q];
        }
        // Four standard errors, seed fixed
        EXPECT_NEAR(pieces / kDays, good.daily.mean(), 4 * std::sqrt(good.daily.variance() / kDays));
        for (const double p : {0.1, 0.25, 0.5, 0.75, 0.9}) {
            const int q = good.daily.quantile(p);
            const auto below = std::count_if(totals.begin(), totals.end(), [q](int t) { return t <= q; });
            EXPECT_NEAR(static_cast<double>(below) / kDays, good.daily.atMost(q), 4 * 0.5 / std::sqrt(kDays)) << p;
        }
        for (std::size_t q = 0; q < kQuarters; ++q)
            EXPECT_NEAR(byQuarter[q] / pieces, good.profile[q], 4 * std::sqrt(good.profile[q] / pieces) + 1e-12);
    }
}

TEST(Sample, TheSameSeedAndNumberGiveTheSameDay) {
    const std::vector<GoodId> goods{kBeef, kMash};
    const auto day = sameWeekdays(together(1))->forecast(goods, kSaturday, kOpen);
    const auto again = sameWeekdays(together(1))->forecast(goods, kSaturday, kOpen);
    EXPECT_EQ(day->sample(5, 17), again->sample(5, 17));
    EXPECT_NE(day->sample(5, 17), day->sample(5, 18));
    EXPECT_NE(day->sample(5, 17), day->sample(6, 17));
}

RC_GTEST_PROP(ForecastProperty, AnyHistoryGivesWholeDistributionsAndProfiles, ()) {
    History history;
    const int days = *rc::gen::inRange(0, 60);
    for (int i = 0; i < days; ++i) {
        const Date date = kSaturday - Days(*rc::gen::inRange(-5, 500));
        history.openDates.insert(date);
        DaySales sales;
        sales.total =
            *rc::gen::weightedOneOf<int>({{9, rc::gen::inRange(0, 300)}, {1, rc::gen::inRange(0, 2'000'000'000)}});
        sales.soldOut = *rc::gen::arbitrary<bool>();
        if (*rc::gen::arbitrary<bool>()) {
            Quarters quarters{};
            quarters[static_cast<std::size_t>(*rc::gen::inRange(0, kQuarters))] = sales.total;
            sales.byQuarter = quarters;
        }
        history.sold[*rc::gen::element(kBeef, kMash)][date] = sales;
    }
    const std::vector<GoodId> goods{kBeef, kMash, GoodId("new-pie")};
    const auto day = sameWeekdays(history)->forecast(goods, kSaturday, kOpen);
    RC_ASSERT(day->goods().size() == goods.size());
    for (const GoodDemand& good : day->goods()) {
        RC_ASSERT(std::abs(std::accumulate(good.profile.begin(), good.profile.end(), 0.0) - 1) < 1e-9);
        RC_ASSERT(good.daily.atMost(good.daily.most()) == 1.0);
        RC_ASSERT(std::isfinite(good.daily.mean()));
        RC_ASSERT(!good.because.empty());
    }
    const SampledDay sampled = day->sample(1, 1);
    RC_ASSERT(sampled.size() == goods.size());
}

} // namespace
} // namespace piewright::demand
