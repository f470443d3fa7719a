// How goods go together: past days as a joint sample of ranks.
#pragma once

#include "demand/censored.h"

#include <cstddef>
#include <random>
#include <span>
#include <vector>

namespace piewright::demand {

using Generator = std::mt19937_64;

/// Uniform in (0, 1), from one draw: the standard library's distributions differ between machines.
[[nodiscard]] double uniform(Generator& generator);

/// One good's rank on each day of a common list. Drawing a day by its weight and then a rank on it gives a rank that is
/// uniform on (0, 1), and keeps together what was high or low on the same day. A sold-out day's rank lies to the right
/// of what it sold, by redistribution to the right (see censored.h). Days of equal value share their ranks.
class Ranks {
  public:
    /// One entry for each day of the common list; those of weight 0 are days on which nothing is known of the good.
    explicit Ranks(std::span<const Seen> days);

    /// A rank on that day, in (0, 1); anywhere when nothing is known of it.
    [[nodiscard]] double draw(std::size_t day, Generator& generator) const;

    [[nodiscard]] bool known() const { return !order_.empty(); }

  private:
    struct Place {
        double from = 0; // of the ranks
        double to = 1;
        bool atLeast = false;
    };
    std::vector<std::size_t> order_;   // known days, by value
    std::vector<std::size_t> placeOf_; // of each day of the list, in order_; its size where unknown
    std::vector<Place> places_;        // in order
    std::vector<double> weightTo_;     // running sum of weights in order
};

} // namespace piewright::demand
