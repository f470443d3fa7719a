// What foods are made of, and how each part conducts, weighs and takes up heat. Used by food.h.
#pragma once

namespace piewright::thermal {

enum class Component { Water, Protein, Fat, Carbohydrate, Fibre, Ash, Ice };

/// Properties of a pure component at `degC`: -40 to 150, water 0 to 150 (below that it stands for supercooled water),
/// ice up to 0. Outside these the value at the nearer end is returned: the polynomials mean nothing there.
/// Source: Choi and Okos (1986) as printed in ASHRAE Handbook Refrigeration (2006), ch. 9, tables 1 and 2. The heat
/// capacity of supercooled water is from memory of the same table.
[[nodiscard]] double conductivityOf(Component part, double degC); ///< W/(m K)
[[nodiscard]] double densityOf(Component part, double degC);      ///< kg/m3
[[nodiscard]] double heatCapacityOf(Component part, double degC); ///< J/(kg K)
/// J/kg above the unfrozen component at 0 degC; ice has the latent heat of fusion (333.6 kJ/kg) less.
[[nodiscard]] double enthalpyOf(Component part, double degC);

} // namespace piewright::thermal
