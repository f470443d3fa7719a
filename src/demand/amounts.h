// How many to make, from what people may want and what one more or one fewer is worth.
#pragma once

#include "demand/forecast.h"

#include <optional>

namespace piewright::demand {

/// Money per piece, all in the same unit.
struct Worth {
    double price = 0;    ///< earned for one sold
    double cost = 0;     ///< spent on one made
    double leftover = 0; ///< what one unsold still brings (may be negative)
};

/// Critical fractile (price - cost) / (price - leftover); in [0, 1]. 0 when a piece sells at a loss.
/// Source: Arrow, Harris, Marschak 1951; any operations textbook.
[[nodiscard]] double criticalFractile(const Worth& worth);

struct Amount {
    int pieces = 0;
    double fractile = 0;
    double expectedSold = 0;
    double expectedLeft = 0;
    double expectedMissed = 0; ///< people turned away
};

/// Pieces for one day by the fractile, within the house's own least and most.
[[nodiscard]] Amount amountFor(const CountDistribution& daily, const Worth& worth, std::optional<int> least,
                               std::optional<int> most);

/// One bake, boil or making: so many pieces ready at `ready`, meant to sell until `until`.
struct Wave {
    ClockTime ready;
    ClockTime until;
    int pieces = 0;
};

struct WaveTerms {
    std::vector<ClockSpan> open;        ///< selling hours, in order, not empty
    Minutes hold{0};                    ///< longest from ready to sold; positive
    std::optional<Minutes> everyAtMost; ///< the house's own wish for freshness
    std::optional<int> mostPieces;      ///< that one wave can be (deck, pan); positive
    Minutes step{15};                   ///< ready times are multiples of this
};

/// Splits a day's pieces into waves timed to the profile: the fewest waves such that no piece is held longer than
/// `hold`, no wave exceeds its most, and each wave covers the likely demand until the next is ready. The first is ready
/// at opening. Pieces sum to `pieces`; a wave of no pieces is left out. Assumes pieces >= 0.
[[nodiscard]] std::vector<Wave> waves(int pieces, const Profile& profile, const WaveTerms& terms);

} // namespace piewright::demand
