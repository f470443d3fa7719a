#include "thermal/material.h"

#include "thermal/range.h"

#include "thermal/water.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace piewright::thermal {

namespace {

constexpr double kColdest = -60;
constexpr double kHottest = 350;
constexpr std::size_t kEntries = 2048;
constexpr double kLine = 0.2; // K
constexpr double kInfinite = std::numeric_limits<double>::infinity();

/// The moist food and its steam in a cubic metre, by temperature on the way up.
struct Moist {
    const Food& food;
    double density;
    double solidShare; ///< of the volume; the rest is air
    std::optional<Drying> drying;
    double removable; ///< kg/m3

    [[nodiscard]] double boiled(double t) const {
        return drying ? removable * std::clamp((t - drying->from) / (drying->to - drying->from), 0.0, 1.0) : 0;
    }
    [[nodiscard]] double heat(double t) const {
        const double steam = enthalpyOf(Component::Water, 100) + latentHeat(100);
        return density * food.enthalpy(t) + boiled(t) * (steam - enthalpyOf(Component::Water, t));
    }
    [[nodiscard]] double conductivity(double t) const {
        const double k = food.conductivityParallel(t) * 2 * solidShare / (3 - solidShare); // Maxwell, voids of nothing
        return drying ? k + (drying->dryConductivity - k) * boiled(t) / removable : k;
    }
    [[nodiscard]] double perHeatDown(double t) const {
        return 1 / (density * food.heatCapacity(t) - boiled(t) * heatCapacityOf(Component::Water, t));
    }
};

} // namespace

Result<Material> Material::constant(double conductivity, double density, double heatCapacity) {
    for (const double value : {conductivity, density, heatCapacity})
        if (!above(value, 0, 1e6))
            return Problems::one(Fault::Input, "a conductivity, density or heat capacity of " + std::to_string(value),
                                 "a number above 0");
    Material made;
    made.constant_ = true;
    made.conductivity_ = conductivity;
    made.density_ = density;
    made.perHeat_ = 1 / (density * heatCapacity);
    made.boilsFrom_ = made.boilsTo_ = kInfinite;
    return made;
}

Result<Material> Material::of(const Food& food, double foam, std::optional<Drying> drying) {
    if (!within(foam, 0, 0.9))
        return Problems::one(Fault::Input, "a foam of " + std::to_string(foam), "0 to below 0.9");
    if (drying && (!above(drying->removable, 0, 1) || !(drying->dryConductivity > 0) || !(drying->to > drying->from) ||
                   !(drying->from >= 80) || !(drying->to <= 130)))
        return Problems::one(Fault::Input, "a drying out of range",
                             "a removable part up to 1, a conductivity above 0, boiling within 80 to 130 degC");
    const double density = (1 - foam) * food.density(20);
    const double removable = drying ? drying->removable * food.parts().water * density : 0;
    if (drying && !(removable > 0)) return Problems::one(Fault::Input, "a drying food without water", "some water");
    const Moist moist{food, density, 1 - foam, drying, removable};
    Material made;
    made.density_ = density;
    made.removable_ = removable;
    made.boilsFrom_ = drying ? moist.heat(drying->from) : kInfinite;
    made.boilsTo_ = drying ? moist.heat(drying->to) : kInfinite;
    made.least_ = moist.heat(kColdest);
    made.each_ = (moist.heat(kHottest) - made.least_) / static_cast<double>(kEntries - 1);
    made.perEach_ = 1 / made.each_;
    auto table = std::make_shared<Table>(kEntries);
    // Turned round from a list by temperature; between its lines heat is nearly straight.
    double below = made.least_;
    double line = kColdest;
    double above = moist.heat(line + kLine);
    for (std::size_t i = 0; i < kEntries; ++i) {
        const double wanted = made.least_ + static_cast<double>(i) * made.each_;
        while (above < wanted && line + kLine < kHottest) {
            line += kLine;
            below = above;
            above = moist.heat(line + kLine);
        }
        const double t = line + kLine * (wanted - below) / (above - below);
        (*table)[i] = {t, moist.conductivity(t), moist.perHeatDown(t), moist.boiled(t)};
    }
    made.table_ = std::move(table);
    return made;
}

Material Material::stirred() const {
    constexpr double kMixed = 1e4; // W/(m K): a pan's content within a hundredth of a kelvin
    Material made = *this;
    made.conductivity_ = kMixed;
    if (table_) {
        auto table = std::make_shared<Table>(*table_);
        for (Entry& entry : *table) entry.conductivity = kMixed;
        made.table_ = std::move(table);
    }
    return made;
}

std::pair<const Material::Entry*, double> Material::entry(double heat) const {
    const double at = (heat - least_) * perEach_;
    const auto index = static_cast<std::ptrdiff_t>(std::clamp(at, 0.0, static_cast<double>(kEntries - 2)));
    return {table_->data() + index, at - static_cast<double>(index)};
}

Material::State Material::at(double heat) const {
    if (constant_) return {heat * perHeat_, perHeat_, conductivity_};
    const auto [low, share] = entry(heat);
    const double rise = low[1].degC - low[0].degC;
    const double inside = std::clamp(share, 0.0, 1.0); // conductivity does not run on
    return {low[0].degC + share * rise, rise * perEach_,
            low[0].conductivity + inside * (low[1].conductivity - low[0].conductivity)};
}

Material::State Material::below(double heat, double most) const {
    const State peak = at(most);
    const auto [low, share] = entry(most);
    const double slope = low[0].perHeatDown + std::clamp(share, 0.0, 1.0) * (low[1].perHeatDown - low[0].perHeatDown);
    return {peak.degC - (most - heat) * slope, slope, peak.conductivity};
}

double Material::heatAt(double degC) const {
    if (constant_) return degC / perHeat_;
    const Table& table = *table_;
    const auto after = std::upper_bound(table.begin() + 1, table.end() - 1, degC,
                                        [](double t, const Entry& entry) { return t < entry.degC; });
    const Entry& a = *(after - 1);
    const double share = (degC - a.degC) / (after->degC - a.degC);
    return least_ + each_ * (static_cast<double>(after - 1 - table.begin()) + share);
}

double Material::boiledAt(double heat) const {
    if (!dries()) return 0;
    const auto [low, share] = entry(heat);
    return low[0].boiled + std::clamp(share, 0.0, 1.0) * (low[1].boiled - low[0].boiled);
}

} // namespace piewright::thermal
