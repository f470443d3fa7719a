#include "units/money.h"

#include <gtest/gtest.h>

namespace piewright {
namespace {

Currency pounds() { return *Currency::of("GBP"); }

TEST(Currency, IsThreeCapitalLetters) {
    EXPECT_EQ(pounds().code(), "GBP");
    for (const char* wrong : {"", "GB", "GBPX", "gbp", "G1P", "G P", "\xC3\x84\x42"})
        EXPECT_FALSE(Currency::of(wrong).has_value()) << wrong;
    EXPECT_EQ(Currency{}.code(), "XXX"); // ISO 4217: no currency
}

TEST(Money, AddsAndMultipliesByCounts) {
    const Money price(52'000, pounds()); // 5.20
    EXPECT_EQ(price * 3, Money(156'000, pounds()));
    EXPECT_EQ(price - price * 2, Money(-52'000, pounds()));
    EXPECT_LT(price, price * 2);
    EXPECT_EQ(price.inUnits(), 5.2);
}

TEST(Money, ZeroOfNoCurrencyStartsASum) {
    Money sum;
    sum += Money(52'000, pounds());
    EXPECT_EQ(sum, Money(52'000, pounds()));
    EXPECT_EQ(sum.currency(), pounds());
    EXPECT_EQ(sum + Money{}, sum);
    EXPECT_EQ((sum - Money{}).currency(), pounds());
}

TEST(Money, ScalesToTheNearestTenThousandth) {
    EXPECT_EQ(scaled(Money(52'000, pounds()), 0.3333), Money(17'332, pounds())); // 17331.6
    EXPECT_EQ(scaled(Money(1, pounds()), 0.5), Money(1, pounds()));              // halves away from zero
    EXPECT_EQ(scaled(Money(-1, pounds()), 0.5), Money(-1, pounds()));
}

TEST(MoneyText, HasTwoDecimalsHalvesUp) {
    EXPECT_EQ(toText(Money(52'000, pounds())), "5.20 GBP");
    EXPECT_EQ(toText(Money(52'049, pounds())), "5.20 GBP");
    EXPECT_EQ(toText(Money(52'050, pounds())), "5.21 GBP");
    EXPECT_EQ(toText(Money(500, pounds())), "0.05 GBP");
    EXPECT_EQ(toText(Money(-52'050, pounds())), "-5.21 GBP");
    EXPECT_EQ(toText(Money(-49, pounds())), "0.00 GBP"); // no minus before nothing
    EXPECT_EQ(toText(Money(99'999, pounds())), "10.00 GBP");
}

} // namespace
} // namespace piewright
