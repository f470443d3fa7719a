#include "outside/topics.h"
#include "thermal/hold_table.h"

#include <cmath>

namespace piewright::outside {

namespace {

using thermal::Curve;
using thermal::Lethality;

Answer holdIn(const thermal::HoldTable* table, std::optional<double> degC, const Case& asked) {
    if (!table || !degC || asked.unit != "s") return NotCovered{"a table not known here, or not in s"};
    const auto seconds = thermal::holdFor(*table, *degC);
    if (!seconds) return NotCovered{"colder than the table's first line"};
    return *seconds;
}

} // namespace

/// `min:degC|min:degC`
std::optional<Curve> curveIn(const std::string& text) {
    std::vector<thermal::CurvePoint> points;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find('|', at), text.size());
        const std::string part = text.substr(at, end - at);
        const std::size_t colon = part.find(':');
        if (colon == std::string::npos) return std::nullopt;
        const auto minutes = numberIn(std::string_view(part).substr(0, colon));
        const auto degC = numberIn(std::string_view(part).substr(colon + 1));
        if (!minutes || !degC) return std::nullopt;
        points.push_back({*minutes * 60, *degC});
        at = end + 1;
    }
    const auto curve = Curve::of(std::move(points));
    return curve ? std::optional(*curve) : std::nullopt;
}

Answer fsaCombination(const Case& asked, const Foods&) {
    if (!asked.inputs.only({"T_C"})) return NotCovered{"wants T_C alone"};
    return holdIn(thermal::holdTable("fsa-combinations"), asked.inputs.number("T_C"), asked);
}

Answer ecoliCombination(const Case& asked, const Foods&) {
    if (!asked.inputs.only({"T_C"})) return NotCovered{"wants T_C alone"};
    return holdIn(thermal::holdTable("ecoli-low-temperature"), asked.inputs.number("T_C"), asked);
}

Answer appendixA(const Case& asked, const Foods&) {
    const auto degF = asked.inputs.number("T_F");
    const std::string logs = asked.inputs.text("log_reduction");
    if (!degF || !asked.inputs.only({"T_F", "T_C_as_printed", "log_reduction", "product"}))
        return NotCovered{"wants T_F and log_reduction"};
    return holdIn(thermal::holdTable("appendix-a-" + logs + "-log"), (*degF - 32) / 1.8, asked);
}

Answer foodCode(const Case& asked, const Foods&) {
    const auto has = [&](std::string_view words) { return asked.quantity.find(words) != std::string::npos; };
    if (!asked.inputs.only({"T_C"})) return NotCovered{"wants T_C alone"};
    const std::string_view id = has("ground") || has("injected") ? "food-code-ground"
                                : has("poultry")                 ? "food-code-stuffed"
                                : has("whole-muscle")            ? "food-code-whole"
                                                                 : "";
    return holdIn(thermal::holdTable(id), asked.inputs.number("T_C"), asked);
}

Answer lethalityBenchmark(const Case& asked, const Foods&) {
    if (asked.quantity != "6-log Listeria monocytogenes" || !asked.inputs.only({"T_C"}))
        return NotCovered{"a target not known here"};
    return holdIn(thermal::holdTable("listeria-6-log"), asked.inputs.number("T_C"), asked);
}

Answer zValue(const Case& asked, const Foods&) {
    const auto times = asked.inputs.exactly({"T1_C", "t1_s", "T2_C", "t2_s"});
    const auto decimals = asked.inputs.exactly({"T1_C", "D1_min", "T2_C", "D2_min"});
    const auto& given = times ? times : decimals;
    if (!given || asked.unit != "C") return NotCovered{"wants two temperatures and two times, z in C"};
    const auto [t1, s1, t2, s2] = *given;
    if (t1 == t2 || s1 == s2 || s1 <= 0 || s2 <= 0) return NotCovered{"two times that differ"};
    return thermal::zBetween(t1, s1, t2, s2);
}

Answer equivalentTime(const Case& asked, const Foods&) {
    const auto given = asked.inputs.exactly({"T_C", "Tref_C", "z_C", "F_min"});
    if (!given || asked.unit != "s") return NotCovered{"wants T_C, Tref_C, z_C and F_min, in s"};
    const auto [t, reference, z, minutes] = *given;
    const auto by = thermal::checked({reference, z, {}, {}});
    if (!by) return NotCovered{"out of range"};
    return thermal::equivalentTime(*by, t, minutes * 60);
}

Answer nonProteolytic(const Case& asked, const Foods&) {
    const auto t = asked.inputs.number("T_C");
    if (!t || asked.unit != "min" || !asked.inputs.only({"T_C", "z_below_90", "z_above_90"}))
        return NotCovered{"wants T_C, in min"};
    Lethality by = thermal::kNonProteolytic;
    if (const auto below = asked.inputs.number("z_below_90")) by.z = *below;
    if (const auto above = asked.inputs.number("z_above_90")) by.zAbove = above;
    const auto good = thermal::checked(by);
    const double seconds = good ? thermal::equivalentTime(*good, *t, thermal::kNonProteolyticSeconds) : 0;
    if (!good || !std::isfinite(seconds)) return NotCovered{"out of range"};
    return seconds / 60;
}

Answer accumulatedLethality(const Case& asked, const Foods&) {
    const auto curve = curveIn(asked.inputs.text("points_min_C"));
    const auto reference = asked.inputs.number("Tref_C");
    const auto z = asked.inputs.number("z_C");
    if (!curve || !reference || !z || asked.unit != "min" || !asked.inputs.only({"points_min_C", "Tref_C", "z_C"}))
        return NotCovered{"wants points_min_C, Tref_C and z_C, in min"};
    const auto by = thermal::checked({*reference, *z, {}, {}});
    if (!by) return NotCovered{"out of range"};
    return thermal::accumulated(*by, *curve) / 60;
}

/// The paper's curves are not printed: straight lines from and to 20 C, whose lethality must lie in the row's bounds.
Answer measuredEquivalent(const Case& asked, const Foods&) {
    const auto given = asked.inputs.exactly({"T_C", "come_up_min", "hold_min", "cool_min"});
    if (!given || asked.unit != "min") return NotCovered{"wants T_C and three times, in min"};
    const auto [t, up, hold, down] = *given;
    const auto curve = Curve::of({{0, 20}, {up * 60, t}, {(up + hold) * 60, t}, {(up + hold + down) * 60, 20}});
    const auto by = thermal::checked({t, thermal::kNonProteolytic.z, {}, {}});
    if (!curve || !by) return NotCovered{"out of range"};
    return thermal::accumulated(*by, *curve) / 60;
}

Answer decimalReduction(const Case& asked, const Foods&) {
    constexpr std::string_view kStart = "D of ";
    const std::size_t in = asked.quantity.find(" in ");
    const auto t = asked.inputs.number("T_C");
    if (!asked.quantity.starts_with(kStart) || in == std::string::npos || !t || !asked.inputs.only({"T_C", "z_C"}))
        return NotCovered{"wants `D of … in …` and T_C"};
    const auto seconds =
        thermal::decimalTime(std::string_view(asked.quantity).substr(kStart.size(), in - kStart.size()),
                             std::string_view(asked.quantity).substr(in + 4), *t);
    if (!seconds) return NotCovered{"not among the published times carried"};
    if (asked.unit == "s") return *seconds;
    if (asked.unit == "min") return *seconds / 60;
    return NotCovered{"neither s nor min"};
}

} // namespace piewright::outside
