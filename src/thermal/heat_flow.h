// What flows between the cells of a body and through its sides at one moment. Used by the conduction solver alone.
#pragma once

#include "thermal/conduction.h"
#include "thermal/factor.h"
#include "thermal/moisture.h"

namespace piewright::thermal {

/// What one look at the cells gives.
struct Look {
    Cells degC;
    Cells perHeat; ///< K m3/J
    Cells conductivity;
    Cells watts;                   ///< into each cell
    double in = 0;                 ///< W through all sides
    std::vector<double> faceSteam; ///< kg/s from each outside face, below boiling

    explicit Look(std::size_t cells) : degC(cells), perHeat(cells), conductivity(cells), watts(cells) {}
};

class HeatFlow {
  public:
    HeatFlow(const Body& body, const Moisture& moisture);

    /// Fills `seen` for cells that hold `heat`; `forFactor` also keeps what flows off to the outside for each K.
    void look(const Cells& heat, double seconds, Look& seen, bool forFactor);

    [[nodiscard]] const std::vector<int>& axes() const { return axes_; } ///< those with more than one cell
    /// Of the last look, by axes(): W/K across the face to the next cell.
    [[nodiscard]] const Cells& join(std::size_t a) const { return join_[a]; }
    /// Of the last look for a factor: W/K to the outside, and the cells where that is not 0.
    [[nodiscard]] const Cells& leaves(std::size_t a) const { return leaves_[a]; }
    [[nodiscard]] const std::vector<std::size_t>& leavers(std::size_t a) const { return leavers_[a]; }
    [[nodiscard]] double surface(std::size_t outside) const { return surface_[outside]; } ///< degC at the last look

  private:
    /// Cells one after the other of one material.
    struct Segment {
        std::size_t begin;
        std::size_t end;
        const Material* material;
    };

    [[nodiscard]] std::size_t axisIndex(int axis) const;
    void slanted(Look& seen) const;
    [[nodiscard]] double aside(const Grid::Outside& face, const Look& seen) const;
    void sides(double seconds, Look& seen, bool forFactor);

    const Body& body_;
    const Grid& grid_;
    const Moisture& moisture_;
    std::vector<int> axes_;
    std::vector<Cells> join_;
    std::vector<Cells> leaves_;
    std::vector<std::vector<std::size_t>> leavers_;
    std::vector<Segment> segments_;
    std::vector<double> surface_;
};

} // namespace piewright::thermal
