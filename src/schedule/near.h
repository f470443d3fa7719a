// What a neighbourhood keeps of a schedule, as assumptions of the learning kernel.
#pragma once

#include "schedule/compiled.h"

#include <cstddef>
#include <map>
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
    /// Literals that all hold exactly where what is kept is kept. Adds to `compiled` an order literal for each order
    /// that was never asked for before. To be called at the root.
    std::vector<learn::Literal> assumptions(Compiled& compiled, const Schedule& schedule, const Kept& kept);

  private:
    std::map<std::pair<std::size_t, std::size_t>, learn::Literal> orders_;
};

} // namespace piewright::schedule
