// Heat: a one-hour bake of a pie in 2,000 cells and a slab's cooling, their answers held against the exact series
// first.
#include "thermal/conduction.h"
#include "thermal/oven.h"
#include "thermal/series.h"
#include "thermal/shape.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <vector>

using namespace piewright::thermal;

namespace {

struct Timed {
    double best;
    double median;
};

Timed timed(int rounds, const std::function<void()>& work) {
    std::vector<double> times;
    for (int i = 0; i < rounds; ++i) {
        const auto from = std::chrono::steady_clock::now();
        work();
        times.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - from).count());
    }
    std::sort(times.begin(), times.end());
    return {times.front(), times[times.size() / 2]};
}

[[noreturn]] void wrong(const char* what, double seen, double wanted) {
    std::printf("WRONG ANSWER: %s %.6f, wanted %.6f\n", what, seen, wanted);
    std::exit(1);
}

template <class T> T good(piewright::Result<T> result) {
    if (!result) {
        std::printf("WRONG: %s", piewright::toText(result.problems().findings).c_str());
        std::exit(1);
    }
    return std::move(*result);
}

void balance(const History& history) {
    const double off = std::abs(history.heat - history.gained) / std::abs(history.gained);
    std::printf("  energy balance off by %.1e; %d steps and %d refused\n", off, history.steps - history.refusedSteps,
                history.refusedSteps);
    if (off > 1e-6) wrong("energy balance", off, 1e-6);
}

// The plate pie of the published cases: radius 55 mm, height 35 mm, h on all sides.
constexpr double kConductivity = 0.45;
constexpr double kDensity = 1060;
constexpr double kHeatCapacity = 3300;
constexpr double kCoefficient = 20;
constexpr double kStart = 8;
constexpr double kOven = 210;
constexpr double kRadius = 0.055;
constexpr double kHeight = 0.035;

void pieBake() {
    Body pie{good(roundTin({kRadius, kRadius, {{0, kHeight, kStart}}, {}}, 2000)),
             {good(Material::constant(kConductivity, kDensity, kHeatCapacity))},
             std::vector<Boundary>(3, Boundary::convecting(kCoefficient, kOven))};
    Stretch run;
    run.seconds = 3600;
    run.every = 60;
    run.probes = {pie.grid.probe({0, kHeight / 2, 0}), pie.grid.probe({1, kHeight / 2, 0}),
                  pie.grid.probe({0, kHeight, 0}), pie.grid.probe({0.5, kHeight / 4, 0})};
    const std::vector<std::pair<double, double>> at{{0, 0}, {1, 0}, {0, 1}, {0.5, -0.5}}; // r/R, z/(H/2)
    const History history = good(conduct(pie, run));
    const Series disc(SeriesShape::Slab, kCoefficient * kHeight / 2 / kConductivity);
    const Series round(SeriesShape::Cylinder, kCoefficient * kRadius / kConductivity);
    const double alpha = kConductivity / kDensity / kHeatCapacity;
    double worst = 0;
    for (std::size_t p = 0; p < at.size(); ++p) {
        double here = 0;
        for (const CurvePoint& point : history.probes[p].points()) {
            if (point.seconds < 60) continue;
            const double fo = alpha * point.seconds;
            const double exact = kOven + (kStart - kOven) *
                                             disc.theta(fo / (kHeight * kHeight / 4), std::abs(at[p].second)) *
                                             round.theta(fo / (kRadius * kRadius), at[p].first);
            here = std::max(here, std::abs(point.degC - exact));
        }
        std::printf("%s%.4f",
                    p == 0   ? "pie, one hour: largest error from the first minute on, K, middle "
                    : p == 1 ? ", edge "
                    : p == 2 ? ", top "
                             : ", between ",
                    here);
        worst = std::max(worst, here);
    }
    std::printf("; %zu cells\n", pie.grid.cells());
    if (!(worst < 0.05)) wrong("error against the exact series, K", worst, 0.05);
    balance(history);
    const Timed time = timed(40, [&] { good(conduct(pie, run)); });
    std::printf("  %.2f ms (best), %.2f ms (median of 40)\n", time.best, time.median);
}

