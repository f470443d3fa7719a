// What the house sells, and the tins it is built in.
#pragma once

#include "units/civil.h"
#include "units/id.h"
#include "units/money.h"
#include "units/quantity.h"

#include <optional>
#include <string>
#include <vector>

namespace piewright::book {

enum class TinShape { Frustum, Cylinder, Oval, Rectangle };

/// Inside measures. Round tins use mouth and floor; ovals and rectangles use a length and a width of each.
struct Tin {
    TinId id;
    std::string name;
    TinShape shape = TinShape::Frustum;
    Length mouthLength; ///< diameter of a round mouth; longer way of an oval or rectangle
    Length mouthWidth;  ///< equal to the length for a round tin
    Length floorLength; ///< equal to the mouth's for straight walls
    Length floorWidth;
    Length depth;    ///< upright, not along the slope
    Length corner;   ///< rectangle: corner radius at the mouth; the floor's is the same
    Length overhang; ///< paste left past the mouth's edge to seal to, base and lid alike
    int perTray = 1; ///< tins on one tray
    int owned = 0;   ///< tins in the house; 0: not counted

    bool operator==(const Tin&) const = default;
};

/// Base, lid: a sheet of paste of a finished thickness.
struct Sheet {
    FormulaId paste;
    Length thickness;
    Share trim; ///< cut off at the rim or lost in the blank's corners, of the piece's weight

    bool operator==(const Sheet&) const = default;
};

/// Something put in or on by weight: filling, glaze.
struct Deposit {
    FormulaId formula;
    Mass weight;
    std::optional<Volume> volume = {}; ///< as written, where it is portioned by volume (turned into weight when read)

    bool operator==(const Deposit&) const = default;
};

enum class Served { Hot, Cold };

struct Good {
    GoodId id;
    std::string name;
    FamilyId family; ///< goods that are alike to the customer and to the oven
    Money price;
    std::string taxClass;  ///< a label the house sets
    std::string labelName; ///< the name on the label; the good's name if empty

    // A pie has a tin, a base or a lid or both, and a filling; a portion has neither tin nor paste.
    std::optional<TinId> tin;
    std::optional<Sheet> base;
    std::optional<Sheet> lid;
    std::vector<Deposit> deposits; ///< a portion has exactly one
    Share bakeLoss;                ///< weight that leaves as steam
    std::optional<Celsius> ovenAt; ///< deck temperature, for what is baked
    std::optional<Seconds> bake;   ///< time in the deck at that temperature

    RouteId route; ///< the steps of one wave of it
    Served served = Served::Hot;
    Seconds hold{0};             ///< longest time between ready and sold with its quality
    std::vector<Weekday> soldOn; ///< empty: every open day
    Money leftover;              ///< what an unsold one is still worth at the end of its life (may be negative)
    std::optional<int> least;    ///< the house's own least and most for a day
    std::optional<int> most;
    std::optional<Seconds> everyAtMost; ///< the house wants it fresh at least this often while open

    bool operator==(const Good&) const = default;
};

} // namespace piewright::book
