// What the house buys or uses, and whom it buys from.
#pragma once

#include "units/civil.h"
#include "units/id.h"
#include "units/money.h"
#include "units/quantity.h"

#include <optional>
#include <string>
#include <vector>

namespace piewright::book {

enum class Measure { Mass, Volume, Count }; ///< how a stuff is bought and counted
enum class Storage { Ambient, Chilled, Frozen };

/// One way a stuff is sold to us.
struct Pack {
    SupplierId supplier;
    Mass mass;                    ///< what one pack weighs (volumes and counts are turned into weight when read)
    std::optional<Volume> volume; ///< as written, for a stuff measured by volume
    std::optional<int> count;     ///< as written, for a stuff measured by count
    Money price;                  ///< of one pack
    std::string name;             ///< `sack`, `box`, `tub`: what a hand calls it

    bool operator==(const Pack&) const = default;
};

struct Stuff {
    StuffId id;
    std::string name;
    Measure measure = Measure::Mass;
    std::optional<Density> density; ///< needed when measured by volume
    std::optional<Mass> each;       ///< weight of one piece, needed when counted
    std::vector<Pack> packs;        ///< none for what comes from the tap
    Storage storage = Storage::Ambient;
    std::optional<Seconds> life;        ///< unopened, from delivery
    std::optional<Seconds> lifeOpened;  ///< once opened
    std::vector<std::string> allergens; ///< as the label names them: `cereals containing gluten (wheat)`
    std::string composition;            ///< key into a composition table: `SR28:20081`; empty if none
    std::string species;                ///< of meat or fish: `beef`, `eel`; empty otherwise
    bool water = false;                 ///< drinking water: its temperature is ours to choose

    bool operator==(const Stuff&) const = default;
};

struct Supplier {
    SupplierId id;
    std::string name;
    std::vector<Weekday> delivers; ///< at least one
    ClockTime arrives;             ///< usual time of delivery
    Days lead{1};                  ///< order at least so many days before the delivery
    ClockTime orderBy;             ///< cut-off on that day
    std::optional<Money> leastOrder;
    std::string phone;

    bool operator==(const Supplier&) const = default;
};

} // namespace piewright::book
