#include "thermal/shape.h"

#include "thermal/range.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace piewright::thermal {

namespace {

constexpr double kPi = std::numbers::pi;

struct Cells { // one line of them
    Axis axis;
    std::vector<std::uint8_t> material;
    std::vector<double> start;
};

std::optional<Problems> refused(const std::vector<Layer>& layers, int cells) {
    if (layers.empty() || layers.size() > 64)
        return Problems::one(Fault::Input, std::to_string(layers.size()) + " layers", "1 to 64");
    if (cells < 3 || cells > 1'000'000)
        return Problems::one(Fault::Input, std::to_string(cells) + " cells", "3 to a million");
    for (const Layer& layer : layers) {
        if (!within(layer.thickness, 1e-6, 10))
            return Problems::one(Fault::Input, "a thickness of " + std::to_string(layer.thickness) + " m",
                                 "0.000001 to 10 m");
        if (!within(layer.degC, -60, 350))
            return Problems::one(Fault::Input, "a start at " + std::to_string(layer.degC) + " degC", "-60 to 350 degC");
    }
    return std::nullopt;
}

/// Each layer in equal cells, at least three.
Cells divided(const std::vector<Layer>& layers, int cells, bool mirrored) {
    const double whole = std::accumulate(layers.begin(), layers.end(), 0.0,
                                         [](double sum, const Layer& l) { return sum + l.thickness; });
    Cells made;
    made.axis.mirrored = mirrored;
    made.axis.edges = {0};
    double at = 0;
    for (std::size_t l = 0; l < layers.size(); ++l) {
        const int n = std::max(3, static_cast<int>(std::lround(cells * layers[l].thickness / whole)));
        for (int i = 0; i < n; ++i) {
            made.axis.centres.push_back(at + layers[l].thickness * (i + 0.5) / n);
            made.axis.edges.push_back(at + layers[l].thickness * (i + 1) / n);
            made.axis.layer.push_back(static_cast<int>(l));
            made.material.push_back(layers[l].material);
            made.start.push_back(layers[l].degC);
        }
        at += layers[l].thickness;
    }
    return made;
}

Axis none() { return {{0}, {0, 1}, {0}, false}; }

double width(const Axis& axis, std::size_t i) { return axis.edges[i + 1] - axis.edges[i]; }

/// A line of cells whose faces and volumes grow as the power of the distance: 0 slab, 1 cylinder, 2 sphere.
Result<Grid> line(const std::vector<Layer>& layers, int cells, int power) {
    if (auto bad = refused(layers, cells)) return *bad;
    const double factor = power == 0 ? 1 : power == 1 ? 2 * kPi : 4 * kPi;
    Cells cut = divided(layers, cells, power > 0);
    Grid grid;
    const std::size_t n = cut.material.size();
    const auto area = [&](double x) { return factor * std::pow(x, power); };
    for (std::size_t i = 0; i < n; ++i) {
        const double from = cut.axis.edges[i];
        const double to = cut.axis.edges[i + 1];
        grid.volume.push_back(factor * (std::pow(to, power + 1) - std::pow(from, power + 1)) / (power + 1));
        const double face = area(to);
        grid.before[0].push_back(face / (to - cut.axis.centres[i]));
        grid.beyond[0].push_back(i + 1 < n ? face / (cut.axis.centres[i + 1] - to) : 0);
    }
    const double last = width(cut.axis, n - 1) / 2;
    if (power == 0) {
        const double first = width(cut.axis, 0) / 2;
        grid.outside.push_back({0, 0, 0, false, 1, 1 / first, 0, first});
    }
    const double outer = area(cut.axis.edges[n]);
    grid.outside.push_back({n - 1, 0, power == 0 ? 1 : 0, true, outer, outer / last, 0, last});
    grid.material = std::move(cut.material);
    grid.start = std::move(cut.start);
    grid.axes = {std::move(cut.axis), none(), none()};
    return grid;
}

} // namespace

Result<Grid> slab(const std::vector<Layer>& layers, int cells) { return line(layers, cells, 0); }

Result<Grid> longCylinder(const std::vector<Layer>& layers, int cells) { return line(layers, cells, 1); }

