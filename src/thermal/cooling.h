// Cooling and holding: trays, pans and jars in air, cold room, chiller or ice bath; in a hot cupboard or bain-marie.
//
// CAUTION: rapid cooling of large pans, hot holding, jellied and low-acid food need particular care. All here are
// estimates to plan with: they never replace a probe reading in the thickest part and never make food safe. Follow the
// local food authority, the house's own food-safety plan and a competent person. Nothing here shortens what conduction
// takes: a deep pan does not cool in the time a rule states because the rule states it.
#pragma once

#include "finding/result.h"
#include "thermal/conduction.h"

#include <optional>
#include <string_view>
#include <vector>

namespace piewright::thermal {

/// What the general law of the EU and the UK says where it gives no number (Regulation (EC) 852/2004, Annex II, chapter
/// IX, point 6, as quoted in secondary pages): shown beside every cooling.
inline constexpr std::string_view kCoolingDuty =
    "as quickly as possible after heat processing to a temperature that is no risk to health";

/// Where a vessel stands. Coefficients are ours to begin with, from the usual handbook ranges; chillers differ by a
/// factor of two with load and placing, so fit them to the house's own probe curves.
struct Place {
    double airDegC = 20;
    double convection = 6;       ///< W/(m2 K) on what air meets
    double emissivity = 0.9;     ///< to surroundings at the air's temperature
    double vapourPressure = 1.0; ///< kPa
    double bathDegC = 20;        ///< water or a hot plate round floor and walls
    double bathContact = 0;      ///< W/(m2 K) through tin and water film; 0 where there is only air
    bool bathWalls = true;       ///< the bath also meets the walls

    static Place roomAir(double degC = 20);
    static Place coldRoom(double degC = 3);
    static Place blastChiller(double degC = -5); ///< 40 W/(m2 K) with radiation
    static Place iceBath(double airDegC = 20);   ///< ice and water moved now and then
    static Place hotCupboard(double degC);
    static Place bainMarie(double waterDegC, double airDegC = 20);
};

/// What the food fills. `length` and `width` for a tray; `radius` for a round pan or jar, 0 for a tray.
struct Vessel {
    double length = 0.53; ///< m
    double width = 0.325;
    double radius = 0;
    double depth = 0.05;      ///< of the food
    bool evaporates = false;  ///< open, with a moist surface and no skin: quicker to cool, worse to hold
    bool flatShelf = false;   ///< stands on a tray or board: nothing is cooled from below
    bool stirred = false;     ///< often enough to be of one temperature
    double tinResistance = 0; ///< m2 K/W of lid, glass, plastic or cardboard, on every side
};

/// How the whole of it runs on. Trays shallower than a quarter of their width are solved as a layer, which leaves out
/// what the walls take: a little slow. Problems as conduct.
Result<History> standing(const Vessel& vessel, const Material& food, double startDegC, const Place& place,
                         double seconds);

/// A stretch that a rule limits: from the time the hottest point is down to `from` until it stays at or below `to`.
struct CoolingStage {
    double from = 63;
    double to = 8;
    double within = 5400; ///< s
};

struct StageTime {
    std::optional<double> seconds; ///< nothing: not in the time tried
    double least = 0; ///< s that no place could better: both faces held at the place's coldest; 0 where it is stirred
    bool inTime = false;
};

struct Cooled {
    History history;
    std::vector<StageTime> stages; ///< in the order of the rule's
    bool inTime = false;           ///< every stage, by the estimate
};

/// Tries for four times the rule's longest stage. Problems as conduct; a stage that does not fall.
Result<Cooled> cool(const Vessel& vessel, const Material& food, double startDegC, const Place& place,
                    const std::vector<CoolingStage>& rule);

/// The greatest depth in m, to the millimetre below, that makes every stage by the estimate; nothing where even 5 mm
/// does not. At most 1 m.
Result<std::optional<double>> greatestDepth(Vessel vessel, const Material& food, double startDegC, const Place& place,
                                            const std::vector<CoolingStage>& rule);

/// Seconds that the coldest point stays at or above `limit`; nothing where it still is at the end of `seconds`.
Result<std::optional<double>> heldAbove(const Vessel& vessel, const Material& food, double startDegC,
                                        const Place& place, double limit, double seconds);

/// Seconds for the middle of a layer of `depth` to come from `start` to `to` with both faces held at `surface`: what
/// conduction alone takes. Constant properties, the quickest of those on the way. Exact series.
[[nodiscard]] double conductionTakes(const Material& food, double depth, double start, double surface, double to);

/// degC of what is stirred: rate = h area / (mass x heat capacity), 1/s.
[[nodiscard]] double stirredTemperature(double start, double surroundings, double rate, double seconds);

} // namespace piewright::thermal
