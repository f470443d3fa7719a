#include "outside/topics.h"
#include "pastry/composition.h"

#include <array>

namespace piewright::outside {

namespace {

/// `void-free density at 15 C of …`
std::optional<double> temperatureIn(std::string_view quantity) {
    constexpr std::string_view kStart = "void-free density at ";
    if (!quantity.starts_with(kStart)) return std::nullopt;
    const std::string_view rest = quantity.substr(kStart.size());
    const std::size_t end = rest.find(" C ");
    return end == std::string_view::npos ? std::nullopt : numberIn(rest.substr(0, end));
}

std::optional<pastry::Composition> compositionOf(const Food* food) {
    if (!food || !food->water || !food->protein || !food->fat || !food->carbohydrate || !food->ash) return std::nullopt;
    // The tables' carbohydrate is by difference and holds the fibre; it is not parted here.
    return pastry::Composition{*food->water, *food->protein, *food->fat, *food->carbohydrate, 0, *food->ash};
}

} // namespace

Answer pasteDensity(const Case& asked, const Foods& foods) {
    const auto temperature = temperatureIn(asked.quantity);
    if (!temperature || *temperature < 0 || *temperature > 150 || asked.unit != "kg/m3")
        return NotCovered{"not a void-free density between 0 and 150 C in kg/m3"};
    if (!asked.inputs.only({"fat_pct", "water_pct", "salt_pct", "flour"})) return NotCovered{"a key not known here"};
    const auto fat = asked.inputs.number("fat_pct");
    const auto water = asked.inputs.number("water_pct");
    const auto salt = asked.inputs.number("salt_pct");
    if (!fat || !water || !salt) return NotCovered{"wants fat_pct, water_pct and salt_pct"};
    for (const double percent : {*fat, *water, *salt})
        if (percent < 0 || percent > 1e4) return NotCovered{"out of range"};
    const auto flour = compositionOf(foods.find(asked.inputs.text("flour")));
    if (!flour) return NotCovered{"a flour that isn't known, or not whole"};
    const auto onFlour = [](double percent) { return scaled(grams(1), percent); }; // of 100 g flour
    pastry::Composition pureFat;
    pureFat.fat = 100;
    pastry::Composition pureWater;
    pureWater.water = 100;
    pastry::Composition pureSalt;
    pureSalt.ash = 100;
    const std::array parts{pastry::CompositionPart{*flour, grams(100)}, pastry::CompositionPart{pureFat, onFlour(*fat)},
                           pastry::CompositionPart{pureWater, onFlour(*water)},
                           pastry::CompositionPart{pureSalt, onFlour(*salt)}};
    return inKilogramsPerCubicMetre(pastry::voidFreeDensity(pastry::mixed(parts), Celsius::nearest(*temperature)));
}

} // namespace piewright::outside
