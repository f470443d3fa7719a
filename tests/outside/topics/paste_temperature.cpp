#include "formula/water.h"
#include "outside/topics.h"

namespace piewright::outside {

namespace {

bool temperature(double c) { return c >= -273.15 && c <= 1'000; }

Answer water(const Case& asked) {
    if (asked.unit != "C" || !asked.inputs.only({"n", "target_C", "others_C", "friction_C"}))
        return NotCovered{"wants n, target_C, others_C and friction_C, and degrees Celsius"};
    const auto target = asked.inputs.number("target_C");
    const auto friction = asked.inputs.number("friction_C");
    const auto others = numbersIn(asked.inputs.text("others_C"));
    if (!target || !friction || !others || others->size() > 20) return NotCovered{"not all are numbers"};
    if (!temperature(*target) || !temperature(*friction)) return NotCovered{"out of range"};
    // The rule's n counts the terms and the water: one more than the others.
    if (asked.inputs.number("n") != static_cast<double>(others->size() + 1))
        return NotCovered{"n is not one more than the others"};
    std::vector<Celsius> terms;
    for (const double other : *others) {
        if (!temperature(other)) return NotCovered{"out of range"};
        terms.push_back(Celsius::nearest(other));
    }
    return formula::waterTemperature(Celsius::nearest(*target), terms, Kelvin::nearest(*friction * 1e3)).degC();
}

Answer ice(const Case& asked) {
    if (asked.unit != "kg") return NotCovered{"wants kilograms"};
    const auto in = asked.inputs.exactly({"water_kg", "tap_C", "needed_C"});
    if (!in) return NotCovered{"wants water_kg, tap_C and needed_C"};
    const auto [all, tap, needed] = *in;
    if (all < 0 || all > 1e6 || !temperature(tap) || !temperature(needed)) return NotCovered{"out of range"};
    // The trade's rule has 80 kcal to melt a kilogram where the product has 334 kJ, 0.3 % less; the balance is the
    // product's.
    const bool rule = asked.source.find("80 kcal") != std::string::npos;
    const formula::WaterHeats heats = rule ? formula::WaterHeats{80, 1, 0.5} : formula::WaterHeats{};
    const auto split =
        formula::iceFor(Mass::nearest(all * 1e6), Celsius::nearest(tap), Celsius::nearest(needed), celsius(0), heats);
    if (!split) return NotCovered{toText(split.problems().findings.front())};
    return inKilograms(split->ice);
}

} // namespace

Answer pasteTemperature(const Case& asked, const Foods& /*foods*/) {
    if (asked.quantity == "water temperature for target paste temperature") return water(asked);
    if (asked.quantity == "ice in place of part of the water") return ice(asked);
    return NotCovered{"neither the water's temperature nor its ice"};
}

} // namespace piewright::outside
