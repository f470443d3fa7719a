// What toml++ 3.3 relies on in a text without checking it: broken, it runs into assertions or undefined behaviour.
#pragma once

#include "finding/finding.h"

#include <optional>
#include <string_view>

namespace piewright::sales {

/// The first thing, outside quotes and comments, that the library must not be given: a letter beyond ASCII (behind a
/// backslash inside quotes too), a control character, a table's name that begins as none may, or more than 200 points
/// on one line (dotted keys nest without a limit there). The place has line and column but no file. Nearly all of these
/// are no TOML 1.0 either.
[[nodiscard]] std::optional<Finding> unfitForToml(std::string_view text);

} // namespace piewright::sales
