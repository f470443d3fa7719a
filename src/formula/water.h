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

/// How much of `all` the water must be ice so that tap water and ice together act as water at `needed`.
/// Balance: ice melts (latent heat) and warms to `needed`, the tap water cools to it; ice below 0 degC warms to 0 first.
/// `needed` below 0 degC is met in the sense of the balance (the ice goes on melting in the paste).
/// No ice when `needed >= tap`. Problem: colder than all-ice, with what to chill instead.
/// Latent heat 334 kJ/kg, water 4.19 and ice 2.1 kJ/(kg K) [rounded handbook values].
Result<IceSplit> iceFor(Mass all, Celsius tap, Celsius needed, Celsius iceAt = Celsius{});

} // namespace piewright::formula
