// What toml++ 3.3 relies on in a text without checking it: broken, it runs into assertions or undefined behaviour.
#pragma once

#include "finding/finding.h"

#include <optional>
#include <string_view>

namespace piewright::sales {

/// The first thing that keeps a text from being the plain shape of TOML (keys, values, lists and tables in their
/// places; letters beyond ASCII only inside quotes and comments; nothing nested deeper than 16 or dotted more than 200
/// times on a line). It is no parser: what strings, numbers and names mean is left to the library. The place has line
/// and column but no file. O(text).
[[nodiscard]] std::optional<Finding> unfitForToml(std::string_view text);

} // namespace piewright::sales
