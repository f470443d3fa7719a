// Times at a core temperature that authorities publish as enough, and heat resistances that papers print.
//
// CAUTION: figures to plan with, each under its source's own conditions (product, humidity, target). They never replace
// a probe reading and never make food safe: follow the local food authority, the house's own food-safety plan and a
// competent person. Tables have different targets: never read one by another's rule, never interpolate across them.
#pragma once

#include "thermal/curve.h"
#include "thermal/lethality.h"

#include <optional>
#include <span>
#include <string_view>

namespace piewright::thermal {

/// How a number came here: read in the source itself, read in a page that quotes it, or not read at all.
enum class Read { InSource, Quoted, FromMemory };

struct HoldPair {
    double degC;
    double seconds;
    Read read;
};

struct HoldTable {
    std::string_view id;
    std::string_view what; ///< food and target
    std::string_view source;
    std::span<const HoldPair> pairs; ///< by rising temperature
};

/// All that are carried: `fsa-combinations`, `ecoli-low-temperature`, `appendix-a-6.5-log`, `appendix-a-7-log`,
/// `food-code-whole`, `food-code-ground`, `food-code-stuffed`, `listeria-6-log`.
[[nodiscard]] std::span<const HoldTable> holdTables();
[[nodiscard]] const HoldTable* holdTable(std::string_view id);

/// Seconds to hold at `degC`: those of the warmest printed temperature that is not above it, so between two lines the
/// longer time. Nothing below the coldest line: the table does not speak there.
[[nodiscard]] std::optional<double> holdFor(const HoldTable& table, double degC);

/// The first time at which the curve has stayed at or above some printed temperature for its printed time; nothing if
/// it never has. Come-up and cooling count only as far as they are above that temperature. O(points x pairs).
[[nodiscard]] std::optional<double> firstMeeting(const HoldTable& table, const Curve& curve);

/// Non-proteolytic C. botulinum, 90 degC for ten minutes or equivalent: z 9 K below 90 degC, 10 K above, which gives
/// every line of the table of FSA vacuum-packing training (Chilled Food Association, Best Practice Guidelines, 4th ed.
/// 2006) within 3.5 %, its lines being printed to two figures.
inline constexpr Lethality kNonProteolytic{90, 9, 10, 80};
inline constexpr double kNonProteolyticSeconds = 600;

/// Seconds at `degC` for a tenfold reduction, as one paper measured it in one medium. Never for another food.
struct DecimalTime {
    std::string_view organism;
    std::string_view medium;
    double degC;
    double seconds;
    std::string_view source;
};
[[nodiscard]] std::span<const DecimalTime> decimalTimes();
/// Nothing for what no paper here measured: nothing is interpolated.
[[nodiscard]] std::optional<double> decimalTime(std::string_view organism, std::string_view medium, double degC);

} // namespace piewright::thermal
