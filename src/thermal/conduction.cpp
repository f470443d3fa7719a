#include "thermal/conduction.h"

#include "thermal/range.h"

#include "thermal/factor.h"
#include "thermal/heat_flow.h"
#include "thermal/moisture.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace piewright::thermal {

namespace {

constexpr double kGamma = 0.29289321881345254; // 1 - 1/sqrt(2): second order and strongly damped
constexpr double kErrorShare = 0.06;           // of step^3 x third derivative; 0.040 without the factoring
constexpr double kFirstRise = 0.05;            // K that the first step may change the quickest cell by

class Solver {
  public:
    Solver(const Body& body, const Stretch& run)
        : body_(body), grid_(body.grid), run_(run), n_(grid_.cells()), heat_(startOf(body)), start_(heat_),
          moisture_(body, heat_), flow_(body, moisture_), now_(n_), mid_(n_), next_(n_), trial_(n_), first_(n_),
          second_(n_), rate_(n_), rateBefore_(n_), rateAfter_(n_), rhs_(n_) {
        for (const int axis : flow_.axes()) factors_.emplace_back(grid_, axis);
        goes_.resize(factors_.size());
    }

    Result<History> solve();

  private:
    struct Sample {
        double seconds;
        std::vector<double> values; // coldest, hottest, probes, surfaces
        std::vector<double> rates;  // of the first ones
        double heatIn;
    };

    static Cells startOf(const Body& body) {
        Cells heat;
        for (std::size_t c = 0; c < body.grid.cells(); ++c)
            heat.push_back(body.materials[body.grid.material[c]].heatAt(body.grid.start[c]));
        return heat;
    }
    double solveStage(const Cells& watts, double weight, Cells& out);
    [[nodiscard]] double error(double step) const;
    [[nodiscard]] Sample sampleNow(double seconds) const;
    [[nodiscard]] Result<History> told(const std::vector<Sample>& samples) const;
    [[nodiscard]] std::vector<double> corners() const;

