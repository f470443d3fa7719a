#include "thermal/cooling.h"

#include "thermal/range.h"

#include "thermal/series.h"
#include "thermal/shape.h"

#include <algorithm>
#include <cmath>

namespace piewright::thermal {

namespace {

constexpr int kLayerCells = 40;
constexpr int kRoundCells = 900;
constexpr int kBlockCells = 4000;

/// With what is in the way: 1 / (1/h + r).
double through(double coefficient, double resistance) {
    return coefficient > 0 ? 1 / (1 / coefficient + resistance) : 0;
}

Boundary air(const Vessel& vessel, const Place& place) {
    Boundary side;
    side.convection = through(place.convection, vessel.tinResistance);
    side.emissivity = vessel.tinResistance > 0 ? 0 : place.emissivity; // a lid's own radiation is in its convection
    if (vessel.tinResistance > 0 && place.emissivity > 0) {
        constexpr double kRadiation = 5.5; // W/(m2 K) near room temperature
        side.convection = through(place.convection + kRadiation * place.emissivity, vessel.tinResistance);
    }
    side.air = Curve::steady(place.airDegC);
    return side;
}

Boundary bath(const Vessel& vessel, const Place& place) {
    Boundary side;
    side.contact = through(place.bathContact, vessel.tinResistance);
    side.body = Curve::steady(place.bathDegC);
    return side;
}

/// Floor, top, walls.
std::vector<Boundary> sidesOf(const Vessel& vessel, const Place& place) {
    Boundary top = air(vessel, place);
    top.moist = vessel.evaporates;
    top.vapourPressure = place.vapourPressure;
    Boundary floor = air(vessel, place);
    Boundary walls = floor;
    if (place.bathContact > 0) {
        floor = bath(vessel, place);
        if (place.bathWalls) walls = floor;
    } else if (vessel.flatShelf) {
        floor = Boundary::insulated();
    }
    return {floor, top, walls};
}

Result<Body> bodyOf(const Vessel& vessel, const Material& food, double startDegC, const Place& place) {
    const std::vector<Layer> layers{{0, vessel.depth, startDegC}};
    std::vector<Boundary> sides = sidesOf(vessel, place);
    const bool shallow = vessel.radius <= 0 && vessel.depth < std::min(vessel.length, vessel.width) / 4;
    if (shallow) sides.pop_back();
    auto grid = vessel.radius > 0 ? roundTin({vessel.radius, vessel.radius, layers, {}}, kRoundCells)
                : shallow         ? slab(layers, kLayerCells)
                                  : block(vessel.length, vessel.width, layers, kBlockCells);
    if (!grid) return grid.problems();
    return Body{std::move(*grid), {vessel.stirred ? food.stirred() : food}, std::move(sides)};
}

std::optional<Problems> refused(const Place& place) {
    for (const double degC : {place.airDegC, place.bathDegC})
        if (!within(degC, -60, 300))
            return Problems::one(Fault::Input, "surroundings at " + std::to_string(degC) + " degC", "-60 to 300 degC");
    return std::nullopt;
}

double coldestOf(const Place& place) {
    return place.bathContact > 0 ? std::min(place.airDegC, place.bathDegC) : place.airDegC;
}

} // namespace

Place Place::roomAir(double degC) { return {degC, 6, 0.9, 1.0, 20, 0, true}; }

Place Place::coldRoom(double degC) { return {degC, 10, 0.9, 0.6, 20, 0, true}; }

Place Place::blastChiller(double degC) { return {degC, 36, 0.9, 0.4, 20, 0, true}; }

Place Place::iceBath(double airDegC) { return {airDegC, 6, 0.9, 1.0, 0.5, 300, true}; }

Place Place::hotCupboard(double degC) { return {degC, 8, 0.9, 3.0, 20, 0, true}; }

Place Place::bainMarie(double waterDegC, double airDegC) { return {airDegC, 6, 0.9, 1.5, waterDegC, 200, true}; }

Result<History> standing(const Vessel& vessel, const Material& food, double startDegC, const Place& place,
                         double seconds) {
    if (auto bad = refused(place)) return *bad;
    const auto body = bodyOf(vessel, food, startDegC, place);
    if (!body) return body.problems();
    Stretch run;
    run.seconds = seconds;
    run.every = std::max(1.0, seconds / 2000);
    return conduct(*body, run);
}

Result<Cooled> cool(const Vessel& vessel, const Material& food, double startDegC, const Place& place,
                    const std::vector<CoolingStage>& rule) {
    double longest = 0;
    double end = startDegC;
    for (const CoolingStage& stage : rule) {
        if (!(stage.from > stage.to) || !(stage.within > 0))
            return Problems::one(Fault::Input,
                                 "a stage from " + std::to_string(stage.from) + " to " + std::to_string(stage.to) +
                                     " degC",
                                 "a fall, and a time above 0");
        longest = std::max(longest, stage.within);
        end = std::min(end, stage.to);
    }
    if (rule.empty()) return Problems::one(Fault::Input, "a rule without a stage", "from, to and within");
    if (auto bad = refused(place)) return *bad;
    const auto body = bodyOf(vessel, food, startDegC, place);
    if (!body) return body.problems();
    Stretch run;
    run.seconds = 4 * longest;
    run.every = longest / 500;
    run.untilHottest = end - 0.2;
    auto history = conduct(*body, run);
    if (!history) return history.problems();
    Cooled made{std::move(*history), {}, true};
    for (const CoolingStage& stage : rule) {
        StageTime told;
        const double from = std::min(stage.from, startDegC);
        const auto begins = made.history.hottest.firstAtOrBelow(from);
        const auto ends = made.history.hottest.staysAtOrBelowFrom(stage.to);
        if (begins && ends) told.seconds = std::max(0.0, *ends - *begins);
        if (!vessel.stirred && from > stage.to && stage.to > coldestOf(place))
            told.least = conductionTakes(food, vessel.depth, from, coldestOf(place), stage.to);
        told.inTime = told.seconds && *told.seconds <= stage.within;
        made.inTime = made.inTime && told.inTime;
        made.stages.push_back(told);
    }
    return made;
}

Result<std::optional<double>> greatestDepth(Vessel vessel, const Material& food, double startDegC, const Place& place,
                                            const std::vector<CoolingStage>& rule) {
    const auto makes = [&](int millimetres) -> Result<bool> {
        vessel.depth = millimetres / 1000.0;
        const auto cooled = cool(vessel, food, startDegC, place, rule);
        if (!cooled) return cooled.problems();
        return cooled->inTime;
    };
    int good = 5;
    int bad = 1001;
    const auto least = makes(good);
    if (!least) return least.problems();
    if (!*least) return std::optional<double>();
    while (bad - good > 1) {
        const int middle = good < 50 && bad > 100 ? good * 2 : (good + bad) / 2; // deep ones take longest to try
        const auto made = makes(middle);
        if (!made) return made.problems();
        (*made ? good : bad) = middle;
    }
    return std::optional(good / 1000.0);
}

Result<std::optional<double>> heldAbove(const Vessel& vessel, const Material& food, double startDegC,
                                        const Place& place, double limit, double seconds) {
    const auto history = standing(vessel, food, startDegC, place, seconds);
    if (!history) return history.problems();
    for (const CurvePoint& point : history->coldest.points())
        if (point.degC < limit) return history->coldest.firstAtOrBelow(limit);
    return std::optional<double>();
}

double conductionTakes(const Material& food, double depth, double start, double surface, double to) {
    double quickest = 0; // m2/s
    for (int i = 0; i <= 20; ++i) {
        const Material::State state = food.at(food.heatAt(to + (start - to) * i / 20));
        quickest = std::max(quickest, state.conductivity * state.perHeat);
    }
    const double theta = (to - surface) / (start - surface);
    const Series series(SeriesShape::Slab, 1e9);
    if (series.theta(1e-3, 0) <= theta) return 0;
    return series.fourierAt(theta) * depth * depth / 4 / quickest;
}

double stirredTemperature(double start, double surroundings, double rate, double seconds) {
    return surroundings + (start - surroundings) * std::exp(-rate * seconds);
}

} // namespace piewright::thermal
