// How a food conducts, weighs and takes up heat, from what it is made of. Used by the conduction solver.
#pragma once

#include "finding/result.h"
#include "thermal/component.h"

#include <optional>

namespace piewright::thermal {

/// Parts by mass on any common scale (of 1, or g in 100 g): they are divided by their sum. Carbohydrate without the
/// fibre, salt with the ash, as composition tables have them.
struct Composition {
    double water = 0;
    double protein = 0;
    double fat = 0;
    double carbohydrate = 0;
    double fibre = 0;
    double ash = 0;
};

/// A food without air. Paste from a mixer and mash hold some, and conduct less: measured meats lie within some 7 % of
/// such a model unfrozen (Agric. Biol. Chem. 46 (1982) 1235); do not expect better. Temperatures are clamped to -40 to
/// 150 degC, the range of the component formulas.
class Food {
  public:
    /// `freezingPoint` in degC, from -15 to -0.01: where ice begins to form; without it the water never freezes.
    /// Problems: a part that is negative or no number, nothing at all, a freezing point out of range.
    static Result<Food> of(const Composition& parts, std::optional<double> freezingPoint = std::nullopt);

    /// Parts that sum to 1.
    [[nodiscard]] const Composition& parts() const { return parts_; }

    /// The part of the whole that is ice: (water - bound)(1 - freezing point / t), with 0.4 of the protein's mass bound
    /// (Chen 1985, as in ASHRAE Refrigeration 2006 ch. 9; cited from memory).
    [[nodiscard]] double ice(double degC) const;
    /// kg/m3: parts keep their own volumes.
    [[nodiscard]] double density(double degC) const;
    /// J/(kg K), apparent: while freezing it holds the latent heat.
    [[nodiscard]] double heatCapacity(double degC) const;
    /// J/kg above the unfrozen food at 0 degC; rises with temperature everywhere.
    [[nodiscard]] double enthalpy(double degC) const;
    /// W/(m K), heat flowing along the parts: the upper bound of a mixture, and what the solver uses.
    [[nodiscard]] double conductivityParallel(double degC) const;
    /// W/(m K), heat crossing the parts one after the other: the lower bound.
    [[nodiscard]] double conductivitySeries(double degC) const;
    /// m2/s, from the parallel conductivity.
    [[nodiscard]] double diffusivity(double degC) const;

  private:
    Food(const Composition& parts, std::optional<double> freezingPoint) : parts_(parts), freezes_(freezingPoint) {}
    template <class Sum> void eachPart(double degC, Sum sum) const;

    Composition parts_;
    std::optional<double> freezes_;
};

} // namespace piewright::thermal
