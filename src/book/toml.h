// TOML text to nodes: the only door to the TOML library.
#pragma once

#include "book/node.h"
#include "book/report.h"

#include <optional>
#include <string>

namespace piewright::book {

/// The document's top table; nothing, and a finding, when the text is not TOML or is too big or too deep to be a book.
/// Syntax errors: the first only. Takes TOML 1.0; comments are dropped.
std::optional<Node> parseToml(const std::string& text, const std::string& file, Report& report);

} // namespace piewright::book