Result<Grid> sphere(const std::vector<Layer>& layers, int cells) { return line(layers, cells, 2); }

Result<Grid> roundTin(const RoundTin& tin, int cells) {
    std::vector<Layer> discs = tin.discs;
    if (tin.wall) discs.push_back(*tin.wall); // checked with the discs
    if (auto bad = refused(discs, cells)) return *bad;
    discs = tin.discs;
    if (discs.empty()) return Problems::one(Fault::Input, "a tin with nothing in it", "at least one layer");
    double height = 0;
    for (const Layer& disc : discs) height += disc.thickness;
    const double lining = tin.wall ? tin.wall->thickness : 0;
    const double least = std::min(tin.floorRadius, tin.mouthRadius);
    const double slope = (tin.mouthRadius - tin.floorRadius) / height;
    if (!above(least, lining, 10) || !(tin.mouthRadius <= 10))
        return Problems::one(Fault::Input, "a radius of " + std::to_string(least) + " m",
                             "more than the lining's width, at most 10 m");
    if (!(std::abs(slope) <= 1))
        return Problems::one(Fault::Input, "walls that run out " + std::to_string(slope) + " m for each m up",
                             "at most 1");

    const double radius = (tin.floorRadius + tin.mouthRadius) / 2;
    const double cellSize = std::sqrt(radius * height / cells);
    std::vector<Layer> across{{0, radius - lining, 0}};
    if (tin.wall) across.push_back({tin.wall->material, lining, tin.wall->degC});
    Cells up = divided(discs, std::max(3, static_cast<int>(std::lround(height / cellSize))), false);
    const auto rows = up.material.size();
    Cells out = divided(across, std::max(3, static_cast<int>(std::lround(cells / static_cast<double>(rows)))), true);
    const auto columns = out.material.size();
    // Every line of the grid is straight: its radius at height z is at mid height + its slope x (z - mid).
    const auto slopeOf = [&](std::size_t edge) { // the filling's lines fan out, the lining's run with the wall
        const double core = radius - lining;
        const double r = out.axis.edges[edge];
        return r < core ? slope * r / core : slope;
    };
    const auto radiusAt = [&](std::size_t edge, double z) {
        return out.axis.edges[edge] + slopeOf(edge) * (z - height / 2);
    };
    const bool slanted = slope != 0;
    Grid grid;
    const std::size_t count = rows * columns;
    for (int a = 0; a < 2; ++a) {
        grid.before[static_cast<std::size_t>(a)].assign(count, 0);
        grid.beyond[static_cast<std::size_t>(a)].assign(count, 0);
        if (slanted) grid.slant[static_cast<std::size_t>(a)].assign(count, 0);
    }
    const int lastDisc = static_cast<int>(discs.size()) - 1;
    for (std::size_t j = 0; j < rows; ++j) {
        const double z0 = up.axis.edges[j];
        const double z1 = up.axis.edges[j + 1];
        const double zm = (z0 + z1) / 2;
        const double dz = z1 - z0;
        const bool lined = tin.wall && (discs.size() < 3 || (up.axis.layer[j] != 0 && up.axis.layer[j] != lastDisc));
        for (std::size_t i = 0; i < columns; ++i) {
            const std::size_t cell = i + j * columns;
            const auto ring = [&](double z) {
                const double inner = radiusAt(i, z);
                const double outer = radiusAt(i + 1, z);
                return kPi * (outer * outer - inner * inner);
            };
            grid.volume.push_back(dz / 6 * (ring(z0) + 4 * ring(zm) + ring(z1))); // exact: a square in z
            const bool wall = lined && out.axis.layer[i] == 1;
            grid.material.push_back(wall ? tin.wall->material : up.material[j]);
            grid.start.push_back(wall ? tin.wall->degC : up.start[j]);

            if (slanted) grid.across.push_back((radiusAt(i, zm) + radiusAt(i + 1, zm)) / 2);

            // Outwards: the face is a cone; heat crosses it by its normal.
            const double m = slopeOf(i + 1);
            const double level = 2 * kPi * radiusAt(i + 1, zm) * dz; // its area seen from the side
            const double half = (radiusAt(i + 1, zm) - radiusAt(i, zm)) / 2;
            grid.before[0][cell] = level * (1 + m * m) / half;
            if (i + 1 < columns) {
                grid.beyond[0][cell] = level * (1 + m * m) / ((radiusAt(i + 2, zm) - radiusAt(i + 1, zm)) / 2);
                if (slanted) grid.slant[0][cell] = level * m;
            } else {
                const double area = level * std::sqrt(1 + m * m);
                grid.outside.push_back({cell, 0, 2, true, area, grid.before[0][cell], level * m, half});
            }
            // Upwards: the face is level, the lines through it may lean.
            const double lean = (slopeOf(i) + slopeOf(i + 1)) / 2;
            const double top = ring(z1);
            grid.before[1][cell] = top / (dz / 2);
            if (j + 1 < rows) {
                grid.beyond[1][cell] = top / (width(up.axis, j + 1) / 2);
                if (slanted) grid.slant[1][cell] = top * lean;
            } else {
                grid.outside.push_back({cell, 1, 1, true, top, top / (dz / 2), top * lean, dz / 2});
            }
            if (j == 0) {
                const double bottom = ring(z0);
                grid.outside.push_back({cell, 1, 0, false, bottom, bottom / (dz / 2), -bottom * lean, dz / 2});
            }
        }
    }
    // Probes across go by the part of the radius.
    for (double& x : out.axis.centres) x /= radius;
    for (double& x : out.axis.edges) x /= radius;
    grid.axes = {std::move(out.axis), std::move(up.axis), none()};
    return grid;
}

