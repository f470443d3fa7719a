// The rule book in force: limits of a jurisdiction as data, each with its source, and the house's own tightening.
#pragma once

#include "units/civil.h"
#include "units/id.h"
#include "units/quantity.h"

#include <optional>
#include <string>
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
    bool tightened = false; ///< the house set a stricter value than the rule book's
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
};

} // namespace piewright::book
