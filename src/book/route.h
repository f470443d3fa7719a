// How things get made: the steps of each formula and good.
#pragma once

#include "units/civil.h"
#include "units/id.h"
#include "units/quantity.h"

#include <optional>
#include <string>
#include <vector>

namespace piewright::book {

/// How much of a step a hand must stay for.
enum class Attended {
    All,  ///< the whole of it
    Ends, ///< at its beginning and its end: a pan put on, a pan taken off
    None
};

/// What a step's variable time and its work are counted in. Pieces are of the good; kilograms of what the step works
/// on.
enum class PerUnit { Batch, Head, Piece, Tray, Kilogram };

/// Usual cautions, printed with the step.
enum class Caution { Burns, Steam, HotFat, Machine, Knife, Lifting, Allergen, RawMeat, Cooling, Holding };

/// What a good's step uses up; it can't begin before that is made and rested.
enum class Takes { Base, Lid, Filling, Glaze, Portion };

struct Step {
    StepId id;
    std::string what;             ///< for people: `Line the tins`
    std::optional<SkillId> skill; ///< none: no hand at all
    int hands = 1;                ///< together, for as long as they are needed
    std::vector<GearId> gear;     ///< one of each of these is taken for the whole step
    bool vessel = false;          ///< formulas: the batch's own vessel is taken for the whole step
    bool bake = false; ///< goods: the step in an oven's deck; its time is the good's, its lots are deck loads
    Seconds fixed{0};
    Seconds each{0}; ///< for each `per`, at 100 % pace, shared by the hands
    PerUnit per = PerUnit::Batch;
    Attended attended = Attended::All;
    Seconds start{0};                 ///< attended at its ends: how long a hand is needed at the beginning
    Seconds end{0};                   ///< and at the end
    Seconds leastAfter{0};            ///< between the end of the step before and this one's start
    std::optional<Seconds> mostAfter; ///< likewise; none: no limit
    std::vector<Takes> takes;         ///< goods only
    std::vector<Caution> cautions;

    bool operator==(const Step&) const = default;
};

/// The steps of one batch of a formula, or of one wave of a good, in order. Formulas and goods that are made alike
/// share a route.
struct Route {
    RouteId id;
    std::string name;
    std::vector<Step> steps;

    bool operator==(const Route&) const = default;
};

} // namespace piewright::book
