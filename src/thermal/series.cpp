#include "thermal/series.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace piewright::thermal {

namespace {

constexpr double kPi = std::numbers::pi;
// Longest roots used stay below this: far beyond it the library's Bessel functions lose digits.
constexpr int kMostModes = 100;

/// Of which the roots are the zeros; it changes sign once between `low` and `high`.
template <class Function> double zeroOf(Function f, double low, double high) {
    const bool rises = f(low) < 0;
    for (int i = 0; i < 200 && high - low > 1e-15 * high; ++i) {
        const double middle = (low + high) / 2;
        ((f(middle) < 0) == rises ? low : high) = middle;
    }
    return (low + high) / 2;
}

double j0(double x) { return std::cyl_bessel_j(0.0, x); }

double j1(double x) { return std::cyl_bessel_j(1.0, x); }

/// The n-th zero of a Bessel function lies within this of (n + shift) pi.
double besselZero(double order, int n) {
    const double near = (n + order / 2 - 0.25) * kPi;
    return zeroOf([&](double x) { return std::cyl_bessel_j(order, x); }, near - 0.3, near + 0.3);
}

double nthRoot(SeriesShape shape, double biot, int n) {
    switch (shape) {
    case SeriesShape::Slab: // zeta sin zeta = Bi cos zeta
        return zeroOf([&](double z) { return z * std::sin(z) - biot * std::cos(z); }, (n - 1) * kPi, (n - 0.5) * kPi);
    case SeriesShape::Cylinder: // zeta J1 = Bi J0, between a zero of J1 and the next of J0
        return zeroOf([&](double z) { return z * j1(z) - biot * j0(z); }, n == 1 ? 0 : besselZero(1, n - 1),
                      besselZero(0, n));
    case SeriesShape::Sphere: // zeta cos zeta = (1 - Bi) sin zeta
        return zeroOf([&](double z) { return z * std::cos(z) - (1 - biot) * std::sin(z); },
                      std::max((n - 1) * kPi, 1e-9), n * kPi);
    }
    return 0;
}

double modeAt(SeriesShape shape, double zeta, double x) {
    switch (shape) {
    case SeriesShape::Slab:
        return std::cos(zeta * x);
    case SeriesShape::Cylinder:
        return j0(zeta * x);
    case SeriesShape::Sphere:
        return zeta * x < 1e-8 ? 1 : std::sin(zeta * x) / (zeta * x);
    }
    return 0;
}

} // namespace

Series::Series(SeriesShape shape, double biot, int modes) : shape_(shape) {
    const double bi = std::clamp(biot, 1e-6, 1e9);
    for (int n = 1; n <= std::clamp(modes, 1, kMostModes); ++n) {
        const double z = nthRoot(shape, bi, n);
        double centre = 0;
        double mean = 0;
        if (shape == SeriesShape::Slab) {
            centre = 4 * std::sin(z) / (2 * z + std::sin(2 * z));
            mean = std::sin(z) / z;
        } else if (shape == SeriesShape::Cylinder) {
            centre = 2 / z * j1(z) / (j0(z) * j0(z) + j1(z) * j1(z));
            mean = 2 * j1(z) / z;
        } else {
            centre = 4 * (std::sin(z) - z * std::cos(z)) / (2 * z - std::sin(2 * z));
            mean = 3 * (std::sin(z) - z * std::cos(z)) / (z * z * z);
        }
        modes_.push_back({z, centre, centre * mean});
    }
}

double Series::theta(double fourier, double x) const {
    double sum = 0;
    for (const Mode& mode : modes_)
        sum += mode.centre * std::exp(-mode.root * mode.root * fourier) * modeAt(shape_, mode.root, x);
    return sum;
}

double Series::mean(double fourier) const {
    double sum = 0;
    for (const Mode& mode : modes_) sum += mode.mean * std::exp(-mode.root * mode.root * fourier);
    return sum;
}

double Series::fourierAt(double theta0) const {
    double low = 1e-3;
    double high = 1;
    while (theta(high, 0) > theta0) high *= 2;
    for (int i = 0; i < 100; ++i) {
        const double middle = (low + high) / 2;
        (theta(middle, 0) > theta0 ? low : high) = middle;
    }
    return (low + high) / 2;
}

} // namespace piewright::thermal
