// One direction's part of an implicit step, solved line by line. Used by the conduction solver alone.
#pragma once

#include "thermal/grid.h"

#include <vector>

namespace piewright::thermal {

using Cells = std::vector<double>; ///< a number for each cell

/// V (I - weight A) of one direction, as forward and backward substitution over all its lines. O(cells).
class Factor {
  public:
    Factor(const Grid& grid, int axis);

    /// `join` W/K across the face to the next cell, `leaves` W/K to the outside, `perHeat` K m3/J.
    void set(double weight, const Cells& volume, const Cells& join, const Cells& leaves, const Cells& perHeat);
    /// Solves for `out`; `in` is in units of volume x heat. They must not be the same.
    void solve(const Cells& in, Cells& out);

  private:
    template <class Do> void eachPlace(Do perform) const;
    void acrossLines(const Cells& in, Cells& out);
    void alongPlanes(const Cells& in, Cells& out) const;

    std::size_t n_;
    std::size_t stride_;
    std::size_t cells_;
    Cells lower_;
    Cells inverse_;
    Cells upper_; // times the inverse
    Cells line_;
};

} // namespace piewright::thermal
