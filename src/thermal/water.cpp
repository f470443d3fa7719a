#include "thermal/water.h"

#include <algorithm>
#include <cmath>

namespace piewright::thermal {

double saturationPressure(double degC) {
    constexpr double kCriticalKelvin = 647.096;
    constexpr double kCriticalKilopascal = 22064;
    const double kelvin = std::clamp(degC, 0.0, 150.0) + 273.15;
    const double tau = 1 - kelvin / kCriticalKelvin;
    const double root = std::sqrt(tau);
    const double tau3 = tau * tau * tau;
    const double sum = -7.85951783 * tau + 1.84408259 * tau * root - 11.7866497 * tau3 + 22.6807411 * tau3 * root -
                       15.9618719 * tau3 * tau + 1.80122502 * tau3 * tau3 * tau * root;
    return kCriticalKilopascal * std::exp(kCriticalKelvin / kelvin * sum);
}

double latentHeat(double degC) {
    const double t = std::clamp(degC, 0.0, 110.0);
    return 1e3 * (2500.9 + t * (-2.373167 + t * (5.15e-4 - t * 1.2333e-5)));
}

double heatOfLoss(double massKg, double loss, double latentJoulesPerKg) { return massKg * loss * latentJoulesPerKg; }

double lossFromWater(double before, double after) { return 1 - (1 - before) / (1 - after); }

} // namespace piewright::thermal
