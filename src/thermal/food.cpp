#include "thermal/food.h"

#include "thermal/range.h"

#include <algorithm>
#include <cmath>

namespace piewright::thermal {

namespace {

constexpr double kBoundPerProtein = 0.4;
constexpr double kLowestFreezingPoint = -15;
constexpr double kHighestFreezingPoint = -0.01;

double freezable(const Composition& parts) { return std::max(0.0, parts.water - kBoundPerProtein * parts.protein); }

} // namespace

Result<Food> Food::of(const Composition& parts, std::optional<double> freezingPoint) {
    double sum = 0;
    for (const double part : {parts.water, parts.protein, parts.fat, parts.carbohydrate, parts.fibre, parts.ash}) {
        if (!within(part, 0, 1e9))
            return Problems::one(Fault::Input, "a part of a food of " + std::to_string(part), "a mass of 0 or more");
        sum += part;
    }
    if (!(sum > 0)) return Problems::one(Fault::Input, "a food of nothing", "at least one part above 0");
    if (freezingPoint && !within(*freezingPoint, kLowestFreezingPoint, kHighestFreezingPoint))
        return Problems::one(Fault::Input, "a freezing point of " + std::to_string(*freezingPoint) + " degC",
                             "from -15 to below 0 degC");
    return Food({parts.water / sum, parts.protein / sum, parts.fat / sum, parts.carbohydrate / sum, parts.fibre / sum,
                 parts.ash / sum},
                freezingPoint);
}

double Food::ice(double degC) const {
    if (!freezes_ || degC >= *freezes_) return 0;
    return freezable(parts_) * (1 - *freezes_ / degC);
}

template <class Sum> void Food::eachPart(double degC, Sum sum) const {
    const double frozen = ice(degC);
    sum(Component::Water, parts_.water - frozen);
    sum(Component::Protein, parts_.protein);
    sum(Component::Fat, parts_.fat);
    sum(Component::Carbohydrate, parts_.carbohydrate);
    sum(Component::Fibre, parts_.fibre);
    sum(Component::Ash, parts_.ash);
    if (frozen > 0) sum(Component::Ice, frozen);
}

double Food::density(double degC) const {
    double volume = 0;
    eachPart(degC, [&](Component part, double mass) { volume += mass / densityOf(part, degC); });
    return 1 / volume;
}

double Food::heatCapacity(double degC) const {
    double sum = 0;
    eachPart(degC, [&](Component part, double mass) { sum += mass * heatCapacityOf(part, degC); });
    if (freezes_ && degC < *freezes_) {
        const double iceForEachKelvin = freezable(parts_) * *freezes_ / (degC * degC); // negative
        sum += iceForEachKelvin * (enthalpyOf(Component::Ice, degC) - enthalpyOf(Component::Water, degC));
    }
    return sum;
}

double Food::enthalpy(double degC) const {
    double sum = 0;
    eachPart(degC, [&](Component part, double mass) { sum += mass * enthalpyOf(part, degC); });
    return sum;
}

double Food::conductivityParallel(double degC) const {
    double volume = 0;
    double sum = 0;
    eachPart(degC, [&](Component part, double mass) {
        const double own = mass / densityOf(part, degC);
        volume += own;
        sum += own * conductivityOf(part, degC);
    });
    return sum / volume;
}

double Food::conductivitySeries(double degC) const {
    double volume = 0;
    double resistance = 0;
    eachPart(degC, [&](Component part, double mass) {
        const double own = mass / densityOf(part, degC);
        volume += own;
        resistance += own / conductivityOf(part, degC);
    });
    return volume / resistance;
}

double Food::diffusivity(double degC) const {
    return conductivityParallel(degC) / (density(degC) * heatCapacity(degC));
}

} // namespace piewright::thermal
