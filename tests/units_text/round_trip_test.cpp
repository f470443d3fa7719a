// parse(exactText(x)) == x for every x a reader can give, and the text is stable.
#include "units/text.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace piewright {
namespace {

// Small counts, counts near a change of unit, and the largest: uniform draws alone would hardly ever be small.
std::int64_t drawn(std::int64_t most) {
    const auto few = std::min<std::int64_t>(most, 5'000'000);
    return *rc::gen::oneOf(
        rc::gen::inRange<std::int64_t>(0, few + 1), rc::gen::inRange<std::int64_t>(0, most + 1),
        rc::gen::map(rc::gen::inRange<std::int64_t>(0, few / 1'000 + 1), [](std::int64_t n) { return n * 1'000; }));
}

template <class Amount, class Parse> void holds(Amount amount, Parse parse) {
    const std::string text = exactText(amount);
    const auto back = parse(text);
    RC_ASSERT(back.ok());
    RC_ASSERT(*back == amount);
    RC_ASSERT(exactText(*back) == text);
}

constexpr std::int64_t kMost = 999'999'999'999'999'999; // 12 digits of the largest unit, to the millionth
constexpr std::int64_t kMostMilli = 999'999'999'999'999;

RC_GTEST_PROP(RoundTrip, Mass, ()) { holds(Mass::ofRaw(drawn(kMost)), parseMass); }
RC_GTEST_PROP(RoundTrip, Volume, ()) { holds(Volume::ofRaw(drawn(kMost)), parseVolume); }
RC_GTEST_PROP(RoundTrip, Length, ()) { holds(Length::ofRaw(drawn(kMost)), parseLength); }
RC_GTEST_PROP(RoundTrip, Density, ()) { holds(Density::ofRaw(drawn(kMost)), parseDensity); }
RC_GTEST_PROP(RoundTrip, Share, ()) { holds(Share::ofRaw(drawn(9'999'999'999'999'999)), parseShare); }
RC_GTEST_PROP(RoundTrip, BakersPercent, ()) {
    holds(BakersPercent::ofRaw(drawn(9'999'999'999'999'999)), parseBakersPercent);
}
RC_GTEST_PROP(RoundTrip, Power, ()) { holds(Power::ofRaw(drawn(kMostMilli)), parsePower); }
RC_GTEST_PROP(RoundTrip, Seconds, ()) { holds(Seconds(drawn(86'399'999'999'913'600)), parseSeconds); }
RC_GTEST_PROP(RoundTrip, Kelvin, ()) {
    holds(Kelvin::ofRaw(drawn(kMostMilli)), parseKelvin);
    holds(Kelvin::ofRaw(-drawn(kMostMilli)), parseKelvin);
}
RC_GTEST_PROP(RoundTrip, Celsius, ()) {
    holds(Celsius::ofMilli(drawn(kMostMilli)), parseCelsius);
    holds(Celsius::ofMilli(-drawn(273'150)), parseCelsius);
}
RC_GTEST_PROP(RoundTrip, Money, ()) {
    holds(Money(drawn(9'999'999'999'999'999), *Currency::of("GBP")), parseMoney);
    holds(Money(-drawn(9'999'999'999'999'999), *Currency::of("USD")), parseMoney);
}

// Any bytes at all are taken or refused, and what is taken prints to what reads back.
RC_GTEST_PROP(RoundTrip, OfWhateverIsTaken, (const std::string& text)) {
    if (const auto mass = parseMass(text)) holds(*mass, parseMass);
    if (const auto time = parseSeconds(text)) holds(*time, parseSeconds);
    if (const auto money = parseMoney(text)) holds(*money, parseMoney);
}

// Numbers and units strung together as people might.
RC_GTEST_PROP(RoundTrip, OfNumbersAndUnits, ()) {
    const auto word = rc::gen::element<std::string>("1", "0", "12.5", "999999999999", "-3", " ", "kg", "lb", "oz", "h",
                                                    "min", "s", "d", "degC", "degF", "GBP", ".", "g");
    std::string text;
    for (const std::string& part : *rc::gen::container<std::vector<std::string>>(word)) text += part;
    if (const auto mass = parseMass(text)) holds(*mass, parseMass);
    if (const auto time = parseSeconds(text)) holds(*time, parseSeconds);
    if (const auto heat = parseCelsius(text)) holds(*heat, parseCelsius);
    if (const auto money = parseMoney(text)) holds(*money, parseMoney);
}

} // namespace
} // namespace piewright
