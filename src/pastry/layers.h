// What folding does to a laminated paste.
#pragma once

#include <cstdint>
#include <optional>

namespace piewright::pastry {

/// Sheets in a paste of `start` sheets after it is folded in `into` (three, four) `folds` times: start x into^folds.
/// Counts every sheet; where paste meets paste two of them merge, so fewer can be told apart. Nothing when the number
/// is past counting or an argument is below 1 (`folds` below 0).
[[nodiscard]] std::optional<std::int64_t> layersAfter(int folds, std::int64_t start, int into = 3);

} // namespace piewright::pastry
