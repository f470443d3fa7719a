// What the house makes: its formulas.
#pragma once

#include "units/civil.h"
#include "units/id.h"
#include "units/quantity.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace piewright::book {

enum class Basis {
    Weight, ///< lines are weights of one written batch
    Flour   ///< lines are percentages of the flour; the flour lines sum to 100 %
};

/// What a formula is for; it decides which arithmetic applies to it.
enum class Makes { Paste, Filling, Mash, Sauce, Stew, Jelly, Glaze, Other };

/// When a formula is made for the day it is eaten.
enum class Made {
    SameDay,   ///< on the day
    DayBefore, ///< on the last working day before, and kept chilled
    Delivery   ///< on the days its fish or other perishable comes in, for the days until the next
};

using StuffOrFormula = std::variant<StuffId, FormulaId>;

/// One line: something that goes into the vessel.
struct Line {
    StuffOrFormula of;
    Mass weight;           ///< basis Weight: in one written batch. Zero for basis Flour.
    BakersPercent percent; ///< basis Flour: of the flour. Zero for basis Weight.
    bool flour = false;    ///< basis Flour: counts towards the 100 %
    /// Lost between what is bought and what goes in: peel, bone, stalk. Bought = line / (1 - loss).
    Share prepLoss;
    std::string prepName; ///< `peeled`, `picked from the stalk`; empty where there is no preparation

    bool operator==(const Line&) const = default;
};

/// Something lost on the way from what goes in to what comes out, in the order it happens.
struct Loss {
    std::string at;            ///< `bowl`, `cooking`, `trim`
    Share share;               ///< of what was there before
    std::optional<Mass> fixed; ///< or a fixed weight per batch, whatever its size (what clings to the bowl)

    bool operator==(const Loss&) const = default;
};

/// For a paste whose temperature matters.
struct MixTemperature {
    Celsius target;
    Kelvin friction;      ///< what the mixer's work adds
    bool countFat = true; ///< the fat's temperature is one of the terms of the rule

    bool operator==(const MixTemperature&) const = default;
};

struct Formula {
    FormulaId id;
    std::string name;
    Makes makes = Makes::Other;
    Basis basis = Basis::Weight;
    std::vector<Line> lines;
    std::vector<Loss> losses;
    RouteId route;                  ///< the steps of one batch
    std::optional<Density> density; ///< finished; needed for a paste and for what is portioned by volume
    std::optional<MixTemperature> temperature;
    Made made = Made::SameDay;
    Seconds rest{0};                 ///< least time between finished and used
    std::optional<Seconds> keeps;    ///< longest time between finished and used; none: no limit within the day
    std::vector<GearId> vessels;     ///< what it may be made in, best first; the vessel's least and most bound a batch
    std::optional<Share> reworkMost; ///< paste: greatest share of trim or surplus that may go back into it
    std::optional<FormulaId> reworkFrom; ///< paste: whose surplus may be re-worked into it besides its own
    std::vector<std::string> method;     ///< steps for people, in words
    /// Paste: springback right after sheeting, and the time constant with which it relaxes (exponential).
    Share springback;
    Seconds relaxation{0};

    bool operator==(const Formula&) const = default;
};

} // namespace piewright::book
