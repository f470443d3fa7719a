// The temperature of the water that brings a paste to its target.
#pragma once

#include "finding/result.h"
#include "units/quantity.h"

#include <span>

namespace piewright::formula {

/// The baker's rule: n x target - (flour + room + fat ...) - friction, n being the number of terms including the water.
/// Source: common baking textbooks; the arithmetic is checked by the outside cases of topic paste-temperature.
[[nodiscard]] Celsius waterTemperature(Celsius target, std::span<const Celsius> others, Kelvin friction);

struct IceSplit {
    Mass ice;
    Mass water; ///< ice + water = all the water of the formula
};

/// Heats of water in one energy unit, kJ by default [rounded handbook values]. Only their proportions matter, so the
/// trade's rule with 80 kcal to melt a kilogram is {80, 1, 0.5}.
struct WaterHeats {
    double melting = 334; ///< of a kilogram of ice at 0 degC
    double water = 4.19;  ///< of a kilogram and a kelvin
    double ice = 2.1;     ///< of a kilogram and a kelvin
};

/// How much of `all` the water must be ice so that tap water and ice together act as water at `needed`.
/// Balance: ice melts (latent heat) and warms to `needed`, the tap water cools to it; ice below 0 degC warms to 0
/// first:
///   ice (melting + c_ice (0 - iceAt) + c_water needed) = (all - ice) c_water (tap - needed)
/// `needed` below 0 degC is met in the sense of the balance (the ice goes on melting in the paste).
/// No ice when `needed >= tap`. `iceAt` is not above 0 degC (taken as 0), tap not below it, `all` not negative.
/// Problem: colder than all-ice, with what to chill instead.
Result<IceSplit> iceFor(Mass all, Celsius tap, Celsius needed, Celsius iceAt = Celsius{}, WaterHeats heats = {});

} // namespace piewright::formula
