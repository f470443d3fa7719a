#include "units/text.h"

#include "finding/suggest.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <span>
#include <utility>
#include <vector>

namespace piewright {

namespace {

__extension__ typedef __int128 Wide; // 24 digits times a unit's size do not fit in 64 bits

constexpr std::size_t kMostDigits = 12; // before the point, and after it
constexpr Wide kPointShift = 1'000'000'000'000;
constexpr std::size_t kMostShown = 60;

// How many small units one unit is, over the kind's common denominator.
struct Unit {
    std::string_view name;
    std::int64_t numerator;
};

struct Kind {
    std::string_view noun; // with its article
    std::string_view want;
    std::int64_t denominator;
    std::span<const Unit> units;  // largest first
    std::span<const Unit> joined; // those that may stand one after another, largest first
    bool sign;
};

// 1 lb = 0.45359237 kg exactly (international yard and pound agreement, 1959); 1 oz = 1/16 lb.
constexpr std::array kMassUnits{Unit{"kg", 1'600'000'000}, Unit{"g", 1'600'000}, Unit{"mg", 1'600},
                                Unit{"lb", 725'747'792}, Unit{"oz", 45'359'237}};
constexpr std::array kPoundsOunces{Unit{"lb", 725'747'792}, Unit{"oz", 45'359'237}};
constexpr Kind kMass{"a weight",    "a number and kg, g, mg, lb or oz, as in \"12 kg\" or \"4 lb 6 oz\"",
                     1'600,         kMassUnits,
                     kPoundsOunces, false};

constexpr std::array kVolumeUnits{Unit{"l", 1'000'000}, Unit{"ml", 1'000}};
constexpr Kind kVolume{"a volume", "a number and l or ml, as in \"7.5 l\"", 1, kVolumeUnits, {}, false};

// 1 in = 25.4 mm exactly (the same agreement).
constexpr std::array kLengthUnits{Unit{"m", 1'000'000}, Unit{"cm", 10'000}, Unit{"mm", 1'000}, Unit{"in", 25'400}};
constexpr Kind kLength{"a length", "a number and mm, cm, m or in, as in \"2.5 mm\"", 1, kLengthUnits, {}, false};

constexpr std::array kCelsiusUnits{Unit{"degC", 0}, Unit{"degF", 0}}; // affine: see parseCelsius
constexpr Kind kCelsius{"a temperature", "a number and degC or degF, as in \"72 degC\"", 1, kCelsiusUnits, {}, true};

constexpr std::array kKelvinUnits{Unit{"K", 1'000}};
constexpr Kind kKelvin{"a temperature difference", "a number and K, as in \"5 K\"", 1, kKelvinUnits, {}, true};

constexpr std::array kDensityUnits{Unit{"g/ml", 1'000'000}, Unit{"kg/l", 1'000'000}, Unit{"kg/m3", 1'000}};
constexpr Kind kDensity{"a density", "a number and g/ml, kg/l or kg/m3, as in \"1.2 g/ml\"", 1, kDensityUnits, {},
                        false};

constexpr std::array kPercentUnits{Unit{"%", 10'000}};
constexpr Kind kShare{"a share", "a number and %, as in \"7.5 %\"", 1, kPercentUnits, {}, false};
constexpr Kind kBakers{"a share of the flour", "a number and %, as in \"45 %\"", 1, kPercentUnits, {}, false};

constexpr std::array kPowerUnits{Unit{"kW", 1'000}, Unit{"W", 1}};
constexpr Kind kPower{"a power", "a number and W or kW, as in \"1.5 kW\"", 1, kPowerUnits, {}, false};

constexpr std::array kTimeUnits{Unit{"d", 86'400}, Unit{"h", 3'600}, Unit{"min", 60}, Unit{"s", 1}};
constexpr Kind kTime{
    "a duration", "a number and d, h, min or s, joined largest first, as in \"1 h 30 min\"", 1, kTimeUnits, kTimeUnits,
    false};

constexpr std::string_view kMoneyNoun = "an amount of money";
constexpr std::string_view kMoneyWant =
    "a number with at most four decimals and a currency's three capital letters, as in \"5.20 GBP\"";

// What people write for our units; only ever used to say what we want instead.
constexpr std::array<std::pair<std::string_view, std::string_view>, 42> kOtherSpellings{{
    {"kgs", "kg"},    {"kilo", "kg"},   {"kilos", "kg"},  {"Kg", "kg"},      {"KG", "kg"},       {"gr", "g"},
    {"gm", "g"},      {"gram", "g"},    {"grams", "g"},   {"G", "g"},        {"lbs", "lb"},      {"pound", "lb"},
    {"pounds", "lb"}, {"ounce", "oz"},  {"ounces", "oz"}, {"L", "l"},        {"ltr", "l"},       {"litre", "l"},
    {"litres", "l"},  {"liter", "l"},   {"liters", "l"},  {"mL", "ml"},      {"C", "degC"},      {"°C", "degC"},
    {"F", "degF"},    {"°F", "degF"},   {"deg", "degC"},  {"hr", "h"},       {"hrs", "h"},       {"hour", "h"},
    {"hours", "h"},   {"m", "min"},     {"mins", "min"},  {"minute", "min"}, {"minutes", "min"}, {"sec", "s"},
    {"secs", "s"},    {"seconds", "s"}, {"day", "d"},     {"days", "d"},     {"percent", "%"},   {"inches", "in"},
}};

// A decimal number, exact, times 10^12.
struct Decimal {
    Wide shifted = 0;
    std::size_t decimals = 0;
    bool negative = false;
};

bool isDigit(char c) { return c >= '0' && c <= '9'; }

std::optional<Decimal> decimal(std::string_view text, bool sign) {
    Decimal number;
    if (sign && text.starts_with('-')) {
        number.negative = true;
        text.remove_prefix(1);
    }
    const std::size_t point = std::min(text.find('.'), text.size());
    const std::string_view whole = text.substr(0, point);
    const std::string_view part = point == text.size() ? std::string_view{} : text.substr(point + 1);
    if (whole.empty() || whole.size() > kMostDigits || part.size() > kMostDigits) return std::nullopt;
    if (point != text.size() && part.empty()) return std::nullopt;
    if (!std::all_of(whole.begin(), whole.end(), isDigit) || !std::all_of(part.begin(), part.end(), isDigit))
        return std::nullopt;
    for (const char c : whole) number.shifted = number.shifted * 10 + (c - '0');
    for (std::size_t i = 0; i < kMostDigits; ++i)
        number.shifted = number.shifted * 10 + (i < part.size() ? part[i] - '0' : 0);
    if (number.negative) number.shifted = -number.shifted;
    number.decimals = part.size();
    return number;
}

std::int64_t nearest(Wide numerator, Wide denominator) {
    const Wide half = denominator / 2; // denominators are even, so halves go away from zero exactly
    return static_cast<std::int64_t>((numerator < 0 ? numerator - half : numerator + half) / denominator);
}

// Cuts off what stands before the first space; nothing when there is none left.
std::string_view nextWord(std::string_view& rest) {
    const std::size_t space = std::min(rest.find(' '), rest.size());
    const std::string_view word = rest.substr(0, space);
    rest.remove_prefix(std::min(space + 1, rest.size()));
    return word;
}

const Unit* unitNamed(std::span<const Unit> units, std::string_view name) {
    const auto found = std::find_if(units.begin(), units.end(), [&](const Unit& unit) { return unit.name == name; });
    return found == units.end() ? nullptr : &*found;
}

std::string unitHint(const Kind& kind, std::string_view seen) {
    for (const auto& [spelling, unit] : kOtherSpellings)
        if (spelling == seen && unitNamed(kind.units, unit) != nullptr)
            return "did you mean \"" + std::string(unit) + "\"?";
    std::vector<std::string> names;
    for (const Unit& unit : kind.units) names.emplace_back(unit.name);
    return didYouMean(seen, names);
}

// The likeliest slip in a text that is not an amount.
std::string hintFor(const Kind& kind, std::string_view text) {
    const std::size_t start = text.starts_with('-') ? 1 : 0;
    const std::size_t numberEnd = std::min(text.find_first_not_of("0123456789.,", start), text.size());
    const std::string_view number = text.substr(0, numberEnd);
    if (number.size() == start) return {};
    if (start == 1 && !kind.sign) return "it can't be negative";
    if (number.find(',') != std::string_view::npos) return "a decimal point, and no thousands mark";
    const std::size_t whole = std::min(number.find('.'), number.size()) - start;
    if (whole > kMostDigits || number.size() - start > 2 * kMostDigits + 1) return "at most 12 digits";
    if (numberEnd == text.size()) return "the unit is missing";
    if (text[numberEnd] != ' ') {
        const std::string_view unit = text.substr(numberEnd);
        if (unitNamed(kind.units, unit) != nullptr)
            return "one space: \"" + std::string(number) + ' ' + std::string(unit) + '"';
        return unitHint(kind, unit);
    }
    return unitHint(kind, text.substr(numberEnd + 1));
}

Problems notA(const Kind& kind, std::string_view text, std::string hint) {
    Problems problems =
        Problems::one(Fault::Input, inQuotes(text) + " is not " + std::string(kind.noun), std::string(kind.want));
    problems.findings.front().hint = std::move(hint);
    return problems;
}

Problems notA(const Kind& kind, std::string_view text) { return notA(kind, text, hintFor(kind, text)); }

// The amount in small units.
Result<std::int64_t> parseAmount(const Kind& kind, std::string_view text) {
    Wide sum = 0;
    const Unit* before = nullptr;
    std::string_view rest = text;
    for (;;) {
        const auto number = decimal(nextWord(rest), kind.sign);
        if (!number || rest.empty()) return notA(kind, text);
        const Unit* unit = unitNamed(before == nullptr ? kind.units : kind.joined, nextWord(rest));
        if (unit == nullptr) return notA(kind, text);
        const Wide part = number->shifted * unit->numerator;
        if (before != nullptr && (unit->numerator >= before->numerator || part >= kPointShift * before->numerator))
            return notA(kind, text,
                        "what follows must be less than one " + std::string(before->name) + ", largest unit first");
        sum += part;
        if (rest.empty()) {
            if (text.back() == ' ') return notA(kind, text, "a space too many at the end");
            break;
        }
        if (number->decimals > 0) return notA(kind, text, "only the last number may have decimals");
        before = unit;
    }
    return nearest(sum, kPointShift * kind.denominator);
}

template <class Amount> Result<Amount> parseQuantity(const Kind& kind, std::string_view text) {
    const auto raw = parseAmount(kind, text);
    if (!raw) return raw.problems();
    return Amount::ofRaw(*raw);
}

std::uint64_t magnitude(std::int64_t value) {
    return value < 0 ? 0 - static_cast<std::uint64_t>(value) : static_cast<std::uint64_t>(value);
}

// value / 10^places in decimals, at least `least` of them, without idle zeros.
std::string decimals(std::int64_t value, std::size_t places, std::size_t least = 0) {
    std::string digits = std::to_string(magnitude(value));
    if (digits.size() <= places) digits.insert(0, places + 1 - digits.size(), '0');
    std::string part = digits.substr(digits.size() - places);
    digits.resize(digits.size() - places);
    while (part.size() > least && part.back() == '0') part.pop_back();
    return (value < 0 ? "-" : "") + digits + (part.empty() ? "" : "." + part);
}

// To the nearest multiple of `step`, halves away from zero.
std::int64_t stepped(std::int64_t value, std::int64_t step) {
    const std::int64_t half = step / 2;
    return (value < 0 ? value - half : value + half) / step * step;
}

std::string joined(std::uint64_t seconds, std::span<const Unit> units) {
    std::string text;
    for (const Unit& unit : units) {
        const auto size = static_cast<std::uint64_t>(unit.numerator);
        if (seconds < size) continue;
        if (!text.empty()) text += ' ';
        text += std::to_string(seconds / size) + ' ' + std::string(unit.name);
        seconds %= size;
    }
    return text;
}

} // namespace

std::string inQuotes(std::string_view seen) {
    constexpr std::string_view kHex = "0123456789abcdef";
    std::string text = "\"";
    std::size_t end = std::min(seen.size(), kMostShown);
    while (end > 0 && end < seen.size() && (static_cast<unsigned char>(seen[end]) & 0xC0U) == 0x80U) --end;
    for (const char c : seen.substr(0, end)) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x20 || byte == 0x7F) {
            text += "\\x";
            text += kHex[byte >> 4U];
            text += kHex[byte & 0xFU];
        } else {
            text += c;
        }
    }
    return text + (end < seen.size() ? "…\"" : "\"");
}

Result<Mass> parseMass(std::string_view text) { return parseQuantity<Mass>(kMass, text); }
Result<Volume> parseVolume(std::string_view text) { return parseQuantity<Volume>(kVolume, text); }
Result<Length> parseLength(std::string_view text) { return parseQuantity<Length>(kLength, text); }
Result<Kelvin> parseKelvin(std::string_view text) { return parseQuantity<Kelvin>(kKelvin, text); }
Result<Density> parseDensity(std::string_view text) { return parseQuantity<Density>(kDensity, text); }
Result<Share> parseShare(std::string_view text) { return parseQuantity<Share>(kShare, text); }
Result<BakersPercent> parseBakersPercent(std::string_view text) { return parseQuantity<BakersPercent>(kBakers, text); }
Result<Power> parsePower(std::string_view text) { return parseQuantity<Power>(kPower, text); }

Result<Celsius> parseCelsius(std::string_view text) {
    constexpr Wide kAbsoluteZero = -273'150;
    std::string_view unit = text;
    const auto number = decimal(nextWord(unit), true);
    if (!number || unitNamed(kCelsiusUnits, unit) == nullptr) return notA(kCelsius, text);
    const bool fahrenheit = unit == "degF";
    const Wide numerator = fahrenheit ? (number->shifted - 32 * kPointShift) * 5'000 : number->shifted * 1'000;
    const Wide denominator = fahrenheit ? 9 * kPointShift : kPointShift;
    if (numerator < kAbsoluteZero * denominator) return notA(kCelsius, text, "nothing is colder than -273.15 degC");
    return Celsius::ofMilli(nearest(numerator, denominator));
}

Result<Seconds> parseSeconds(std::string_view text) {
    const auto raw = parseAmount(kTime, text);
    if (!raw) return raw.problems();
    return Seconds(*raw);
}

Result<Money> parseMoney(std::string_view text) {
    constexpr Wide kTenThousandth = kPointShift / 10'000;
    std::string_view letters = text;
    const auto number = decimal(nextWord(letters), true);
    const auto currency = Currency::of(letters);
    if (number && currency && number->shifted % kTenThousandth == 0)
        return Money(static_cast<std::int64_t>(number->shifted / kTenThousandth), *currency);
    std::string hint;
    if (number && currency)
        hint = "no finer than a ten-thousandth";
    else if (text.find(',') != std::string_view::npos)
        hint = "a decimal point, and no thousands mark";
    else if (number && letters.empty())
        hint = "the currency is missing";
    const Kind money{kMoneyNoun, kMoneyWant, 1, {}, {}, true};
    return notA(money, text, std::move(hint));
}

std::string exactText(Mass mass) {
    return magnitude(mass.raw()) >= 1'000'000 ? decimals(mass.raw(), 6) + " kg" : decimals(mass.raw(), 3) + " g";
}
std::string exactText(Volume volume) {
    return magnitude(volume.raw()) >= 1'000'000 ? decimals(volume.raw(), 6) + " l" : decimals(volume.raw(), 3) + " ml";
}
std::string exactText(Length length) {
    return magnitude(length.raw()) >= 1'000'000 ? decimals(length.raw(), 6) + " m" : decimals(length.raw(), 3) + " mm";
}
std::string exactText(Celsius temperature) { return decimals(temperature.milli(), 3) + " degC"; }
std::string exactText(Kelvin difference) { return decimals(difference.raw(), 3) + " K"; }
std::string exactText(Density density) { return decimals(density.raw(), 6) + " g/ml"; }
std::string exactText(Share share) { return decimals(share.raw(), 4) + " %"; }
std::string exactText(BakersPercent share) { return decimals(share.raw(), 4) + " %"; }
std::string exactText(Power power) {
    return magnitude(power.raw()) >= 1'000 ? decimals(power.raw(), 3) + " kW" : decimals(power.raw(), 0) + " W";
}

std::string exactText(Seconds duration) {
    if (duration == Seconds(0)) return "0 s";
    return (duration < Seconds(0) ? "-" : "") + joined(magnitude(duration.count()), kTimeUnits);
}

std::string exactText(Money money) { return decimals(money.tenThousandths(), 4, 2) + ' ' + money.currency().code(); }

std::string handText(Mass mass) {
    const auto size = magnitude(mass.raw());
    // The tenth of a gram up to 100 g, then the gram; what is less than half a tenth is shown as it is, never as
    // nothing.
    const std::int64_t step = size < 50 ? 1 : size < 99'950 ? 100 : 1'000;
    return exactText(Mass::ofRaw(stepped(mass.raw(), step)));
}

std::string handText(Volume volume) {
    const auto size = magnitude(volume.raw());
    // The tenth of a millilitre up to 10 ml, the millilitre up to a litre, then 10 ml.
    const std::int64_t step = size < 50 ? 1 : size < 9'950 ? 100 : size < 999'500 ? 1'000 : 10'000;
    return exactText(Volume::ofRaw(stepped(volume.raw(), step)));
}

std::string handText(Celsius temperature) { return decimals(stepped(temperature.milli(), 100), 3) + " °C"; }
std::string handText(Length length) { return decimals(stepped(length.raw(), 100), 3) + " mm"; }

std::string handText(Seconds duration) {
    constexpr std::uint64_t kMinute = 60;
    constexpr std::uint64_t kHour = 60 * kMinute;
    const std::uint64_t exact = magnitude(duration.count());
    if (exact == 0) return "0 min";
    // Seconds count below ten minutes only; days are spoken of from the second one on.
    const std::uint64_t size = exact < 10 * kMinute ? exact : (exact + kMinute / 2) / kMinute * kMinute;
    const std::span<const Unit> units(kTimeUnits);
    return (duration < Seconds(0) ? "-" : "") + joined(size, size < 48 * kHour ? units.subspan(1) : units);
}

} // namespace piewright
