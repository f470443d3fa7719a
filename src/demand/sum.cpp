#include "demand/sum.h"

namespace piewright::demand {

CountDistribution sumOf(const CountDistribution& a, const CountDistribution& b) {
    std::vector<double> chances(static_cast<std::size_t>(a.most()) + static_cast<std::size_t>(b.most()) + 1, 0.0);
    for (int i = 0; i <= a.most(); ++i)
        for (int j = 0; j <= b.most(); ++j)
            chances[static_cast<std::size_t>(i) + static_cast<std::size_t>(j)] += a.chance(i) * b.chance(j);
    return CountDistribution(chances);
}

} // namespace piewright::demand