    const Body& body_;
    const Grid& grid_;
    const Stretch& run_;
    std::size_t n_;
    Cells heat_; // J/m3
    Cells start_;
    Moisture moisture_;
    HeatFlow flow_;
    std::vector<Factor> factors_; // by the flow's axes
    std::vector<std::vector<std::pair<std::size_t, double>>>
        goes_; // cells, and J/(s K) x K m3/J to the outside in the factors
    Look now_;
    Look mid_;
    Look next_;
    Cells trial_;
    Cells first_;
    Cells second_;
    Cells rate_; // J/(m3 s) now, one step before, one after
    Cells rateBefore_;
    Cells rateAfter_;
    Cells rhs_;
    double in_ = 0;
    double evaporated_ = 0;
    double stepBefore_ = 0;
    int steps_ = 0;
    int refused_ = 0;
};

/// (I - weight A) out = watts / volume, one direction after the other. Returns the W that go out by the factors' own
/// share of the sides, to be counted with what flows in.
double Solver::solveStage(const Cells& watts, double weight, Cells& out) {
    double gone = 0;
    for (std::size_t a = 0; a < factors_.size(); ++a) {
        for (std::size_t c = 0; a > 0 && c < n_; ++c) rhs_[c] = out[c] * grid_.volume[c];
        factors_[a].solve(a == 0 ? watts : rhs_, out);
        for (const auto& [cell, perHeat] : goes_[a]) gone += weight * perHeat * out[cell];
    }
    return gone;
}

/// K, root mean square over the volume, from the second difference of the rates: infinite where a cell is no number.
double Solver::error(double step) const {
    double sum = 0;
    double volume = 0;
    for (std::size_t c = 0; c < n_; ++c) {
        const double bend =
            (rateAfter_[c] - rate_[c]) / step - (stepBefore_ > 0 ? (rate_[c] - rateBefore_[c]) / stepBefore_ : 0);
        const double third = stepBefore_ > 0 ? 2 * bend / (step + stepBefore_) : bend / step;
        const double kelvin = kErrorShare * step * step * step * third * next_.perHeat[c];
        sum += grid_.volume[c] * kelvin * kelvin;
        volume += grid_.volume[c];
    }
    return std::isfinite(sum) ? std::sqrt(sum / volume) : std::numeric_limits<double>::infinity();
}

Solver::Sample Solver::sampleNow(double seconds) const {
    Sample made{seconds, {}, {}, in_};
    const auto take = [&](const Probe& probe) {
        double value = 0;
        double rate = 0;
        for (const auto& [cell, weight] : probe.weights) {
            value += weight * now_.degC[cell];
            rate += weight * now_.perHeat[cell] * rate_[cell];
        }
        made.values.push_back(value);
        made.rates.push_back(rate);
    };
    const auto [least, most] = std::minmax_element(now_.degC.begin(), now_.degC.end());
    for (const auto& extreme : {least, most}) take({{{static_cast<std::size_t>(extreme - now_.degC.begin()), 1.0}}});
    for (const Probe& probe : run_.probes) take(probe);
    std::vector<double> area(body_.sides.size(), 0);
    std::vector<double> sum(body_.sides.size(), 0);
    for (std::size_t f = 0; f < grid_.outside.size(); ++f) {
        const auto side = static_cast<std::size_t>(grid_.outside[f].side);
        area[side] += grid_.outside[f].area;
        sum[side] += grid_.outside[f].area * flow_.surface(f);
    }
    for (std::size_t s = 0; s < sum.size(); ++s) made.values.push_back(area[s] > 0 ? sum[s] / area[s] : 0);
    return made;
}

/// The curves at even times, by cubics through values and rates.
Result<History> Solver::told(const std::vector<Sample>& samples) const {
    const double end = samples.back().seconds;
    const std::size_t curves = samples.front().values.size();
    std::vector<std::vector<CurvePoint>> points(curves);
    History made;
    std::size_t at = 0;
    for (std::size_t i = 0;; ++i) {
        double seconds = static_cast<double>(i) * run_.every;
        const bool last = seconds >= end - 1e-6 * run_.every;
        if (last) seconds = end;
        while (at + 2 < samples.size() && samples[at + 1].seconds < seconds) ++at;
        const Sample& a = samples[at];
        const Sample& b = samples[std::min(at + 1, samples.size() - 1)];
        const double h = b.seconds - a.seconds;
        const double s = h > 0 ? std::clamp((seconds - a.seconds) / h, 0.0, 1.0) : 0;
        for (std::size_t c = 0; c < curves; ++c) {
            double value = a.values[c] + s * (b.values[c] - a.values[c]);
            if (c < a.rates.size()) {
                const double rise = b.values[c] - a.values[c];
                value += s * (1 - s) * ((1 - s) * (h * a.rates[c] - rise) - s * (h * b.rates[c] - rise));
            }
            points[c].push_back({seconds, value});
        }
        made.heatIn.push_back(grid_.whole * (a.heatIn + s * (b.heatIn - a.heatIn)));
        if (last) break;
    }
    std::vector<Curve> told;
    for (auto& each : points) {
        auto curve = Curve::of(std::move(each));
        if (!curve) return curve.problems();
        told.push_back(std::move(*curve));
    }
    made.coldest = told[0];
    made.hottest = told[1];
    const auto probes = static_cast<std::ptrdiff_t>(run_.probes.size());
    made.probes.assign(told.begin() + 2, told.begin() + 2 + probes);
    made.surfaces.assign(told.begin() + 2 + probes, told.end());
    made.steps = steps_;
    made.refusedSteps = refused_;
    made.heat = grid_.whole * in_;
    made.evaporated = grid_.whole * evaporated_;
    for (std::size_t c = 0; c < n_; ++c) {
        made.gained += grid_.whole * grid_.volume[c] * (heat_[c] - start_[c]);
        made.boiled += grid_.whole * grid_.volume[c] * moisture_.boiled(c);
    }
    return made;
}

/// Times at which something outside turns a corner, and the end.
std::vector<double> Solver::corners() const {
    std::vector<double> all{run_.seconds};
    const auto add = [&](const Curve& curve) {
        for (const CurvePoint& point : curve.points())
            if (point.seconds > 0 && point.seconds < run_.seconds) all.push_back(point.seconds);
    };
    for (const Boundary& side : body_.sides) {
        add(side.air);
        if (side.walls) add(*side.walls);
        if (side.contact > 0) add(side.body);
        if (side.fixed) add(*side.fixed);
    }
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
}

Result<History> Solver::solve() {
    const std::vector<double> corner = corners();
    std::size_t nextCorner = 0;
    double seconds = 0;
    const auto rates = [&](const Look& seen, Cells& rate) {
        for (std::size_t c = 0; c < n_; ++c) rate[c] = seen.watts[c] / grid_.volume[c];
    };
    flow_.look(heat_, 0, now_, true);
    rates(now_, rate_);
    std::vector<Sample> samples{sampleNow(0)};
    double quickest = 1e-9;
    for (std::size_t c = 0; c < n_; ++c) quickest = std::max(quickest, std::abs(rate_[c] * now_.perHeat[c]));
    double step = kFirstRise / quickest;
    const auto reached = [&] {
        const auto [least, most] = std::minmax_element(now_.degC.begin(), now_.degC.end());
        return (run_.untilColdest && *least >= *run_.untilColdest) ||
               (run_.untilHottest && *most <= *run_.untilHottest);
    };
    while (seconds < run_.seconds && !reached()) {
        if (++steps_ > run_.mostSteps)
            return Problems::one(Fault::Input, "more than " + std::to_string(run_.mostSteps) + " steps",
                                 "a shorter time, fewer cells or a wider tolerance");
        const double left = corner[nextCorner] - seconds;
        const double tried = step;
        step = step >= left ? left : step > left / 2 ? left / 2 : step;
        const double weight = kGamma * step;
        for (std::size_t a = 0; a < factors_.size(); ++a)
            factors_[a].set(weight, grid_.volume, flow_.join(a), flow_.leaves(a), now_.perHeat);
        for (std::size_t a = 0; a < factors_.size(); ++a) {
            goes_[a].clear();
            for (const std::size_t cell : flow_.leavers(a))
                goes_[a].emplace_back(cell, flow_.leaves(a)[cell] * now_.perHeat[cell]);
        }
        const double gone1 = solveStage(now_.watts, weight, first_);
        for (std::size_t c = 0; c < n_; ++c) trial_[c] = heat_[c] + step * first_[c];
        flow_.look(trial_, seconds + step, mid_, false);
        for (std::size_t c = 0; c < n_; ++c) mid_.watts[c] -= 2 * grid_.volume[c] * first_[c];
        const double gone2 = solveStage(mid_.watts, weight, second_);
        for (std::size_t c = 0; c < n_; ++c) trial_[c] = heat_[c] + step * (1.5 * first_[c] + 0.5 * second_[c]);
        flow_.look(trial_, seconds + step, next_, true);
        rates(next_, rateAfter_);
        const double off = error(step);
        const double grow = std::clamp(0.85 * std::cbrt(run_.tolerance / std::max(off, 1e-12)), 0.2, 2.5);
        if (!(off <= run_.tolerance)) {
            ++refused_;
            step *= std::min(grow, 0.7);
            if (!(step > 1e-7)) return Problems::one(Fault::Ours, "the conduction solver cannot go on");
            flow_.look(heat_, seconds, now_, true); // the factors' parts were overwritten
            continue;
        }
        in_ += step / 2 * (now_.in - gone1 + mid_.in - gone2);
        std::swap(heat_, trial_);
        evaporated_ += moisture_.settle(step, heat_, now_.faceSteam, mid_.faceSteam);
        std::swap(now_, next_);
        std::swap(rateBefore_, rate_);
        std::swap(rate_, rateAfter_);
        stepBefore_ = step;
        if (step >= left) {
            seconds = corner[nextCorner++];
        } else {
            seconds += step;
        }
        samples.push_back(sampleNow(seconds));
        step = grow >= 1 ? std::max(step * grow, tried) : step * grow; // a corner's short step is no measure
    }
    return told(samples);
}

} // namespace

