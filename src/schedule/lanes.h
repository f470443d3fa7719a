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

/// `model` must outlive them and is not hopeless. `broken`, where there is one, is a schedule to mend: of the right
/// shape, what cannot be taken from it marked kAbsent.
[[nodiscard]] Lanes lanesFor(const Model& model, std::uint64_t seed, const Schedule* broken);

} // namespace piewright::schedule
