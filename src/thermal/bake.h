// The baking of a round filled pie in its tin: core, time to be cooked, weight lost, a guide to colour.
//
// CAUTION: a plan, not a proof. A prediction never replaces a probe reading in the slowest point of the pies that stood
// worst, and never makes food safe: follow the local food authority, the house's own food-safety plan and a competent
// person. Ovens, trays, tins and steam burn. No published core curve of a filled pie was found to check this against.
#pragma once

#include "finding/result.h"
#include "thermal/conduction.h"
#include "thermal/hold_table.h"
#include "thermal/lethality.h"

#include <optional>

namespace piewright::thermal {

struct Pie {
    double floorRadius = 0.045; ///< m, inside the tin
    double mouthRadius = 0.055;
    double depth = 0.035; ///< m, pastes and filling
    double basePaste = 0.003;
    double wallPaste = 0.003;
    double lidPaste = 0.003;
    double startDegC = 5;
    Food base;
    Food filling;
    Food lid;
    int cells = 300; ///< the time to be cooked moves by a second from 300 to 2,000
};

/// How a deck gives its heat; ours to begin with, to be fitted to the house's probe curves.
struct DeckHeat {
    double contact = 60;       ///< W/(m2 K), stone to paste through tray, tin and the gaps between them
    double convection = 8;     ///< W/(m2 K), of the air over the lid; a fan oven 20 to 40
    double emissivity = 0.9;   ///< of the lid
    double wallShare = 0.5;    ///< how much of convection and radiation the tin's wall gets among its neighbours
    double vapourPressure = 8; ///< kPa in the deck
};

/// Cooked is when the slowest point has met all that is asked for here.
struct BakeTarget {
    std::optional<double> coreDegC = 75;
    std::optional<Lethality> lethality; ///< with `seconds` at its reference
    double seconds = 0;
    const HoldTable* table = nullptr; ///< as a rule book states it
};

/// The time at which the curve meets the target; nothing if it never does or nothing is asked for.
[[nodiscard]] std::optional<double> cookedAt(const Curve& slowest, const BakeTarget& target);

struct Bake {
    History history;
    std::optional<double> cooked; ///< s
    double mass = 0;              ///< kg that went in
    double lost = 0;              ///< kg that left as steam in the whole time
    double browning = 0;          ///< browningGuide of the lid
};

/// One pie for `seconds` in a deck whose stone and walls run as `deck`. Problems as conduct and the shapes.
Result<Bake> bake(const Pie& pie, const DeckHeat& heat, const Curve& deck, const BakeTarget& target, double seconds);

} // namespace piewright::thermal
