// What goes onto a sheet for a hand to read, and into a file to be read back.
#include "units/text.h"

#include <gtest/gtest.h>

namespace piewright {
namespace {

TEST(ExactText, UsesTheUnitAPersonWouldWrite) {
    EXPECT_EQ(exactText(kilograms(12)), "12 kg");
    EXPECT_EQ(exactText(grams(4'400)), "4.4 kg");
    EXPECT_EQ(exactText(grams(850)), "850 g");
    EXPECT_EQ(exactText(milligrams(2'500)), "2.5 g");
    EXPECT_EQ(exactText(milligrams(7)), "0.007 g");
    EXPECT_EQ(exactText(Mass{}), "0 g");
    EXPECT_EQ(exactText(millilitres(7'500)), "7.5 l");
    EXPECT_EQ(exactText(millilitres(110)), "110 ml");
    EXPECT_EQ(exactText(millimetres(190)), "190 mm");
    EXPECT_EQ(exactText(millimetres(1'000)), "1 m");
    EXPECT_EQ(exactText(celsius(-18)), "-18 degC");
    EXPECT_EQ(exactText(Celsius::ofMilli(-500)), "-0.5 degC");
    EXPECT_EQ(exactText(kelvins(5)), "5 K");
    EXPECT_EQ(exactText(Density::ofRaw(1'180'000)), "1.18 g/ml");
    EXPECT_EQ(exactText(Share::ofRaw(75'000)), "7.5 %");
    EXPECT_EQ(exactText(ofFlour(100)), "100 %");
    EXPECT_EQ(exactText(Power::ofRaw(600)), "600 W");
    EXPECT_EQ(exactText(Power::ofRaw(1'500)), "1.5 kW");
    EXPECT_EQ(exactText(Seconds(5'400)), "1 h 30 min");
    EXPECT_EQ(exactText(Seconds(259'200)), "3 d");
    EXPECT_EQ(exactText(Seconds(0)), "0 s");
    EXPECT_EQ(exactText(Money(52'000, *Currency::of("GBP"))), "5.20 GBP");
    EXPECT_EQ(exactText(Money(2'817, *Currency::of("GBP"))), "0.2817 GBP");
    EXPECT_EQ(exactText(Money(-1'500, *Currency::of("GBP"))), "-0.15 GBP");
}

TEST(HandText, WeightsAreToTheGramAndToTheTenthBelowAHundred) {
    EXPECT_EQ(handText(grams(12'400)), "12.4 kg");
    EXPECT_EQ(handText(milligrams(12'437'600)), "12.438 kg"); // three figures after the kilogram's point
    EXPECT_EQ(handText(grams(850)), "850 g");
    EXPECT_EQ(handText(milligrams(850'400)), "850 g");
    EXPECT_EQ(handText(milligrams(2'500)), "2.5 g");
    EXPECT_EQ(handText(milligrams(2'549)), "2.5 g");
    EXPECT_EQ(handText(milligrams(99'949)), "99.9 g");
    EXPECT_EQ(handText(milligrams(99'950)), "100 g");
    EXPECT_EQ(handText(milligrams(999'499)), "999 g");
    EXPECT_EQ(handText(milligrams(999'500)), "1 kg");
    EXPECT_EQ(handText(Mass{}), "0 g");
}

TEST(HandText, NeverShowsSomethingAsNothing) {
    EXPECT_EQ(handText(milligrams(40)), "0.04 g");
    EXPECT_EQ(handText(milligrams(50)), "0.1 g");
    EXPECT_EQ(handText(microlitres(40)), "0.04 ml");
}

TEST(HandText, OtherKinds) {
    EXPECT_EQ(handText(millilitres(7'500)), "7.5 l");
    EXPECT_EQ(handText(millilitres(7'523)), "7.52 l");
    EXPECT_EQ(handText(millilitres(150)), "150 ml");
    EXPECT_EQ(handText(microlitres(150'400)), "150 ml");
    EXPECT_EQ(handText(microlitres(2'520)), "2.5 ml");
    EXPECT_EQ(handText(microlitres(999'500)), "1 l");
    EXPECT_EQ(handText(celsius(21)), "21 °C");
    EXPECT_EQ(handText(Celsius::ofMilli(-1'500)), "-1.5 °C");
    EXPECT_EQ(handText(Celsius::ofMilli(72'222)), "72.2 °C");
    EXPECT_EQ(handText(Celsius::ofMilli(-40)), "0 °C"); // no "-0"
    EXPECT_EQ(handText(millimetres(3)), "3 mm");
    EXPECT_EQ(handText(micrometres(2'678)), "2.7 mm");
}

TEST(HandText, DurationsAreToTheMinuteFromTenMinutesOn) {
    EXPECT_EQ(handText(Seconds(5'400)), "1 h 30 min");
    EXPECT_EQ(handText(Seconds(2'700)), "45 min");
    EXPECT_EQ(handText(Seconds(20)), "20 s");
    EXPECT_EQ(handText(Seconds(270)), "4 min 30 s");
    EXPECT_EQ(handText(Seconds(630)), "11 min"); // 10.5, half up
    EXPECT_EQ(handText(Seconds(3'590)), "1 h");
    EXPECT_EQ(handText(Seconds(36 * 3'600)), "36 h");
    EXPECT_EQ(handText(Seconds(72 * 3'600)), "3 d");
    EXPECT_EQ(handText(Seconds(0)), "0 min");
}

} // namespace
} // namespace piewright
