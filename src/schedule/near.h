// What a neighbourhood keeps of a schedule, stated to the learning kernel for the time being.
#pragma once

#include "schedule/compiled.h"

#include <cstddef>
#include <limits>
#include <utility>
#include <vector>

namespace piewright::schedule {

/// Which part of a schedule stays as it is.
struct Kept {
    std::vector<std::pair<std::size_t, std::size_t>> orders; ///< the first ends before the second starts
    std::vector<std::size_t> choices;                        ///< done the same way by the same people
};

class Near {
  public:
    explicit Near(Compiled& compiled);

    /// Literals under which what is kept is kept; they count until the next call. To be called at the root. Nothing
    /// else may state arcs once this was called.
    std::vector<learn::Literal> assume(const Schedule& schedule, const Kept& kept);

  private:
    Compiled& compiled_;
    /// Counts the calls: all that one states holds where this is no higher than then, and from the next on it is. So
    /// what was learnt with it is never wrong, and goes with the next clearance.
    learn::Variable call_;
    learn::Value calls_ = 0;
    std::size_t arcs_ = std::numeric_limits<std::size_t>::max(); ///< of the problem itself
};

} // namespace piewright::schedule
