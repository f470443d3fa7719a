// JSON text to a document in memory, with limits, before anything is made of it.
#pragma once

#include "finding/result.h"

#include <nlohmann/json.hpp>

#include <cstddef>
#include <string>
#include <string_view>

namespace piewright::wire {

constexpr std::size_t kMostBytes = std::size_t{16} << 20U;
constexpr std::size_t kMostLevels = 32;
constexpr std::size_t kMostValues = 1'000'000;

/// Refuses (Fault::Input): not JSON (with line and column), past the limits above, a key that stands twice in one
/// object.
Result<nlohmann::json> parseDocument(std::string_view text, const std::string& file);

} // namespace piewright::wire
