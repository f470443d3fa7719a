// What is weighed out for one good or formula, as text.
#pragma once

#include "day/weigh_out.h"

#include <string>

namespace piewright::print {

/// For a terminal, at most `width` columns: pieces and heads, cards, what is bought.
[[nodiscard]] std::string asText(const day::WeighedOut& weighed, int width = 100);

} // namespace piewright::print
