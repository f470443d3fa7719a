// Amounts as text: a strict reader for the book's files and printers for files and for people.
// A file's text is exact (print, parse, print is stable); a person's text is rounded to what a hand can use.
#pragma once

#include "finding/result.h"
#include "units/civil.h"
#include "units/money.h"
#include "units/quantity.h"

#include <optional>
#include <string>
#include <string_view>

namespace piewright {

/// Strict readers. A number (digits, optional `.` and digits; no sign unless said, no exponent, no thousands mark),
/// one space, a unit. At most 12 digits before the point and 12 after; finer than the small unit is rounded to it.
/// Problems name no place: the caller knows the file, line and key.
Result<Mass> parseMass(std::string_view text);       ///< mg, g, kg, oz, lb; also `4 lb 6 oz`
Result<Volume> parseVolume(std::string_view text);   ///< ml, l (pints and gallons differ by country: not read)
Result<Length> parseLength(std::string_view text);   ///< mm, cm, m, in
Result<Celsius> parseCelsius(std::string_view text); ///< degC, degF; may be negative, not below -273.15 degC
Result<Kelvin> parseKelvin(std::string_view text);   ///< K; may be negative
Result<Density> parseDensity(std::string_view text); ///< g/ml, kg/l, kg/m3
Result<Share> parseShare(std::string_view text);     ///< `7 %` or `7.5 %`; may exceed 100
Result<BakersPercent> parseBakersPercent(std::string_view text); ///< `%` of flour
Result<Power> parsePower(std::string_view text);                 ///< W, kW
Result<Seconds> parseSeconds(std::string_view text);             ///< s, min, h, d, joined largest first: `1 h 30 min`
Result<Money> parseMoney(std::string_view text);                 ///< `5.20 GBP`; at most four decimals; may be negative

/// What was seen, in quotation marks, fit for a finding: cut after 60 bytes, control bytes as `\x1b`.
[[nodiscard]] std::string inQuotes(std::string_view seen);

/// Exact text that the readers above take back to the same value.
[[nodiscard]] std::string exactText(Mass mass);
[[nodiscard]] std::string exactText(Volume volume);
[[nodiscard]] std::string exactText(Length length);
[[nodiscard]] std::string exactText(Celsius temperature);
[[nodiscard]] std::string exactText(Kelvin difference);
[[nodiscard]] std::string exactText(Density density);
[[nodiscard]] std::string exactText(Share share);
[[nodiscard]] std::string exactText(BakersPercent share);
[[nodiscard]] std::string exactText(Power power);
[[nodiscard]] std::string exactText(Seconds duration);
[[nodiscard]] std::string exactText(Money money);

/// For hands: `12.4 kg`, `850 g`, `2.5 g`; at most three figures after kg, none after whole grams above 100 g.
[[nodiscard]] std::string handText(Mass mass);
[[nodiscard]] std::string handText(Volume volume);       ///< `7.5 l`, `150 ml`
[[nodiscard]] std::string handText(Celsius temperature); ///< `21 °C`, `-1.5 °C`
[[nodiscard]] std::string handText(Length length);       ///< `3 mm`, `2.7 mm`
[[nodiscard]] std::string handText(Seconds duration);    ///< `1 h 30 min`, `45 min`, `20 s`

} // namespace piewright
