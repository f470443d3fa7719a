#include "thermal/heat_flow.h"

#include "thermal/water.h"

#include <algorithm>

namespace piewright::thermal {

namespace {

constexpr double kSteamInCrust = 5.6e-8; // kg/(s m kPa): 0.3 of steam's diffusion in air; an assumption

} // namespace

HeatFlow::HeatFlow(const Body& body, const Moisture& moisture) : body_(body), grid_(body.grid), moisture_(moisture) {
    for (int a = 0; a < 3; ++a) {
        if (grid_.count(a) < 2) continue;
        axes_.push_back(a);
        join_.emplace_back(grid_.cells(), 0.0);
        leaves_.emplace_back(grid_.cells(), 0.0);
        leavers_.emplace_back();
    }
    for (std::size_t c = 0; c < grid_.cells(); ++c) {
        const Material* material = &body.materials[grid_.material[c]];
        if (segments_.empty() || segments_.back().material != material) segments_.push_back({c, c, material});
        segments_.back().end = c + 1;
    }
    for (const Grid::Outside& face : grid_.outside) surface_.push_back(grid_.start[face.cell]);
}

std::size_t HeatFlow::axisIndex(int axis) const {
    return static_cast<std::size_t>(std::find(axes_.begin(), axes_.end(), axis) - axes_.begin());
}

void HeatFlow::look(const Cells& heat, double seconds, Look& seen, bool forFactor) {
    for (const Segment& one : segments_) {
        const Material& material = *one.material;
        if (material.isConstant()) {
            const Material::State each = material.at(1);
            for (std::size_t c = one.begin; c < one.end; ++c) {
                seen.degC[c] = heat[c] * each.perHeat;
                seen.perHeat[c] = each.perHeat;
                seen.conductivity[c] = each.conductivity;
            }
        } else if (!material.dries()) {
            for (std::size_t c = one.begin; c < one.end; ++c) {
                const Material::State state = material.at(heat[c]);
                seen.degC[c] = state.degC;
                seen.perHeat[c] = state.perHeat;
                seen.conductivity[c] = state.conductivity;
            }
        } else {
            for (std::size_t c = one.begin; c < one.end; ++c) {
                const Material::State state = moisture_.stateOf(material, c, heat[c]);
                seen.degC[c] = state.degC;
                seen.perHeat[c] = state.perHeat;
                seen.conductivity[c] = state.conductivity;
            }
        }
    }
    const std::size_t n = seen.degC.size();
    std::fill(seen.watts.begin(), seen.watts.end(), 0.0);
    const double* const t = seen.degC.data();
    const double* const k = seen.conductivity.data();
    double* const w = seen.watts.data();
    for (std::size_t a = 0; a < axes_.size(); ++a) {
        const auto axis = static_cast<std::size_t>(axes_[a]);
        const std::size_t stride = grid_.stride(axes_[a]);
        const std::size_t plane = stride * grid_.count(axes_[a]);
        const double* const before = grid_.before[axis].data();
        const double* const beyond = grid_.beyond[axis].data();
        double* const join = join_[a].data();
        const auto stretch = [&](std::size_t from, std::size_t to) {
            for (std::size_t c = from; c < to; ++c) {
                const double x = k[c] * before[c];
                const double y = k[c + stride] * beyond[c];
                const double g = x * y / (x + y);
                join[c] = g; // overwritten by a later look: the factors hold their own copy
                const double flow = g * (t[c] - t[c + stride]);
                w[c] -= flow;
                w[c + stride] += flow;
            }
        };
        if (stride == 1)
            for (std::size_t base = 0; base < n; base += plane) stretch(base, base + plane - 1);
        else
            for (std::size_t base = 0; base < n; base += plane)
                for (std::size_t row = base; row < base + plane - stride; row += stride) stretch(row, row + stride);
    }
    if (!grid_.across.empty()) slanted(seen);
    sides(seconds, seen, forFactor);
}

/// What flows along slanted faces because the lines of the grid lean: explicit, as the factors know only straight ones.
void HeatFlow::slanted(Look& seen) const {
    const std::size_t columns = grid_.count(0);
    const std::size_t rows = grid_.count(1);
    const Cells& t = seen.degC;
    const auto& z = grid_.axes[1].centres;
    const auto& r = grid_.across;
    const auto up = [&](std::size_t i, std::size_t j) { // along a line of the grid, K/m
        const std::size_t a = j > 0 ? j - 1 : j;
        const std::size_t b = j + 1 < rows ? j + 1 : j;
        return (t[i + b * columns] - t[i + a * columns]) / (z[b] - z[a]);
    };
    const auto out = [&](std::size_t i, std::size_t j) {
        const std::size_t b = i + 1 < columns ? i + 1 : i;
        const std::size_t row = j * columns;
        // Past the middle the body goes on, mirrored.
        if (i == 0) return (t[b + row] - t[row]) / (r[b + row] + r[row]);
        return (t[b + row] - t[i - 1 + row]) / (r[b + row] - r[i - 1 + row]);
    };
    const auto between = [&](std::size_t axis, std::size_t c, std::size_t d) { // conductivity at the face
        const double before = grid_.before[axis][c];
        const double beyond = grid_.beyond[axis][c];
        const double x = seen.conductivity[c] * before;
        const double y = seen.conductivity[d] * beyond;
        return x * y / (x + y) * (1 / before + 1 / beyond);
    };
    for (std::size_t j = 0; j < rows; ++j)
        for (std::size_t i = 0; i < columns; ++i) {
            const std::size_t c = i + j * columns;
            if (i + 1 < columns) {
                const double flow = between(0, c, c + 1) * grid_.slant[0][c] * (up(i, j) + up(i + 1, j)) / 2;
                seen.watts[c] -= -flow;
                seen.watts[c + 1] += -flow;
            }
            if (j + 1 < rows) {
                const double flow = between(1, c, c + columns) * grid_.slant[1][c] * (out(i, j) + out(i, j + 1)) / 2;
                seen.watts[c] -= -flow;
                seen.watts[c + columns] += -flow;
            }
        }
}

double HeatFlow::aside(const Grid::Outside& face, const Look& seen) const {
    if (face.slant == 0) return 0;
    const std::size_t columns = grid_.count(0);
    const std::size_t rows = grid_.count(1);
    const std::size_t i = face.cell % columns;
    const std::size_t j = face.cell / columns;
    double gradient = 0;
    if (face.axis == 0) {
        const std::size_t a = j > 0 ? j - 1 : j;
        const std::size_t b = j + 1 < rows ? j + 1 : j;
        const auto& z = grid_.axes[1].centres;
        gradient = (seen.degC[i + b * columns] - seen.degC[i + a * columns]) / (z[b] - z[a]);
    } else {
        const std::size_t row = j * columns;
        const std::size_t b = i + 1 < columns ? i + 1 : i;
        gradient = i == 0 ? (seen.degC[b + row] - seen.degC[row]) / (grid_.across[b + row] + grid_.across[row])
                          : (seen.degC[b + row] - seen.degC[i - 1 + row]) /
                                (grid_.across[b + row] - grid_.across[i - 1 + row]);
    }
    return seen.conductivity[face.cell] * face.slant * gradient / face.area;
}

void HeatFlow::sides(double seconds, Look& seen, bool forFactor) {
    if (forFactor)
        for (std::size_t a = 0; a < axes_.size(); ++a) {
            for (const std::size_t cell : leavers_[a]) leaves_[a][cell] = 0;
            leavers_[a].clear();
        }
    const auto leave = [&](std::size_t axis, std::size_t cell, double watts) {
        if (!forFactor || !(watts > 0)) return;
        if (leaves_[axis][cell] == 0) leavers_[axis].push_back(cell);
        leaves_[axis][cell] += watts;
    };
    std::vector<Surroundings> around;
    around.reserve(body_.sides.size());
    for (const Boundary& side : body_.sides) around.push_back(surroundingsAt(side, seconds));
    seen.in = 0;
    seen.faceSteam.assign(grid_.outside.size(), 0);
    for (std::size_t f = 0; f < grid_.outside.size(); ++f) {
        const Grid::Outside& face = grid_.outside[f];
        const auto side = static_cast<std::size_t>(face.side);
        Surroundings outside = around[side];
        const Boundary& boundary = body_.sides[side];
        const bool moist = boundary.moist && boundary.convection > 0 && moisture_.face(f).any;
        const double k = evaporationCoefficient(boundary.convection);
        const Moisture::Dried& dried = moisture_.face(f);
        if (moist && dried.atSurface)
            outside.evaporation = dried.depth > 0 ? 1 / (1 / k + dried.depth / kSteamInCrust) : k;
        const double inside = seen.conductivity[face.cell] * face.inward / face.area;
        const SurfaceFlow flow = surfaceFlow(outside, inside, seen.degC[face.cell], aside(face, seen), surface_[f]);
        surface_[f] = flow.degC;
        seen.watts[face.cell] += flow.heat * face.area;
        seen.in += flow.heat * face.area;
        seen.faceSteam[f] = flow.steam * face.area;
        const std::size_t axis = axisIndex(face.axis);
        leave(axis, face.cell, flow.perKelvin * face.area);
        if (moist && !dried.atSurface) { // from under the dry matter, at the temperature there
            const double t = seen.degC[dried.cell];
            const double over = saturationPressure(t) - boundary.vapourPressure;
            if (over > 0 && t < 100) {
                const double steam = face.area * over / (1 / k + dried.depth / kSteamInCrust);
                const double heat = steam * latentHeat(t);
                seen.watts[dried.cell] -= heat;
                seen.in -= heat;
                seen.faceSteam[f] = steam;
                leave(axis, dried.cell, heat / over * (saturationPressure(t + 0.5) - saturationPressure(t - 0.5)));
            }
        }
    }
}

} // namespace piewright::thermal
