#include "thermal/moisture.h"

#include <algorithm>

namespace piewright::thermal {

Moisture::Moisture(const Body& body, const Cells& heat) : body_(body), grid_(body.grid) {
    for (const Material& material : body.materials) dries_ = dries_ || material.dries();
    if (dries_) {
        most_ = heat;
        lost_.assign(heat.size(), 0);
    }
    for (const Grid::Outside& face : grid_.outside) dried_.push_back({face.cell, 0, true, true});
}

/// A cell that lost water below boiling has less to boil off.
Material::State Moisture::stateOf(const Material& material, std::size_t cell, double heat) const {
    if (!material.dries() || std::max(heat, most_[cell]) <= material.boilsFrom()) return material.at(heat);
    const double from = material.boilsFrom();
    const double plateau = material.boilsTo() - from;
    const double left = plateau * std::max(1e-3, 1 - lost_[cell] / material.removable());
    const auto onTable = [&](double h) { // the same place on the full table
        if (h <= from) return h;
        return h < from + left ? from + (h - from) * plateau / left : h + plateau - left;
    };
    if (heat < most_[cell]) return material.below(onTable(most_[cell]) - (most_[cell] - heat), onTable(most_[cell]));
    Material::State state = material.at(onTable(heat));
    if (heat < from + left) state.perHeat *= plateau / left;
    return state;
}

/// Takes what evaporated in a step from the cells it came from, and sees how far each moist face is dry now.
double Moisture::settle(double step, const Cells& heat, const std::vector<double>& before,
                        const std::vector<double>& between) {
    double evaporated = 0;
    for (std::size_t f = 0; f < grid_.outside.size(); ++f) {
        const double kilograms = step * (before[f] + between[f]) / 2;
        evaporated += kilograms;
        if (dries_) takeFrom(f, kilograms);
    }
    if (!dries_) return evaporated;
    for (std::size_t c = 0; c < heat.size(); ++c) most_[c] = std::max(most_[c], heat[c]);
    for (std::size_t f = 0; f < grid_.outside.size(); ++f)
        if (body_.sides[static_cast<std::size_t>(grid_.outside[f].side)].moist) drawBack(f);
    return evaporated;
}

/// From where the wet edge is inwards, no cell giving more than it had: a long step may dry more than one.
void Moisture::takeFrom(std::size_t f, double kilograms) {
    const Grid::Outside& face = grid_.outside[f];
    const std::size_t stride = grid_.stride(face.axis);
    std::size_t cell = dried_[f].cell;
    const std::size_t place = cell / stride % grid_.count(face.axis);
    const std::size_t behind = face.atEnd ? place : grid_.count(face.axis) - 1 - place;
    for (std::size_t i = 0; i <= behind && kilograms > 0; ++i) {
        const Material& material = body_.materials[grid_.material[cell]];
        if (!material.dries()) return;
        const double left = std::max(0.0, material.removable() - lost_[cell] - boiled(cell));
        const double gives = i == behind ? kilograms : std::min(kilograms, left * grid_.volume[cell]);
        lost_[cell] += gives / grid_.volume[cell];
        kilograms -= gives;
        cell = face.atEnd ? cell - stride : cell + stride;
    }
}

void Moisture::drawBack(std::size_t f) {
    constexpr double kDry = 0.98;
    const Grid::Outside& face = grid_.outside[f];
    const std::size_t stride = grid_.stride(face.axis);
    const std::size_t count = grid_.count(face.axis);
    std::size_t cell = face.cell;
    double depth = 0;
    bool any = false;
    for (std::size_t i = 0; i < count; ++i) {
        const Material& material = body_.materials[grid_.material[cell]];
        if (!material.dries()) {
            any = i == 0; // what is not told to dry stays wet; what lies under something dry holds no water
            break;
        }
        const double gone = std::min(1.0, (lost_[cell] + boiled(cell)) / material.removable());
        depth += 2 * face.depth * gone;
        any = gone < kDry;
        if (any || i + 1 == count) break;
        cell = face.atEnd ? cell - stride : cell + stride;
    }
    dried_[f] = {cell, depth, cell == face.cell, any};
}

double Moisture::boiled(std::size_t cell) const {
    const Material& material = body_.materials[grid_.material[cell]];
    const double from = material.boilsFrom();
    if (!material.dries() || most_[cell] <= from) return 0;
    const double share = std::max(0.0, 1 - lost_[cell] / material.removable());
    const double left = (material.boilsTo() - from) * std::max(1e-3, share);
    return share * material.removable() * std::min(1.0, (most_[cell] - from) / left);
}

} // namespace piewright::thermal
