#include "thermal/grid.h"

#include <algorithm>
#include <cmath>

namespace piewright::thermal {

namespace {

using Weights = std::vector<std::pair<std::size_t, double>>;

Weights along(const Axis& axis, double x) {
    const std::size_t n = axis.centres.size();
    if (n == 1) return {{0, 1.0}};
    const auto edge = std::upper_bound(axis.edges.begin() + 1, axis.edges.end() - 1, x);
    const auto in = static_cast<std::size_t>(edge - axis.edges.begin()) - 1; // the cell that holds x
    const auto& c = axis.centres;
    if (axis.mirrored && in == 0 && axis.layer[1] == axis.layer[0]) {
        const double w = (c[1] * c[1] - x * x) / (c[1] * c[1] - c[0] * c[0]); // a + b x^2
        return {{0, w}, {1, 1 - w}};
    }
    std::size_t first = in;
    std::size_t last = in;
    while (first > 0 && axis.layer[first - 1] == axis.layer[in] && in - first < 2) --first;
    while (last + 1 < n && axis.layer[last + 1] == axis.layer[in] && last - in < 2) ++last;
    while (last - first > 2) { // three that hold it in their middle
        if (std::abs(c[last] - x) > std::abs(c[first] - x))
            --last;
        else
            ++first;
    }
    Weights weights;
    for (std::size_t i = first; i <= last; ++i) {
        double w = 1;
        for (std::size_t j = first; j <= last; ++j)
            if (j != i) w *= (x - c[j]) / (c[i] - c[j]);
        weights.emplace_back(i, w);
    }
    return weights;
}

} // namespace

Probe Grid::probe(const std::array<double, 3>& at) const {
    Probe made;
    const Weights w0 = along(axes[0], at[0]);
    const Weights w1 = along(axes[1], at[1]);
    const Weights w2 = along(axes[2], at[2]);
    for (const auto& [i2, a2] : w2)
        for (const auto& [i1, a1] : w1)
            for (const auto& [i0, a0] : w0)
                made.weights.emplace_back(i0 + i1 * stride(1) + i2 * stride(2), a0 * a1 * a2);
    return made;
}

Probe Grid::mean() const {
    double sum = 0;
    for (const double v : volume) sum += v;
    Probe made;
    for (std::size_t i = 0; i < volume.size(); ++i) made.weights.emplace_back(i, volume[i] / sum);
    return made;
}

} // namespace piewright::thermal
