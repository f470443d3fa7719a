#include "formula/yield.h"
#include "outside/topics.h"

#include <array>

namespace piewright::outside {

namespace {

std::optional<double> protein(const Food& food) { return food.protein; }
std::optional<double> fat(const Food& food) { return food.fat; }
std::optional<double> solids(const Food& food) {
    return food.water ? std::optional<double>(100 - *food.water) : std::nullopt;
}

/// What stays in the food, and by which name a case speaks of it.
struct Constituent {
    std::string name;
    std::optional<double> (*of)(const Food&);
};

/// Given as `protein_raw`, or that of the food named under `raw`.
std::optional<double> amount(const Case& asked, const Foods& foods, const Constituent& part, const std::string& state) {
    const std::string key = part.name + "_" + state;
    std::optional<double> found;
    if (asked.inputs.has(key))
        found = asked.inputs.number(key);
    else if (const Food* food = foods.find(asked.inputs.text(state)))
        found = part.of(*food);
    return found && *found > 0 && *found <= 100 ? found : std::nullopt;
}

} // namespace

Answer meatYield(const Case& asked, const Foods& foods) {
    if (asked.unit != "% of raw") return NotCovered{"wants per cent of the raw weight"};
    const std::array<Constituent, 3> parts{{{"protein", protein}, {"fat", fat}, {"solids", solids}}};
    for (const Constituent& part : parts) {
        if (asked.quantity.find(part.name + " balance") == std::string::npos) continue;
        if (!asked.inputs.only({"raw", "cooked", part.name + "_raw", part.name + "_cooked"}))
            return NotCovered{"a key not known here"};
        const auto raw = amount(asked, foods, part, "raw");
        const auto cooked = amount(asked, foods, part, "cooked");
        if (!raw || !cooked) return NotCovered{"a food that isn't known, or not with its " + part.name};
        return 100 * asFraction(formula::keptInCooking(*raw, *cooked));
    }
    return NotCovered{"a balance of neither protein, fat nor solids"};
}

} // namespace piewright::outside
