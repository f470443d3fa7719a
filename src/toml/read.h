// TOML text to nodes: the only door to the TOML library.
#pragma once

#include "finding/result.h"
#include "toml/node.h"

#include <string>

namespace piewright::toml {

/// The document's top table. Takes TOML 1.0 in UTF-8, with or without a byte order mark; comments are dropped. `file`
/// is named in the findings. Problem: not TOML (the first place only), not UTF-8, or too big or too deep for what a
/// person writes: more than 50,000 lines, 200 points on a line, 4,096 entries of a table or list, 200,000 values, eight
/// levels.
Result<Node> read(const std::string& text, const std::string& file);

} // namespace piewright::toml
