#include "pastry/composition.h"

#include <array>
#include <cassert>

namespace piewright::pastry {

namespace {

/// kg/m3 at t degC: constant + linear t + square t^2.
struct ComponentDensity {
    double Composition::* part;
    double constant;
    double linear;
    double square;
};

constexpr std::array<ComponentDensity, 6> kDensities{{
    {&Composition::water, 997.18, 3.1439e-3, -3.7574e-3},
    {&Composition::protein, 1329.9, -0.5184, 0},
    {&Composition::fat, 925.59, -0.41757, 0},
    {&Composition::carbohydrate, 1599.1, -0.31046, 0},
    {&Composition::fibre, 1311.5, -0.36589, 0},
    {&Composition::ash, 2423.8, -0.28063, 0},
}};

} // namespace

Composition mixed(std::span<const CompositionPart> parts) {
    Mass whole;
    for (const CompositionPart& part : parts) whole += part.mass;
    assert(whole > Mass{});
    Composition mix;
    for (const CompositionPart& part : parts)
        for (const ComponentDensity& component : kDensities)
            mix.*component.part += ratio(part.mass, whole) * part.of.*component.part;
    return mix;
}

Density voidFreeDensity(const Composition& food, Celsius at) {
    const double t = at.degC();
    double mass = 0;
    double volume = 0;
    for (const ComponentDensity& component : kDensities) {
        const double part = food.*component.part;
        mass += part;
        volume += part / (component.constant + component.linear * t + component.square * t * t);
    }
    assert(volume > 0);
    return Density::nearest(mass / volume * 1e3);
}

} // namespace piewright::pastry
