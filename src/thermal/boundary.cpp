#include "thermal/boundary.h"

#include "thermal/range.h"

#include "thermal/heat_transfer.h"
#include "thermal/water.h"

#include <cmath>

namespace piewright::thermal {

Boundary Boundary::convecting(double coefficient, double airDegC) {
    Boundary side;
    side.convection = coefficient;
    side.air = Curve::steady(airDegC);
    return side;
}

Boundary Boundary::held(double degC) {
    Boundary side;
    side.fixed = Curve::steady(degC);
    return side;
}

Result<Boundary> checked(Boundary asked) {
    for (const double coefficient : {asked.convection, asked.contact})
        if (!within(coefficient, 0, 1e9))
            return Problems::one(Fault::Input, "a heat-transfer coefficient of " + std::to_string(coefficient),
                                 "0 to 1e9 W/(m2 K)");
    if (!within(asked.emissivity, 0, 1))
        return Problems::one(Fault::Input, "an emissivity of " + std::to_string(asked.emissivity), "0 to 1");
    if (!within(asked.vapourPressure, 0, 101))
        return Problems::one(Fault::Input, "a vapour pressure of " + std::to_string(asked.vapourPressure),
                             "0 to 101 kPa");
    return asked;
}

Surroundings surroundingsAt(const Boundary& side, double seconds) {
    Surroundings now;
    if (side.fixed) {
        now.isFixed = true;
        now.fixed = side.fixed->at(seconds);
        return now;
    }
    now.convection = side.convection;
    now.air = side.air.at(seconds);
    now.emissivity = side.emissivity;
    now.walls = side.walls ? side.walls->at(seconds) : now.air;
    now.contact = side.contact;
    now.body = side.contact > 0 ? side.body.at(seconds) : 0;
    now.vapourPressure = side.vapourPressure;
    return now;
}

double evaporationCoefficient(double coefficient) {
    constexpr double kMassRatio = 0.622; // water to air
    constexpr double kAirHeat = 1006;    // J/(kg K)
    constexpr double kAtmosphere = 101.325;
    const double lewis = std::cbrt(0.857 * 0.857);
    return coefficient * kMassRatio / (kAirHeat * kAtmosphere * lewis);
}

SurfaceFlow surfaceFlow(const Surroundings& outside, double inside, double cell, double aside, double guess) {
    if (outside.isFixed) return {outside.fixed, inside * (outside.fixed - cell) - aside, inside, 0};
    double surface = guess;
    double gives = 0; // W/(m2 K) of all that is outside
    double steam = 0;
    const bool linear = outside.emissivity == 0 && outside.evaporation == 0;
    const double wallsKelvin = outside.walls + 273.15;
    for (int i = 0; i < 20; ++i) {
        double in = outside.convection * (outside.air - surface) + outside.contact * (outside.body - surface);
        gives = outside.convection + outside.contact;
        if (outside.emissivity > 0) {
            const double kelvin = surface + 273.15;
            const double es = outside.emissivity * kStefanBoltzmann;
            in += es * (wallsKelvin * wallsKelvin * wallsKelvin * wallsKelvin - kelvin * kelvin * kelvin * kelvin);
            gives += 4 * es * kelvin * kelvin * kelvin;
        }
        if (outside.evaporation > 0) {
            const double over = saturationPressure(surface) - outside.vapourPressure;
            steam = over > 0 ? outside.evaporation * over : 0;
            const double latent = latentHeat(surface);
            in -= steam * latent;
            if (over > 0)
                gives += outside.evaporation * latent *
                         (saturationPressure(surface + 0.5) - saturationPressure(surface - 0.5));
        }
        const double out = inside * (surface - cell) - aside;
        const double step = (in - out) / (gives + inside);
        surface += step;
        if (linear || std::abs(step) < 1e-7) break;
    }
    return {surface, inside * (surface - cell) - aside, inside * gives / (inside + gives), steam};
}

} // namespace piewright::thermal
