// The rule book in force: limits of a jurisdiction as data, each with its source, and the house's own tightening.
#pragma once

#include "units/civil.h"
#include "units/id.h"
#include "units/quantity.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace piewright::book {

/// How far a rule's number can be trusted. Only `Seen` and `Confirmed` are shown without a warning.
enum class Confidence {
    Seen,      ///< read in the law or in a page of the issuing body
    Secondary, ///< read in a page that quotes it
    Memory,    ///< not read: the house must check it
    Confirmed  ///< the house checked it and says so
};

enum class Bound { Least, Most };

using RuleValue = std::variant<Celsius, Seconds>;

struct Rule {
    RuleId id; ///< `hot-hold-temperature`, `break-after`, …: see docs/formats/book.md
    std::string what;
    Bound bound = Bound::Least;
    RuleValue value;
    std::string source;
    Confidence confidence = Confidence::Memory;
    bool tightened = false; ///< the house set a stricter value than the rule book's, or one where that has none
    std::optional<RuleValue> before; ///< tightened: the rule book's own value, if it has one
    std::string confirmed;           ///< what the house says it checked, and where; empty where it says nothing

    bool operator==(const Rule&) const = default;
};

struct RuleBook {
    std::string name;  ///< `England`
    std::string place; ///< to whom it applies
    std::vector<Rule> rules;

    [[nodiscard]] const Rule* find(const RuleId& id) const {
        for (const Rule& rule : rules)
            if (rule.id == id) return &rule;
        return nullptr;
    }

    bool operator==(const RuleBook&) const = default;
};

/// A rule the program knows what to do with. Names stand in files: never reword.
struct KnownRule {
    std::string_view id;
    bool temperature; ///< else a duration
    Bound bound;
    std::string_view what; ///< in general words
};

/// Every rule that a rule book may state.
[[nodiscard]] std::span<const KnownRule> knownRules();
[[nodiscard]] const KnownRule* knownRule(const RuleId& id);

/// Whether `value` is stricter than `than`; both are of the rule's kind.
[[nodiscard]] bool stricter(Bound bound, const RuleValue& value, const RuleValue& than);

} // namespace piewright::book
