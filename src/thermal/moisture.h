// Where the water of a drying body is: what boiled off, what evaporated, how far each moist face has dried. Used by the
// conduction solver alone.
#pragma once

#include "thermal/conduction.h"
#include "thermal/factor.h"

namespace piewright::thermal {

class Moisture {
  public:
    /// How far a face has dried, from the surface inwards.
    struct Dried {
        std::size_t cell = 0; ///< where the water now comes from
        double depth = 0;     ///< m of dry matter over it
        bool atSurface = true;
        bool any = true; ///< some is left
    };

    Moisture(const Body& body, const Cells& heat);

    [[nodiscard]] bool dries() const { return dries_; }
    [[nodiscard]] const Dried& face(std::size_t outside) const { return dried_[outside]; }
    [[nodiscard]] Material::State stateOf(const Material& material, std::size_t cell, double heat) const;
    [[nodiscard]] double boiled(std::size_t cell) const; ///< kg/m3
    /// After a step: `before` and `between` are kg/s of each face at its two stages. Returns the kg that evaporated.
    double settle(double step, const Cells& heat, const std::vector<double>& before,
                  const std::vector<double>& between);

  private:
    void takeFrom(std::size_t f, double kilograms);
    void drawBack(std::size_t f);

    const Body& body_;
    const Grid& grid_;
    bool dries_ = false;
    Cells most_; // the most heat each cell has held
    Cells lost_; // kg/m3 that evaporated from it below boiling
    std::vector<Dried> dried_;
};

} // namespace piewright::thermal
