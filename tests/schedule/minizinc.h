// A problem stated once more, as a MiniZinc model, and solved by Gecode in a child process: an outside opinion.
// Test only; needs the programs `minizinc` and `fzn-gecode`.
#pragma once

#include "schedule/problem.h"

#include <optional>
#include <string>

namespace piewright::schedule {

[[nodiscard]] bool isMinizincThere();

/// Every limit and every cost of the problem as constraints and the objective, but for the costs of setups.
/// Cumulatives as the global constraint where that means the same (nothing reserved), else as sums at the ticks where
/// something starts; pauses, presence and curves as tables over every tick.
[[nodiscard]] std::string asMinizinc(const Problem& problem);

struct MinizincAnswer {
    bool finished = false;     ///< false: gave up after so many failures
    std::optional<Cost> value; ///< least; none when there is no schedule
};

[[nodiscard]] MinizincAnswer runMinizinc(const std::string& model);

} // namespace piewright::schedule
