#include "outside/topics.h"
#include "thermal/food.h"

#include <array>

namespace piewright::outside {

namespace {

using thermal::Component;

constexpr std::array<std::pair<std::string_view, Component>, 6> kComponents{{{"water", Component::Water},
                                                                             {"protein", Component::Protein},
                                                                             {"fat", Component::Fat},
                                                                             {"carb", Component::Carbohydrate},
                                                                             {"fibre", Component::Fibre},
                                                                             {"ash", Component::Ash}}};

} // namespace

Answer componentProperty(const Case& asked, const Foods&) {
    const auto t = asked.inputs.number("t_C");
    if (!t || !asked.inputs.only({"component", "t_C"})) return NotCovered{"wants component and t_C"};
    const std::string name = asked.inputs.text("component");
    for (const auto& [known, part] : kComponents) {
        if (known != name) continue;
        if (*t < (part == Component::Water ? 0 : -40) || *t > 150) return NotCovered{"outside the formulas' range"};
        if (asked.quantity.starts_with("k of") && asked.unit == "W/(m K)") return thermal::conductivityOf(part, *t);
        if (asked.quantity.starts_with("rho of") && asked.unit == "kg/m3") return thermal::densityOf(part, *t);
        if (asked.quantity.starts_with("cp of") && asked.unit == "kJ/(kg K)")
            return thermal::heatCapacityOf(part, *t) / 1e3;
        return NotCovered{"a property not known here"};
    }
    return NotCovered{"a component not known here"};
}

Answer foodProperty(const Case& asked, const Foods&) {
    const Inputs& in = asked.inputs;
    if (!in.only({"food", "t_C", "x_water", "x_protein", "x_fat", "x_carb", "x_fibre", "x_ash"}))
        return NotCovered{"a key not known here"};
    const auto t = in.number("t_C");
    const auto water = in.number("x_water");
    const auto protein = in.number("x_protein");
    const auto fat = in.number("x_fat");
    const auto carbohydrate = in.number("x_carb");
    const auto fibre = in.number("x_fibre");
    const auto ash = in.number("x_ash");
    if (!t || *t < 0 || *t > 150 || !water || !protein || !fat || !carbohydrate || !fibre || !ash)
        return NotCovered{"wants every part and 0 to 150 C"};
    const auto food = thermal::Food::of({*water, *protein, *fat, *carbohydrate, *fibre, *ash});
    if (!food) return NotCovered{"no food"};
    const std::string& what = asked.quantity;
    if (what.starts_with("cp of ") && asked.unit == "kJ/(kg K)") return food->heatCapacity(*t) / 1e3;
    if (what.starts_with("rho of ") && asked.unit == "kg/m3") return food->density(*t);
    if (what.starts_with("k_parallel of ") && asked.unit == "W/(m K)") return food->conductivityParallel(*t);
    if (what.starts_with("k_series of ") && asked.unit == "W/(m K)") return food->conductivitySeries(*t);
    if (what.starts_with("alpha of ") && asked.unit == "m2/s") return food->diffusivity(*t);
    return NotCovered{"a property not known here"};
}

} // namespace piewright::outside
