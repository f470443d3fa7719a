// A food or a thing as the conduction solver sees it: temperature and conductivity from the heat a cubic metre holds.
#pragma once

#include "finding/result.h"
#include "thermal/food.h"

#include <memory>
#include <optional>
#include <vector>

namespace piewright::thermal {

/// How a moist material dries where it boils. Water leaves it as steam over a few kelvin about 100 degC (dissolved
/// matter spreads the boiling point); what is dry conducts less. So a crust forms behind a front that stays near 100.
struct Drying {
    double removable = 0.9;        ///< part of its water that boils off; above 0, at most 1
    double dryConductivity = 0.10; ///< W/(m K) of the crust; bread crust 0.05, short paste more (no good source)
    double from = 99.5;            ///< degC
    double to = 102.5;             ///< degC
};

/// Tables over the heat in a cubic metre, counted from the unfrozen, moist material at 0 degC and including what its
/// steam carried off. -60 to 350 degC; beyond, straight on.
class Material {
  public:
    /// W/(m K), kg/m3, J/(kg K), all above 0: the same at every temperature. Temperatures follow exactly.
    static Result<Material> constant(double conductivity, double density, double heatCapacity);
    /// Volume is that at 20 degC. `foam` (0 to below 0.9) is the part that is air: it takes from density and, by
    /// Maxwell's formula for spheres of nothing, from conductivity. Problems: out of range.
    static Result<Material> of(const Food& food, double foam = 0, std::optional<Drying> drying = std::nullopt);

    /// The same, stirred so that it is of nearly one temperature.
    [[nodiscard]] Material stirred() const;

    struct State {
        double degC;
        double perHeat; ///< K for each J/m3 more
        double conductivity;
    };
    [[nodiscard]] State at(double heat) const;
    /// On the way down from the most heat it has held: what has boiled off does not come back.
    [[nodiscard]] State below(double heat, double most) const;
    /// J/m3 on the way up.
    [[nodiscard]] double heatAt(double degC) const;
    /// kg/m3 that have boiled off on the way up.
    [[nodiscard]] double boiledAt(double heat) const;

    [[nodiscard]] bool isConstant() const { return constant_; }
    [[nodiscard]] bool dries() const { return removable_ > 0; }
    [[nodiscard]] double removable() const { return removable_; } ///< kg/m3
    [[nodiscard]] double boilsFrom() const { return boilsFrom_; } ///< J/m3; infinite where it never does
    [[nodiscard]] double boilsTo() const { return boilsTo_; }
    [[nodiscard]] double density() const { return density_; }

  private:
    struct Entry {
        double degC;
        double conductivity;
        double perHeatDown; ///< K for each J/m3 when it cools from here
        double boiled;      ///< kg/m3
    };
    using Table = std::vector<Entry>;
    [[nodiscard]] std::pair<const Entry*, double> entry(double heat) const;

    bool constant_ = false;
    double conductivity_ = 0;
    double perHeat_ = 0;
    double density_ = 0;
    double removable_ = 0;
    double boilsFrom_ = 0;
    double boilsTo_ = 0;
    double least_ = 0; ///< heat of the first entry
    double each_ = 1;  ///< heat between entries
    double perEach_ = 1;
    std::shared_ptr<const Table> table_;
};

} // namespace piewright::thermal
