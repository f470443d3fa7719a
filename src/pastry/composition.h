// The density of a paste from what it is made of, where nobody has weighed it.
#pragma once

#include "units/quantity.h"

#include <span>

namespace piewright::pastry {

/// Grams in 100 g, as composition tables print them; they sum to about 100. Carbohydrate without the fibre; where a
/// table doesn't part them, fibre is zero and carbohydrate holds both. Salt counts as ash.
struct Composition {
    double water = 0;
    double protein = 0;
    double fat = 0;
    double carbohydrate = 0;
    double fibre = 0;
    double ash = 0;
};

struct CompositionPart {
    Composition of;
    Mass mass; ///< not negative
};

/// What parts mixed together hold in 100 g. Some part is above zero.
[[nodiscard]] Composition mixed(std::span<const CompositionPart> parts);

/// Density without any air: the parts keep their own volumes. Some part of `food` is above zero, none below; -40 to 150
/// degC, water unfrozen (0 to 150). A paste from the mixer holds some air and is a few per cent lighter: weigh a known
/// volume. Source: component densities of Choi and Okos (1986) as printed in ASHRAE Handbook Refrigeration (2006), ch.
/// 9, tables 1 and 2.
[[nodiscard]] Density voidFreeDensity(const Composition& food, Celsius at);

} // namespace piewright::pastry
