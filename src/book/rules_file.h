// Reading of rule books, the house's own or those that come with the program.
#pragma once

#include "book/fields.h"
#include "book/rules.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace piewright::book {

/// What `rules` of house.toml says when the rule book is the house's own rules.toml.
inline constexpr std::string_view kOwnRules = "own";

RuleBook readRuleBook(Reading& reading, const Node& file);

/// A rule book that comes with the program: data/rules/NAME.toml.
struct ShippedRules {
    std::string_view name; ///< `england`
    std::string_view text;
};

/// All of them, by name.
[[nodiscard]] std::span<const ShippedRules> shippedRules();

} // namespace piewright::book
