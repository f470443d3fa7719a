#include "thermal/heat_transfer.h"

#include <algorithm>
#include <cmath>

namespace piewright::thermal {

double radiationCoefficient(double surroundingsDegC, double surfaceDegC, double emissivity) {
    const double a = surroundingsDegC + 273.15;
    const double b = surfaceDegC + 273.15;
    return emissivity * kStefanBoltzmann * (a * a + b * b) * (a + b);
}

double naturalConvection(double differenceK, double lengthM) {
    return 1.32 * std::pow(std::abs(differenceK) / lengthM, 0.25);
}

double forcedConvection(double airDegC, double metresPerSecond, double lengthM, double turbulence) {
    // Dry air at one atmosphere: straight powers through 300 and 500 K of the usual tables.
    const double ratio = (std::clamp(airDegC, -40.0, 300.0) + 273.15) / 300;
    const double conductivity = 0.0263 * std::pow(ratio, 0.85);
    const double viscosity = 1.589e-5 * std::pow(ratio, 1.75); // kinematic, m2/s
    constexpr double kPrandtl = 0.70;
    const double reynolds = metresPerSecond * lengthM / viscosity;
    return turbulence * 0.664 * std::sqrt(reynolds) * std::cbrt(kPrandtl) * conductivity / lengthM;
}

} // namespace piewright::thermal