Result<Grid> block(double length, double width0, const std::vector<Layer>& layers, int cells) {
    std::vector<Layer> all = layers;
    all.push_back({0, length, 0});
    all.push_back({0, width0, 0});
    if (auto bad = refused(all, cells)) return *bad;
    if (layers.empty()) return Problems::one(Fault::Input, "a block of nothing", "at least one layer");
    double height = 0;
    for (const Layer& layer : layers) height += layer.thickness;
    const double cellSize = std::cbrt(length / 2 * width0 / 2 * height / cells);
    const auto share = [&](double of) { return std::clamp(static_cast<int>(std::lround(of / cellSize)), 3, 1000); };
    Cells along = divided({{0, length / 2, 0}}, share(length / 2), true);
    Cells across = divided({{0, width0 / 2, 0}}, share(width0 / 2), true);
    Cells up = divided(layers, share(height), false);
    Grid grid;
    grid.whole = 4;
    const std::size_t n0 = along.material.size();
    const std::size_t n1 = across.material.size();
    const std::size_t n2 = up.material.size();
    const std::array<const Axis*, 3> axes{&along.axis, &across.axis, &up.axis};
    const std::array<std::size_t, 3> counts{n0, n1, n2};
    for (std::size_t k = 0; k < n2; ++k)
        for (std::size_t j = 0; j < n1; ++j)
            for (std::size_t i = 0; i < n0; ++i) {
                const std::size_t cell = grid.volume.size();
                const std::array<std::size_t, 3> at{i, j, k};
                const std::array<double, 3> size{width(along.axis, i), width(across.axis, j), width(up.axis, k)};
                grid.volume.push_back(size[0] * size[1] * size[2]);
                grid.material.push_back(up.material[k]);
                grid.start.push_back(up.start[k]);
                for (std::size_t a = 0; a < 3; ++a) {
                    const double face = size[(a + 1) % 3] * size[(a + 2) % 3];
                    const double own = face / (size[a] / 2);
                    const bool last = at[a] + 1 == counts[a];
                    grid.before[a].push_back(own);
                    grid.beyond[a].push_back(last ? 0 : face / (width(*axes[a], at[a] + 1) / 2));
                    const int axis = static_cast<int>(a);
                    if (last) grid.outside.push_back({cell, axis, a == 2 ? 1 : 2, true, face, own, 0, size[a] / 2});
                    if (a == 2 && k == 0) grid.outside.push_back({cell, axis, 0, false, face, own, 0, size[a] / 2});
                }
            }
    grid.axes = {std::move(along.axis), std::move(across.axis), std::move(up.axis)};
    return grid;
}

} // namespace piewright::thermal
