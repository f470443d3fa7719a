#include "thermal/bake.h"

#include "thermal/bake_loss.h"
#include "thermal/shape.h"

#include <algorithm>

namespace piewright::thermal {

namespace {

constexpr double kPasteFoam = 0.03; // air that a mixer leaves in paste
constexpr double kEvery = 15;       // s
constexpr double kTolerance = 0.1;  // K; the time to be cooked moves by a second between this and 0.02

// Which of the body's materials.
constexpr std::uint8_t kBase = 0;
constexpr std::uint8_t kFilling = 1;
constexpr std::uint8_t kLid = 2;

std::vector<Boundary> sidesOf(const DeckHeat& heat, const Curve& deck) {
    Boundary floor;
    floor.contact = heat.contact;
    floor.body = deck;
    Boundary lid;
    lid.convection = heat.convection;
    lid.emissivity = heat.emissivity;
    lid.air = deck;
    lid.moist = true;
    lid.vapourPressure = heat.vapourPressure;
    Boundary wall;
    wall.convection = heat.wallShare * heat.convection;
    wall.emissivity = heat.wallShare * heat.emissivity;
    wall.air = deck;
    return {floor, lid, wall};
}

} // namespace

std::optional<double> cookedAt(const Curve& slowest, const BakeTarget& target) {
    std::vector<std::optional<double>> met;
    if (target.coreDegC) met.push_back(slowest.firstAtOrAbove(*target.coreDegC));
    if (target.lethality) met.push_back(timeToReach(*target.lethality, slowest, target.seconds));
    if (target.table) met.push_back(firstMeeting(*target.table, slowest));
    if (met.empty()) return std::nullopt;
    std::optional<double> last = met.front();
    for (const auto& one : met) {
        if (!one) return std::nullopt;
        last = std::max(last, one);
    }
    return last;
}

Result<Bake> bake(const Pie& pie, const DeckHeat& heat, const Curve& deck, const BakeTarget& target, double seconds) {
    Body body;
    const double middle = pie.depth - pie.basePaste - pie.lidPaste;
    auto grid = roundTin({pie.floorRadius,
                          pie.mouthRadius,
                          {{kBase, pie.basePaste, pie.startDegC},
                           {kFilling, middle, pie.startDegC},
                           {kLid, pie.lidPaste, pie.startDegC}},
                          Layer{kBase, pie.wallPaste, pie.startDegC}},
                         pie.cells);
    if (!grid) return grid.problems();
    body.grid = std::move(*grid);
    struct Part {
        const Food& food;
        double foam;
    };
    for (const Part& part : {Part{pie.base, kPasteFoam}, Part{pie.filling, 0}, Part{pie.lid, kPasteFoam}}) {
        auto material = Material::of(part.food, part.foam, Drying{});
        if (!material) return material.problems();
        body.materials.push_back(std::move(*material));
    }
    body.sides = sidesOf(heat, deck);
    Stretch run;
    run.seconds = seconds;
    run.every = kEvery;
    run.tolerance = kTolerance;
    auto history = conduct(body, run);
    if (!history) return history.problems();
    Bake made{std::move(*history), {}, 0, 0, 0};
    made.cooked = cookedAt(made.history.coldest, target);
    for (std::size_t c = 0; c < body.grid.cells(); ++c)
        made.mass += body.grid.volume[c] * body.materials[body.grid.material[c]].density();
    made.lost = made.history.boiled + made.history.evaporated;
    made.browning = browningGuide(made.history.surfaces[1]);
    return made;
}

} // namespace piewright::thermal
