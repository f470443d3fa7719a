// The limits of a problem that have names for people, each of which can be given up by itself.
#pragma once

#include "schedule/problem.h"

#include <string>
#include <vector>

namespace piewright::schedule {

/// A limit in the user's words. Rules with the same reason are one limit.
struct NamedLimit {
    enum class Kind {
        Lag,
        Stay,
        Implication,
        Presence,
        Reserved,
        Away,
        Setup,
        Team,
        Skill,
        Capacity,
        Least, ///< of a reservoir
        Most,
        Release,
        Due,
        Horizon
    };
    Kind kind{};
    std::string words;
    std::vector<std::size_t>
        which; ///< indices of lags, stays, implications, activities, resources, skills or workers, by kind
};

/// All of them, in the order of their kinds. What has no name or reason is no limit that people can be told of.
[[nodiscard]] std::vector<NamedLimit> namedLimits(const Problem& problem);

/// The problem without the limits given up. It has no faults either, but that its costs may come to more.
[[nodiscard]] Problem without(const Problem& problem, const std::vector<NamedLimit>& givenUp);

} // namespace piewright::schedule