Result<History> conduct(const Body& body, const Stretch& run) {
    const Grid& grid = body.grid;
    if (!above(run.seconds, 0, 30 * 86400.0))
        return Problems::one(Fault::Input, "a time of " + std::to_string(run.seconds) + " s",
                             "more than 0, at most 30 days");
    if (!within(run.tolerance, 1e-6, 1))
        return Problems::one(Fault::Input, "a tolerance of " + std::to_string(run.tolerance) + " K", "0.000001 to 1 K");
    if (!above(run.every, 0, 1e9) || run.seconds / run.every > 100'000)
        return Problems::one(Fault::Input, "a point every " + std::to_string(run.every) + " s",
                             "at most 100,000 points");
    if (grid.cells() == 0) return Problems::one(Fault::Input, "a body without cells", "a shape");
    for (const std::uint8_t material : grid.material)
        if (material >= body.materials.size())
            return Problems::one(Fault::Input, "material " + std::to_string(material),
                                 "one of the " + std::to_string(body.materials.size()) + " given");
    for (const Grid::Outside& face : grid.outside)
        if (static_cast<std::size_t>(face.side) >= body.sides.size())
            return Problems::one(Fault::Input, "no side " + std::to_string(face.side), "a boundary for each side");
    for (const Boundary& side : body.sides)
        if (auto good = checked(side); !good) return good.problems();
    for (const Probe& probe : run.probes)
        for (const auto& [cell, weight] : probe.weights)
            if (cell >= grid.cells() || !std::isfinite(weight))
                return Problems::one(Fault::Input, "a probe outside the body", "one made by its grid");
    return Solver(body, run).solve();
}

} // namespace piewright::thermal
