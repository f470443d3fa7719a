// Exact temperatures of simple bodies with constant properties, as sums of decaying modes: a check on the solver, and
// bounds that no chiller can beat. Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed. 1959; Incropera and
// DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5.
#pragma once

#include <vector>

namespace piewright::thermal {

enum class SeriesShape { Slab, Cylinder, Sphere };

/// A body that starts at one temperature and is put in surroundings at another; lengths go by the half thickness or the
/// radius, L.
class Series {
  public:
    /// `biot` = h L / k, from 1e-6 up (clamped); 1e9 and more is a surface held at the surroundings' temperature.
    Series(SeriesShape shape, double biot, int modes = 60);

    [[nodiscard]] double root(int mode) const { return modes_[at(mode)].root; }          ///< zeta, from mode 1
    [[nodiscard]] double coefficient(int mode) const { return modes_[at(mode)].centre; } ///< C
    /// (T - T surroundings) / (T start - T surroundings) at x / L from 0 (middle) to 1, at Fo = alpha t / L^2 of at
    /// least 0.001.
    [[nodiscard]] double theta(double fourier, double x) const;
    [[nodiscard]] double mean(double fourier) const; ///< over the volume
    /// Fo at which the middle has come down to `theta`, above 0 and below 1.
    [[nodiscard]] double fourierAt(double theta) const;

  private:
    struct Mode {
        double root;
        double centre; ///< C
        double mean;   ///< C times the mode's mean over the volume
    };
    [[nodiscard]] static std::size_t at(int mode) { return static_cast<std::size_t>(mode - 1); }
    SeriesShape shape_;
    std::vector<Mode> modes_;
};

} // namespace piewright::thermal
