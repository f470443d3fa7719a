#include "formula/water.h"

#include "units/text.h"

#include <algorithm>

namespace piewright::formula {

Celsius waterTemperature(Celsius target, std::span<const Celsius> others, Kelvin friction) {
    // n x target - sum = target + sum of (target - other): differences, so that no two temperatures add.
    Celsius water = target;
    for (const Celsius other : others) water = water + (target - other);
    return water - friction;
}

Result<IceSplit> iceFor(Mass all, Celsius tap, Celsius needed, Celsius iceAt, WaterHeats heats) {
    if (needed >= tap) return IceSplit{Mass{}, all};
    const double cooled = heats.water * inKelvins(tap - needed);
    const double taken = heats.melting + heats.ice * std::max(0.0, -iceAt.degC()) + heats.water * tap.degC();
    const double share = cooled / taken;
    if (share > 1) {
        const Celsius coldest = Celsius::nearest(tap.degC() - taken / heats.water);
        return Problems::one(Fault::Input,
                             "water at " + handText(needed) + " is colder than all its ice can make it, " +
                                 handText(coldest),
                             "chilled flour and fat, a cooler room or less mixing, so that the water may be warmer");
    }
    const Mass ice = scaled(all, share);
    return IceSplit{ice, all - ice};
}

} // namespace piewright::formula
