#include "thermal/conduction.h"
#include "outside/topics.h"
#include "thermal/cooling.h"
#include "thermal/lethality.h"
#include "thermal/series.h"
#include "thermal/shape.h"

#include <array>
#include <cmath>

namespace piewright::outside {

namespace {

using namespace thermal;

std::optional<SeriesShape> shapeIn(const Inputs& inputs) {
    const std::string name = inputs.text("geometry");
    if (name == "slab") return SeriesShape::Slab;
    if (name == "cylinder") return SeriesShape::Cylinder;
    if (name == "sphere") return SeriesShape::Sphere;
    return std::nullopt;
}

/// Half a slab, insulated in the middle, or a round body.
std::optional<Body> bodyOf(SeriesShape shape, double size, int cells, const Material& material, double start,
                           const Boundary& outside) {
    const std::vector<Layer> layers{{0, size, start}};
    auto grid = shape == SeriesShape::Slab       ? slab(layers, cells)
                : shape == SeriesShape::Cylinder ? longCylinder(layers, cells)
                                                 : sphere(layers, cells);
    if (!grid) return std::nullopt;
    std::vector<Boundary> sides{outside};
    if (shape == SeriesShape::Slab) sides = {Boundary::insulated(), outside};
    return Body{std::move(*grid), {material}, std::move(sides)};
}

Stretch exactRun(double seconds) {
    Stretch run;
    run.seconds = seconds;
    run.every = seconds / 500;
    run.tolerance = 0.0005;
    return run;
}

struct Pie {
    Body body;
    double height;
};

/// The published finite cylinders: one material, h on all faces, no evaporation.
std::optional<Pie> pieOf(const Inputs& in) {
    std::array<double, 8> v{};
    constexpr std::array<std::string_view, 8> kKeys{"R_m", "H_m", "k", "rho", "cp", "h", "T0_C", "Tinf_C"};
    for (std::size_t i = 0; i < kKeys.size(); ++i) {
        const auto number = in.number(kKeys[i]);
        if (!number) return std::nullopt;
        v[i] = *number;
    }
    auto grid = roundTin({v[0], v[0], {{0, v[1], v[6]}}, {}}, 3000);
    const auto material = Material::constant(v[2], v[3], v[4]);
    if (!grid || !material) return std::nullopt;
    return Pie{{std::move(*grid), {*material}, {3, Boundary::convecting(v[5], v[7])}}, v[1]};
}

std::optional<Curve> middleOf(const Pie& pie, double seconds) {
    Stretch run = exactRun(seconds);
    run.probes = {pie.body.grid.probe({0, pie.height / 2, 0})};
    const auto history = conduct(pie.body, run);
    return history ? std::optional(history->probes[0]) : std::nullopt;
}

} // namespace

Answer conductionRoot(const Case& asked, const Foods&) {
    const auto shape = shapeIn(asked.inputs);
    const auto biot = asked.inputs.number("Bi");
    if (!shape || !biot || *biot <= 0 || !asked.inputs.only({"geometry", "Bi"}))
        return NotCovered{"wants geometry and Bi"};
    if (asked.quantity == "C1") return Series(*shape, *biot, 1).coefficient(1);
    if (!asked.quantity.starts_with("zeta")) return NotCovered{"neither zeta nor C1"};
    const auto mode = numberIn(std::string_view(asked.quantity).substr(4));
    if (!mode || *mode < 1 || *mode > 50 || *mode != std::floor(*mode)) return NotCovered{"no such root"};
    return Series(*shape, *biot, static_cast<int>(*mode)).root(static_cast<int>(*mode));
}

/// By the solver, not the series: a body of 20 mm, theta from the temperatures.
Answer conductionTheta(const Case& asked, const Foods&) {
    const auto shape = shapeIn(asked.inputs);
    const auto biot = asked.inputs.number("Bi");
    const auto fo = asked.inputs.number("Fo");
    const std::string where = asked.inputs.text("x");
    if (!shape || !biot || !fo || *fo <= 0 || *fo > 100 || !asked.inputs.only({"geometry", "Bi", "Fo", "x"}))
        return NotCovered{"wants geometry, Bi, Fo and x"};
    constexpr double kSize = 0.02;
    const auto material = Material::constant(0.5, 1000, 4000);
    const auto body = bodyOf(*shape, kSize, 160, *material, 0, Boundary::convecting(*biot * 0.5 / kSize, 100));
    if (!body) return NotCovered{"no body"};
    Stretch run = exactRun(*fo * kSize * kSize / (0.5 / 1000 / 4000));
    if (where == "mean") {
        run.probes = {body->grid.mean()};
    } else {
        const auto x = numberIn(where);
        if (!x || *x < 0 || *x > 1) return NotCovered{"x is neither mean nor 0 to 1"};
        run.probes = {body->grid.probe({*x * kSize, 0, 0})};
    }
    const auto history = conduct(*body, run);
    if (!history) return NotCovered{"not solved"};
    return 1 - history->probes[0].points().back().degC / 100;
}

Answer finiteCylinder(const Case& asked, const Foods&) {
    const auto pie = pieOf(asked.inputs);
    if (!pie) return NotCovered{"wants R_m, H_m, k, rho, cp, h, T0_C and Tinf_C"};
    if (asked.inputs.has("T_target_C")) {
        const auto target = asked.inputs.number("T_target_C");
        if (!target || asked.unit != "min") return NotCovered{"wants T_target_C, in min"};
        const auto middle = middleOf(*pie, 4 * 3600);
        const auto seconds = middle ? middle->firstAtOrAbove(*target) : std::nullopt;
        return seconds ? Answer(*seconds / 60) : NotCovered{"not reached in four hours"};
    }
    const auto minutes = asked.inputs.number("t_min");
    if (!minutes || *minutes <= 0) return NotCovered{"wants t_min"};
    if (asked.inputs.has("z_C")) {
        const auto z = asked.inputs.number("z_C");
        const auto middle = middleOf(*pie, *minutes * 60);
        if (!z || !middle || asked.unit != "min" || !asked.quantity.starts_with("F70")) return NotCovered{"not F70"};
        return accumulated({70, *z, {}, {}}, *middle) / 60;
    }
    if (asked.unit != "C") return NotCovered{"not in C"};
    if (asked.quantity.starts_with("centre")) {
        const auto middle = middleOf(*pie, *minutes * 60);
        return middle ? Answer(middle->points().back().degC) : NotCovered{"not solved"};
    }
    if (!asked.quantity.starts_with("volume-mean")) return NotCovered{"neither centre nor volume-mean"};
    Stretch run = exactRun(*minutes * 60);
    run.probes = {pie->body.grid.mean()};
    const auto history = conduct(pie->body, run);
    return history ? Answer(history->probes[0].points().back().degC) : NotCovered{"not solved"};
}

Answer coolingLayer(const Case& asked, const Foods&) {
    const auto given =
        asked.inputs.exactly({"thickness_m", "cooled_sides", "h", "Tair_C", "k", "rho", "cp", "T_end_C"});
    if (!given || asked.unit != "min" || asked.quantity.find("from 70 C") == std::string::npos)
        return NotCovered{"wants a layer from 70 C, in min"};
    const auto [thickness, sides, h, air, k, rho, cp, end] = *given;
    if (sides != 1 && sides != 2) return NotCovered{"neither one nor two sides"};
    const auto material = Material::constant(k, rho, cp);
    auto grid = slab({{0, thickness, 70}}, 120);
    if (!material || !grid) return NotCovered{"no layer"};
    const Boundary air0 = Boundary::convecting(h, air);
    Body body{std::move(*grid), {*material}, {sides == 2 ? air0 : Boundary::insulated(), air0}};
    Stretch run = exactRun(48 * 3600);
    run.every = 30;
    run.probes = {body.grid.probe({sides == 2 ? thickness / 2 : 0, 0, 0})};
    run.untilHottest = end - 0.5;
    const auto history = conduct(body, run);
    const auto seconds = history ? history->probes[0].firstAtOrBelow(end) : std::nullopt;
    return seconds ? Answer(*seconds / 60) : NotCovered{"not reached"};
}

Answer publishedCooling(const Case& asked, const Foods&) {
    const auto shape = shapeIn(asked.inputs);
    const auto v = [&](std::string_view key) { return asked.inputs.number(key); };
    if (!shape || asked.unit != "s" ||
        !asked.inputs.only({"geometry", "R_m", "h", "k", "cp", "rho", "T0_C", "Tinf_C", "T_target_C"}) || !v("R_m") ||
        !v("h") || !v("k") || !v("cp") || !v("rho") || !v("T0_C") || !v("Tinf_C") || !v("T_target_C"))
        return NotCovered{"keys not known here"};
    const auto material = Material::constant(*v("k"), *v("rho"), *v("cp"));
    if (!material) return NotCovered{"out of range"};
    const auto body =
        bodyOf(*shape, *v("R_m"), 160, *material, *v("T0_C"), Boundary::convecting(*v("h"), *v("Tinf_C")));
    if (!body) return NotCovered{"no body"};
    Stretch run = exactRun(8 * 3600);
    run.every = 15;
    run.probes = {body->grid.probe({0, 0, 0})};
    const auto history = conduct(*body, run);
    if (!history) return NotCovered{"not solved"};
    const bool warms = *v("Tinf_C") > *v("T0_C");
    const auto seconds = warms ? history->probes[0].firstAtOrAbove(*v("T_target_C"))
                               : history->probes[0].firstAtOrBelow(*v("T_target_C"));
    return seconds ? Answer(*seconds) : NotCovered{"not reached"};
}

Answer stirredKettle(const Case& asked, const Foods&) {
    const auto given = asked.inputs.exactly({"R_m", "h", "rho", "cp", "Ts_C", "T0_C", "t_s", "A_over_V"});
    if (!given || asked.unit != "C") return NotCovered{"keys not known here"};
    const auto [radius, h, rho, cp, surroundings, start, seconds, areaOverVolume] = *given;
    return stirredTemperature(start, surroundings, h * areaOverVolume / (rho * cp), seconds);
}

/// A layer so thick that its far side knows nothing yet.
Answer halfSpace(const Case& asked, const Foods&) {
    const auto given = asked.inputs.exactly({"x_m", "t_s", "k", "alpha", "h"});
    if (!given) return NotCovered{"keys not known here"};
    const auto [x, seconds, k, alpha, h] = *given;
    if (x <= 0 || seconds <= 0 || alpha <= 0) return NotCovered{"out of range"};
    const double thick = 8 * std::sqrt(alpha * seconds) + x;
    const auto material = Material::constant(k, 1000, k / alpha / 1000);
    if (!material) return NotCovered{"out of range"};
    const auto grid = slab({{0, thick, 0}}, 800);
    if (!grid) return NotCovered{"no layer"};
    Body body{*grid, {*material}, {Boundary::convecting(h, 100), Boundary::insulated()}};
    Stretch run = exactRun(seconds);
    run.probes = {body.grid.probe({x, 0, 0})};
    const auto history = conduct(body, run);
    return history ? Answer(history->probes[0].points().back().degC / 100) : NotCovered{"not solved"};
}

/// Stretch on until nothing changes.
Answer steadyLayers(const Case& asked, const Foods&) {
    const auto given = asked.inputs.exactly({"d_paste_m", "k_paste", "d_fill_m", "k_fill", "h1", "h2", "T1_C", "T2_C"});
    if (!given) return NotCovered{"keys not known here"};
    const auto [paste, kPaste, fill, kFill, h1, h2, t1, t2] = *given;
    const auto a = Material::constant(kPaste, 1200, 2500);
    const auto b = Material::constant(kFill, 1060, 3400);
    auto grid = slab({{0, paste, t2}, {1, fill, t2}}, 60);
    if (!a || !b || !grid) return NotCovered{"out of range"};
    Body body{std::move(*grid), {*a, *b}, {Boundary::convecting(h1, t1), Boundary::convecting(h2, t2)}};
    Stretch run;
    run.seconds = 3e5;
    run.every = 3000;
    run.probes = {body.grid.probe({paste, 0, 0})};
    const auto history = conduct(body, run);
    if (!history) return NotCovered{"not solved"};
    if (asked.unit == "C" && asked.quantity.find("joint") != std::string::npos)
        return history->probes[0].points().back().degC;
    if (asked.unit == "W/m2" && asked.quantity.starts_with("flux"))
        return surfaceFlow(surroundingsAt(body.sides[0], 0), 1e9, history->surfaces[0].points().back().degC, 0, t1)
            .heat;
    return NotCovered{"neither the joint's temperature nor the flux"};
}

} // namespace piewright::outside
