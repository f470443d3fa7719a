// Sold-out days: what was sold is only the least that people wanted.
#pragma once

#include <span>
#include <vector>

namespace piewright::demand {

/// One day: so much sold, of so much weight; `atLeast` when it sold out.
struct Seen {
    double value = 0;
    double weight = 0; ///< positive
    bool atLeast = false;
};

struct Redistributed {
    std::vector<double> mass; ///< for each day in the order given; 0 for those at least; with `beyond` sums to 1
    double beyond = 0;        ///< of wanting at least `beyondValue`, more than any day showed
    double beyondValue = 0;
};

/// The weighted Kaplan-Meier distribution by redistribution to the right: each sold-out day hands its weight to the
/// days of larger value in proportion to theirs (at equal values, the exact ones come first). What has nothing to its
/// right stays as `beyond`. `seen` is not empty. O(n log n). Source: B. Efron, "The two sample problem with censored
/// data", Fifth Berkeley Symposium, 1967; E. L. Kaplan, P. Meier, JASA 53 (1958).
[[nodiscard]] Redistributed redistributeToRight(std::span<const Seen> seen);

} // namespace piewright::demand
