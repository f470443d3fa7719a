#include "pastry/layers.h"

#include <limits>

namespace piewright::pastry {

std::optional<std::int64_t> layersAfter(int folds, std::int64_t start, int into) {
    if (folds < 0 || start < 1 || into < 1) return std::nullopt;
    if (into == 1) return start;
    std::int64_t layers = start;
    for (int fold = 0; fold < folds; ++fold) {
        if (layers > std::numeric_limits<std::int64_t>::max() / into) return std::nullopt;
        layers *= into;
    }
    return layers;
}

} // namespace piewright::pastry
