// Finite volumes of a body: cells in up to three directions, what joins them, and the faces that meet the outside.
// Made by shape.h, used by the solver; nothing here knows a temperature.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace piewright::thermal {

/// Cells along one direction. Distances are in metres, or parts of the local radius across a slanted body.
struct Axis {
    std::vector<double> centres;
    std::vector<double> edges; ///< one more than cells
    std::vector<int> layer;    ///< of each cell; no straight line is drawn across layers
    bool mirrored = false;     ///< the body goes on, mirrored, before the first edge
};

/// Cells that a point's temperature is made of.
struct Probe {
    std::vector<std::pair<std::size_t, double>> weights;
};

struct Grid {
    /// Outside a cell: side `side` of the body.
    struct Outside {
        std::size_t cell = 0;
        int axis = 0;
        int side = 0;
        bool atEnd = false; ///< past the last cell of its axis, not before the first
        double area = 0;    ///< m2
        double inward = 0;  ///< m: conductivity x inward gives W/K from the surface to the cell
        double slant = 0;   ///< m2: W/m2 of gradient along the other axis flows off through it
        double depth = 0;   ///< m, of the cell below the surface
    };

    std::array<Axis, 3> axes;   ///< unused ones have one cell
    std::vector<double> volume; ///< m3
    std::vector<std::uint8_t> material;
    std::vector<double> start; ///< degC
    /// For the face between a cell and the next along an axis: area over distance on either side, m.
    std::array<std::vector<double>, 3> before;
    std::array<std::vector<double>, 3> beyond;
    std::vector<Outside> outside;
    /// Slanted bodies of two axes: for the same faces, area x slope, m2. Empty where walls are straight.
    std::array<std::vector<double>, 2> slant;
    std::vector<double> across; ///< slanted bodies: each cell's distance from the middle, m
    double whole = 1;           ///< how many times the cells make the body

    [[nodiscard]] std::size_t count(int axis) const { return axes[static_cast<std::size_t>(axis)].centres.size(); }
    [[nodiscard]] std::size_t cells() const { return volume.size(); }
    [[nodiscard]] std::size_t stride(int axis) const {
        return axis == 0 ? 1 : axis == 1 ? count(0) : count(0) * count(1);
    }
    /// A point inside the body, in the axes' measures: a parabola through the three nearest cells of its layer in each
    /// direction, so also at an axis, a mirror plane or a surface.
    [[nodiscard]] Probe probe(const std::array<double, 3>& at) const;
    /// The mean over the volume.
    [[nodiscard]] Probe mean() const;
};

} // namespace piewright::thermal
