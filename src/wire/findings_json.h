// Findings as JSON, and JSON as text: shared by every answer of this room.
#pragma once

#include "finding/finding.h"

#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace piewright::wire {

/// Two-space indent and a line end. Bytes that are no UTF-8 come out as U+FFFD rather than as an exception: findings
/// quote files as they were found.
[[nodiscard]] std::string dumped(const nlohmann::json& value);

[[nodiscard]] nlohmann::json findingsJson(const std::vector<Finding>& findings);

} // namespace piewright::wire
