// What the readers take, to the small unit, and what they refuse, with the words a person gets.
#include "units/text.h"

#include <gmock/gmock.h>

namespace piewright {
namespace {

using testing::HasSubstr;

template <class T> std::string refusal(const Result<T>& result) {
    return result.ok() ? "(taken)" : toText(result.problems().findings.front());
}

TEST(ReadAmount, WeightsInMetricUnitsAreExact) {
    EXPECT_EQ(*parseMass("12 kg"), kilograms(12));
    EXPECT_EQ(*parseMass("4.4 kg"), grams(4'400));
    EXPECT_EQ(*parseMass("850 g"), grams(850));
    EXPECT_EQ(*parseMass("2.5 g"), milligrams(2'500));
    EXPECT_EQ(*parseMass("7 mg"), milligrams(7));
    EXPECT_EQ(*parseMass("0 g"), Mass{});
}

// 1 lb = 0.45359237 kg exactly: international yard and pound agreement, 1959. 1 oz = 1/16 lb.
TEST(ReadAmount, PoundsAndOuncesFollowTheAgreementOf1959) {
    EXPECT_EQ(*parseMass("1 lb"), milligrams(453'592));        // 453 592.37
    EXPECT_EQ(*parseMass("100 lb"), milligrams(45'359'237));   // exactly
    EXPECT_EQ(*parseMass("1 oz"), milligrams(28'350));         // 28 349.523 125
    EXPECT_EQ(*parseMass("1600 oz"), milligrams(45'359'237));  // 100 lb
    EXPECT_EQ(*parseMass("4 lb 6 oz"), milligrams(1'984'467)); // 4.375 x 453 592.37 = 1 984 466.618 75
    EXPECT_EQ(*parseMass("4.375 lb"), *parseMass("4 lb 6 oz"));
    EXPECT_EQ(*parseMass("4 lb 6.5 oz"), milligrams(1'998'641)); // + 14 174.761 5625 = 1 998 641.380 3125
}

TEST(ReadAmount, OtherKindsAreExact) {
    EXPECT_EQ(*parseVolume("7.5 l"), millilitres(7'500));
    EXPECT_EQ(*parseVolume("110 ml"), millilitres(110));
    EXPECT_EQ(*parseLength("2.5 mm"), micrometres(2'500));
    EXPECT_EQ(*parseLength("19 cm"), millimetres(190));
    EXPECT_EQ(*parseLength("1 m"), millimetres(1'000));
    EXPECT_EQ(*parseLength("4 in"), micrometres(101'600)); // 4 x 25.4 mm
    EXPECT_EQ(*parseKelvin("5 K"), kelvins(5));
    EXPECT_EQ(*parseKelvin("-1.5 K"), Kelvin::ofRaw(-1'500));
    EXPECT_EQ(*parseDensity("1.2 g/ml"), Density::ofRaw(1'200'000));
    EXPECT_EQ(*parseDensity("1.2 kg/l"), Density::ofRaw(1'200'000));
    EXPECT_EQ(*parseDensity("1200 kg/m3"), Density::ofRaw(1'200'000));
    EXPECT_EQ(*parseShare("7.5 %"), Share::ofRaw(75'000));
    EXPECT_EQ(*parseShare("110 %"), percent(110));
    EXPECT_EQ(*parseBakersPercent("33 %"), ofFlour(33));
    EXPECT_EQ(*parsePower("1.5 kW"), Power::ofRaw(1'500));
    EXPECT_EQ(*parsePower("600 W"), Power::ofRaw(600));
}

TEST(ReadAmount, FahrenheitIsTurnedIntoCelsius) {
    EXPECT_EQ(*parseCelsius("72 degC"), celsius(72));
    EXPECT_EQ(*parseCelsius("-18 degC"), celsius(-18));
    EXPECT_EQ(*parseCelsius("162 degF"), Celsius::ofMilli(72'222)); // (162 - 32) x 5 / 9 = 72.2222
    EXPECT_EQ(*parseCelsius("212 degF"), celsius(100));
    EXPECT_EQ(*parseCelsius("-40 degF"), celsius(-40));
    EXPECT_EQ(*parseCelsius("-459.67 degF"), Celsius::ofMilli(-273'150)); // absolute zero
    EXPECT_EQ(*parseCelsius("-0 degC"), celsius(0));
}

TEST(ReadAmount, DurationsMayBeJoinedLargestFirst) {
    EXPECT_EQ(*parseSeconds("1 h 30 min"), Seconds(5'400));
    EXPECT_EQ(*parseSeconds("90 min"), Seconds(5'400));
    EXPECT_EQ(*parseSeconds("1.5 h"), Seconds(5'400));
    EXPECT_EQ(*parseSeconds("55 s"), Seconds(55));
    EXPECT_EQ(*parseSeconds("72 h"), Seconds(259'200));
    EXPECT_EQ(*parseSeconds("1 d 30 min"), Seconds(88'200));
    EXPECT_EQ(*parseSeconds("1 d 2 h 3 min 4 s"), Seconds(93'784)); // 86 400 + 7 200 + 180 + 4
}

TEST(ReadAmount, MoneyKeepsFourDecimals) {
    const Currency pounds = *Currency::of("GBP");
    EXPECT_EQ(*parseMoney("5.20 GBP"), Money(52'000, pounds));
    EXPECT_EQ(*parseMoney("0.2817 GBP"), Money(2'817, pounds));
    EXPECT_EQ(*parseMoney("-0.15 GBP"), Money(-1'500, pounds));
    EXPECT_EQ(*parseMoney("1.50000 GBP"), Money(15'000, pounds)); // idle zeros do no harm
}

TEST(ReadAmount, FinerThanTheSmallUnitGoesToTheNearest) {
    EXPECT_EQ(*parseMass("0.4 mg"), milligrams(0));
    EXPECT_EQ(*parseMass("0.5 mg"), milligrams(1)); // halves away from zero
    EXPECT_EQ(*parseKelvin("-0.0005 K"), Kelvin::ofRaw(-1));
    EXPECT_EQ(*parseSeconds("2.5 s"), Seconds(3));
}

TEST(ReadAmount, TheLargestTakenStaysFarFromOverflow) {
    EXPECT_EQ(*parseMass("999999999999 kg"), Mass::ofRaw(999'999'999'999'000'000));
    EXPECT_EQ(*parseMass("999999999999.999999999999 kg"), Mass::ofRaw(1'000'000'000'000'000'000));
    EXPECT_EQ(*parseSeconds("999999999999 d"), Seconds(86'399'999'999'913'600));
    EXPECT_FALSE(parseMass("1000000000000 kg").ok());
    EXPECT_FALSE(parseMass(std::string(5'000, '9') + " kg").ok());
    EXPECT_FALSE(parseMass("0." + std::string(5'000, '9') + " kg").ok());
}

TEST(RefuseAmount, SaysWhatWasSeenAndWhatWouldBeRight) {
    EXPECT_EQ(refusal(parseMass("12 kilo")),
              "\"12 kilo\" is not a weight; want a number and kg, g, mg, lb or oz, as in \"12 kg\" or \"4 lb 6 oz\" "
              "(did you mean \"kg\"?)");
    EXPECT_EQ(refusal(parseCelsius("72 °C")),
              "\"72 °C\" is not a temperature; want a number and degC or degF, as in \"72 degC\" (did you mean "
              "\"degC\"?)");
    EXPECT_EQ(refusal(parseMoney("5.20")),
              "\"5.20\" is not an amount of money; want a number with at most four decimals and a currency's three "
              "capital letters, as in \"5.20 GBP\" (the currency is missing)");
}

TEST(RefuseAmount, NamesTheLikeliestSlip) {
    EXPECT_THAT(refusal(parseMass("12kg")), HasSubstr("(one space: \"12 kg\")"));
    EXPECT_THAT(refusal(parseMass("2,5 kg")), HasSubstr("(a decimal point, and no thousands mark)"));
    EXPECT_THAT(refusal(parseMass("1,000 kg")), HasSubstr("(a decimal point, and no thousands mark)"));
    EXPECT_THAT(refusal(parseMass("12")), HasSubstr("(the unit is missing)"));
    EXPECT_THAT(refusal(parseMass("-12 kg")), HasSubstr("(it can't be negative)"));
    EXPECT_THAT(refusal(parseMass("1234567890123 kg")), HasSubstr("(at most 12 digits)"));
    EXPECT_THAT(refusal(parseSeconds("5 hours")), HasSubstr("(did you mean \"h\"?)"));
    EXPECT_THAT(refusal(parseSeconds("5 m")), HasSubstr("(did you mean \"min\"?)"));
    EXPECT_THAT(refusal(parseSeconds("30 min 1 h")), HasSubstr("(what follows must be less than one min"));
    EXPECT_THAT(refusal(parseSeconds("1 h 60 min")), HasSubstr("(what follows must be less than one h"));
    EXPECT_THAT(refusal(parseSeconds("1.5 h 10 min")), HasSubstr("(only the last number may have decimals)"));
    EXPECT_THAT(refusal(parseMass("4 lb 16 oz")), HasSubstr("(what follows must be less than one lb"));
    EXPECT_THAT(refusal(parseCelsius("-300 degC")), HasSubstr("(nothing is colder than -273.15 degC)"));
    EXPECT_THAT(refusal(parseCelsius("-273.1504 degC")), HasSubstr("(nothing is colder"));
    EXPECT_THAT(refusal(parseMoney("5.20001 GBP")), HasSubstr("(no finer than a ten-thousandth)"));
    EXPECT_THAT(refusal(parseMoney("5,20 GBP")), HasSubstr("(a decimal point, and no thousands mark)"));
}

TEST(RefuseAmount, WhateverIsNotExactlyOfTheForm) {
    for (const char* text : {"",       " ",      "kg",     " 12 kg",  "12 kg ",    "12  kg",    "12\tkg",   "+12 kg",
                             "1e3 kg", "12. kg", ".5 kg",  "0x10 kg", "12 kg 3",   "12 kg 3 g", "12 Kg",    "1 2 kg",
                             "١٢ kg",  "nan kg", "inf kg", "--1 kg",  "4 oz 1 lb", "1 lb 2 g",  "1_000 kg", "12 kg\n"})
        EXPECT_FALSE(parseMass(text).ok()) << text;
    for (const char* text : {"5.20 gbp", "5.20 GB", "5.20GBP", "5.20  GBP", "GBP 5.20", "£5.20", "5.20 GBP ", "", "-"})
        EXPECT_FALSE(parseMoney(text).ok()) << text;
    for (const char* text : {"7%", "7 percent", "7 ‰", "-7 %"}) EXPECT_FALSE(parseShare(text).ok()) << text;
    for (const char* text : {"1 h 2 h", "1 h 1", "1 h ", "1 h 30", "1h 30min", "1:30"})
        EXPECT_FALSE(parseSeconds(text).ok()) << text;
    EXPECT_FALSE(parseMass(std::string_view("12 kg\0", 6)).ok());
}

TEST(InQuotes, ShowsWhatIsFitToShow) {
    EXPECT_EQ(inQuotes("12 kilo"), "\"12 kilo\"");
    EXPECT_EQ(inQuotes("a\x1b[31mb\n"), "\"a\\x1b[31mb\\x0a\"");
    EXPECT_EQ(inQuotes(std::string(60, 'x')), '"' + std::string(60, 'x') + '"');
    EXPECT_EQ(inQuotes(std::string(61, 'x')), '"' + std::string(60, 'x') + "…\"");
    EXPECT_EQ(inQuotes(std::string(59, 'x') + "é!"), '"' + std::string(59, 'x') + "…\""); // never half a letter
}

} // namespace
} // namespace piewright
