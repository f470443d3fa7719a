// The one place where cautions get their words. They remind; they do not train anybody and they are no law.
#pragma once

#include "book/route.h"
#include "day/plan.h"

#include <string>
#include <vector>

namespace piewright::print {

struct CautionText {
    const char* word;     ///< beside a task: `Burns`
    const char* sentence; ///< in full, once on each sheet
};

[[nodiscard]] const CautionText& textOf(book::Caution caution);

/// `Burns, steam`; empty for none.
[[nodiscard]] std::string wordsOf(const std::vector<book::Caution>& cautions);

/// Every caution once, in the enum's order.
[[nodiscard]] std::vector<book::Caution> distinct(std::vector<book::Caution> cautions);

/// For the foot of every page.
constexpr const char* kFootnote = "Plan made from book and sales; probe the food.";

/// For the oven sheet: what no plan can know.
constexpr const char* kProbe = "Probe the core of every load. A plan does not make food safe.";
constexpr const char* kTimesAreGuesses =
    "Times and temperatures here are estimates. Cook, hold and cool to the rules of the local food authority and the "
    "house's own food-safety plan; a load that misses them is for the responsible person to decide on.";
constexpr const char* kCautionsDefer =
    "These are the usual cautions, not training and not law: the house's own risk assessment, the maker's instructions "
    "and the local rules come first, and work with machines, heat or knives is for people who have been shown how.";
constexpr const char* kCheckAllergens =
    "Allergens as the book has them: check the labels of what is really used today; the responsible person answers.";

} // namespace piewright::print
