// Published instance formats of scheduling, read into problems. For the bench only.
#pragma once

#include "finding/result.h"
#include "schedule/problem.h"

#include <string>

namespace piewright::bench {

enum class Format { ProjectSm, ProjectMaxSch, MultiSkillDzn, FlexibleShop };

struct Instance {
    Format format{};
    schedule::Problem problem; ///< makespan is to be made least; the horizon is wide enough for some best schedule
};

/// By content, not by name.
[[nodiscard]] Result<Instance> readInstance(const std::string& path);

} // namespace piewright::bench
