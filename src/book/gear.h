// The machines, vessels and spaces of the bakehouse.
#pragma once

#include "units/civil.h"
#include "units/id.h"
#include "units/quantity.h"

#include <optional>
#include <string>
#include <vector>

namespace piewright::book {

enum class GearKind {
    Mixer,
    Divider,
    Sheeter,
    Bench,
    Oven,
    Kettle,
    Pan,
    Peeler,
    Masher,
    Chiller,
    HotHold,
    Rack,
    Scale
};

/// A kind of gear of which the house has `count` alike. Capacity is in the gear's own measure:
/// a weight for a mixer, kettle, pan, peeler, masher, chiller and hot hold; trays for an oven's deck and a rack;
/// places for a bench.
struct Gear {
    GearId id;
    std::string name;
    GearKind kind = GearKind::Bench;
    int count = 1;             ///< alike; decks are counted apart
    std::optional<Mass> least; ///< what it can work with; a divider: the head
    std::optional<Mass> most;
    int pieces = 0;             ///< divider: equal pieces pressed from one head
    int decks = 0;              ///< oven
    int trays = 0;              ///< oven: trays on one deck; rack: trays in all; chiller: trays in all
    int places = 0;             ///< bench: people who can work at it
    Seconds heatUp{0};          ///< oven: from cold to working temperature
    Seconds change{0};          ///< oven: from one family's temperature to another's
    Seconds reload{0};          ///< oven: door open and recovery between two loads of one family
    Seconds setup{0};           ///< before first use in the day
    Seconds clean{0};           ///< after last use in the day, by a hand
    std::optional<Power> power; ///< drawn while in use

    bool operator==(const Gear&) const = default;
};

} // namespace piewright::book
