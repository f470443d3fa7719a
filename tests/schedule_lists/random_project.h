// Small random problems of the kind that the list search takes.
#pragma once

#include "schedule/problem.h"

#include <cstdint>

namespace piewright::schedule {

struct Features {
    bool greatestLags = false; ///< and windows
    bool people = false;
    bool modes = false;
    int activities = 7;
};

/// The same for the same arguments on every machine. No faultsIn.
[[nodiscard]] Problem randomProject(std::uint64_t seed, const Features& features);

} // namespace piewright::schedule
