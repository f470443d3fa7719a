// Which searches take part, by what the problem asks for.
#pragma once

#include "schedule/portfolio.h"
#include "schedule/seeker.h"

namespace piewright::schedule {

struct Lanes {
    Lane first;                     ///< that finds and improves
    Lane second;                    ///< that proves
    const Seeker* seeker = nullptr; ///< of the first lane
};

/// `model` must outlive them and is not hopeless.
[[nodiscard]] Lanes lanesFor(const Model& model, std::uint64_t seed);

} // namespace piewright::schedule
