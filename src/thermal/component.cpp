#include "thermal/component.h"

#include <algorithm>
#include <array>

namespace piewright::thermal {

namespace {

struct Polynomial {
    double constant;
    double linear;
    double square;

    [[nodiscard]] double at(double t) const { return constant + t * (linear + t * square); }
    [[nodiscard]] double integralTo(double t) const { return t * (constant + t * (linear / 2 + t * square / 3)); }
};

struct Properties {
    Polynomial conductivity; // W/(m K)
    Polynomial density;      // kg/m3
    Polynomial heatCapacity; // kJ/(kg K)
};

// In the order of Component.
constexpr std::array<Properties, 7> kProperties{{
    {{0.57109, 1.7625e-3, -6.7036e-6}, {997.18, 3.1439e-3, -3.7574e-3}, {4.1289, -9.0864e-5, 5.4731e-6}},
    {{0.17881, 1.1958e-3, -2.7178e-6}, {1329.9, -0.51840, 0}, {2.0082, 1.2089e-3, -1.3129e-6}},
    {{0.18071, -2.7604e-4, -1.7749e-7}, {925.59, -0.41757, 0}, {1.9842, 1.4733e-3, -4.8008e-6}},
    {{0.20141, 1.3874e-3, -4.3312e-6}, {1599.1, -0.31046, 0}, {1.5488, 1.9625e-3, -5.9399e-6}},
    {{0.18331, 1.2497e-3, -3.1683e-6}, {1311.5, -0.36589, 0}, {1.8459, 1.8306e-3, -4.6509e-6}},
    {{0.32962, 1.4011e-3, -2.9069e-6}, {2423.8, -0.28063, 0}, {1.0926, 1.8896e-3, -3.6817e-6}},
    {{2.2196, -6.2489e-3, 1.0154e-4}, {916.89, -0.13071, 0}, {2.0623, 6.0769e-3, 0}},
}};
constexpr Polynomial kSupercooledWater{4.1289, -5.3062e-3, 9.9516e-4};
constexpr double kFusion = 333.6e3;

constexpr double kColdest = -40;
constexpr double kHottest = 150;

const Properties& of(Component part) { return kProperties[static_cast<std::size_t>(part)]; }

double within(Component part, double degC) {
    return std::clamp(degC, kColdest, part == Component::Ice ? 0.0 : kHottest);
}

const Polynomial& heatCapacityPolynomial(Component part, double degC) {
    return part == Component::Water && degC < 0 ? kSupercooledWater : of(part).heatCapacity;
}

} // namespace

double conductivityOf(Component part, double degC) { return of(part).conductivity.at(within(part, degC)); }

double densityOf(Component part, double degC) { return of(part).density.at(within(part, degC)); }

double heatCapacityOf(Component part, double degC) {
    return 1e3 * heatCapacityPolynomial(part, degC).at(within(part, degC));
}

double enthalpyOf(Component part, double degC) {
    const double inside = within(part, degC);
    // Past the ends the heat capacity stays what it is there.
    const double sensible =
        1e3 * heatCapacityPolynomial(part, degC).integralTo(inside) + (degC - inside) * heatCapacityOf(part, degC);
    return part == Component::Ice ? sensible - kFusion : sensible;
}

} // namespace piewright::thermal