void slabCooling() {
    // 50 mm cooled on both sides, as in the published cases: half of it, mirrored by an insulated side.
    constexpr double kThick = 0.05;
    Body layer{good(slab({{0, kThick, 70}}, 50)),
               {good(Material::constant(0.5, 1040, 3700))},
               std::vector<Boundary>(2, Boundary::convecting(40, -5))};
    Stretch run;
    run.seconds = 3 * 3600;
    run.every = 60;
    run.probes = {layer.grid.probe({kThick / 2, 0, 0})};
    const History history = good(conduct(layer, run));
    const Series series(SeriesShape::Slab, 40 * kThick / 2 / 0.5);
    double worst = 0;
    for (const CurvePoint& point : history.probes[0].points()) {
        if (point.seconds < 60) continue;
        const double fo = 0.5 / 1040 / 3700 * point.seconds / (kThick * kThick / 4);
        worst = std::max(worst, std::abs(point.degC - (-5 + 75 * series.theta(fo, 0))));
    }
    std::printf("slab, %zu cells, three hours of cooling: largest error at the middle %.4f K\n", layer.grid.cells(),
                worst);
    if (!(worst < 0.05)) wrong("error against the exact series, K", worst, 0.05);
    balance(history);
    const Timed time = timed(200, [&] { good(conduct(layer, run)); });
    std::printf("  %.3f ms (best), %.3f ms (median of 200)\n", time.best, time.median);
}

Pie filled() {
    const Food paste = good(Food::of({20, 7, 30, 40, 2, 1.5}));
    const Food filling = good(Food::of({72, 13, 8, 5, 0.5, 1.5}, -1.5));
    Pie pie{.base = paste, .filling = filling, .lid = paste};
    return pie;
}

/// With temperature-dependent properties, a boiling front in paste and filling, radiation and a moist lid.
void filledPie(int cells) {
    Pie pie = filled();
    pie.cells = cells;
    const Bake baked = good(bake(pie, {}, Curve::steady(210), {}, 3600));
    std::printf("filled pie in a slanted tin, about %d cells, one hour at 210 degC: cooked after %.2f min\n", cells,
                baked.cooked.value_or(0) / 60);
    if (!baked.cooked || *baked.cooked < 25 * 60 || *baked.cooked > 45 * 60)
        wrong("minutes to be cooked", baked.cooked.value_or(0) / 60, 35);
    balance(baked.history);
    const Timed time = timed(cells > 1000 ? 5 : 20, [&] { good(bake(pie, {}, Curve::steady(210), {}, 3600)); });
    std::printf("  %.1f ms (best), %.1f ms (median)\n", time.best, time.median);
}

void durations() {
    Deck deck;
    deck.power = 4000;
    BakeTimes times = good(BakeTimes::tabulated(deck, filled(), {}, {}, {1, 20, 40, 60}, {0, 300, 900, 1800}, 60));
    const double alone = times.seconds(1, 1800);
    const double next = times.seconds(60, 0);
    std::printf(
        "bake times: one pie in a rested deck %.1f min, 60 straight after 60 %.1f min; made monotone by %.1f s\n",
        alone / 60, next / 60, times.moved());
    if (!(next > alone)) wrong("the second full load, s", next, alone);
    const Timed table =
        timed(3, [&] { good(BakeTimes::tabulated(deck, filled(), {}, {}, {1, 20, 40, 60}, {0, 300, 900, 1800}, 60)); });
    double sum = 0;
    constexpr int kAsks = 1'000'000;
    const Timed ask = timed(5, [&] {
        for (int i = 0; i < kAsks; ++i) sum += times.seconds(i % 61, i % 1801);
    });
    if (!(sum > 0)) wrong("durations", sum, 1);
    std::printf("  table of 16: %.2f s; one question: %.1f ns\n", table.best / 1e3, ask.best * 1e6 / kAsks);
}

} // namespace

int main() {
    slabCooling();
    pieBake();
    filledPie(300);
    filledPie(2000);
    durations();
}
