#include "thermal/conduction.h"

#include "thermal/water.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace piewright::thermal {

namespace {

constexpr double kGamma = 0.29289321881345254; // 1 - 1/sqrt(2): second order and strongly damped
constexpr double kErrorShare = 0.06;           // of step^3 x third derivative; 0.040 without the factoring
constexpr double kFirstRise = 0.05;            // K that the first step may change the quickest cell by
constexpr double kSteamInCrust = 5.6e-8;       // kg/(s m kPa): 0.3 of steam's diffusion in air; an assumption

using Cells = std::vector<double>;

/// One direction's implicit factor, V (I - step gamma A), as forward and backward substitution over all its lines.
class Factor {
  public:
    Factor(const Grid& grid, int axis)
        : n_(grid.count(axis)), stride_(grid.stride(axis)), cells_(grid.cells()), lower_(cells_), inverse_(cells_),
          upper_(cells_), line_(stride_ == 1 ? cells_ : 0) {}

    /// `join` W/K across the face to the next cell, `leaves` W/K to the outside, `perHeat` K m3/J.
    void set(double weight, const Cells& volume, const Cells& join, const Cells& leaves, const Cells& perHeat) {
        eachPlace([&](std::size_t i, std::size_t cell, std::size_t at, std::size_t step) {
            const double behind = i > 0 ? join[cell - stride_] : 0;
            const double ahead = i + 1 < n_ ? join[cell] : 0;
            const double diagonal = volume[cell] + weight * perHeat[cell] * (behind + ahead + leaves[cell]);
            const double low = i > 0 ? -weight * behind * perHeat[cell - stride_] : 0;
            const double up = i + 1 < n_ ? -weight * ahead * perHeat[cell + stride_] : 0;
            const double inverse = 1 / (diagonal - (i > 0 ? low * upper_[at - step] : 0));
            lower_[at] = low;
            inverse_[at] = inverse;
            upper_[at] = up * inverse;
        });
    }

    /// Solves for `out`; `in` is in units of volume x heat. They may be the same.
    void solve(const Cells& in, Cells& out) {
        if (stride_ == 1)
            acrossLines(in, out);
        else
            alongPlanes(in, out);
    }

  private:
    /// Places in the order of elimination. The quick direction is kept turned, so that neighbours in memory belong to
    /// different lines and the processor works on several at once.
    template <class Do> void eachPlace(Do perform) const {
        if (stride_ == 1) {
            const std::size_t lines = cells_ / n_;
            for (std::size_t i = 0; i < n_; ++i)
                for (std::size_t j = 0; j < lines; ++j) perform(i, i + j * n_, i * lines + j, lines);
            return;
        }
        const std::size_t plane = stride_ * n_;
        for (std::size_t base = 0; base < cells_; base += plane)
            for (std::size_t i = 0; i < n_; ++i)
                for (std::size_t q = 0; q < stride_; ++q) {
                    const std::size_t cell = base + i * stride_ + q;
                    perform(i, cell, cell, stride_);
                }
    }

    void acrossLines(const Cells& in, Cells& out) {
        const std::size_t lines = cells_ / n_;
        double* const x = line_.data();
        for (std::size_t j = 0; j < lines; ++j) x[j] = in[j * n_] * inverse_[j];
        for (std::size_t i = 1; i < n_; ++i)
            for (std::size_t j = 0; j < lines; ++j) {
                const std::size_t at = i * lines + j;
                x[at] = (in[i + j * n_] - lower_[at] * x[at - lines]) * inverse_[at];
            }
        for (std::size_t j = 0; j < lines; ++j) out[n_ - 1 + j * n_] = x[(n_ - 1) * lines + j];
        for (std::size_t i = n_ - 1; i-- > 0;)
            for (std::size_t j = 0; j < lines; ++j) {
                const std::size_t at = i * lines + j;
                x[at] -= upper_[at] * x[at + lines];
                out[i + j * n_] = x[at];
            }
    }

    void alongPlanes(const Cells& in, Cells& out) {
        const std::size_t plane = stride_ * n_;
        for (std::size_t base = 0; base < cells_; base += plane) {
            for (std::size_t c = base; c < base + stride_; ++c) out[c] = in[c] * inverse_[c];
            for (std::size_t c = base + stride_; c < base + plane; ++c)
                out[c] = (in[c] - lower_[c] * out[c - stride_]) * inverse_[c];
            for (std::size_t c = base + plane - stride_; c-- > base;) out[c] -= upper_[c] * out[c + stride_];
        }
    }

    std::size_t n_;
    std::size_t stride_;
    std::size_t cells_;
    Cells lower_;
    Cells inverse_;
    Cells upper_; // times the inverse
    Cells line_;
};

/// A stretch of cells of one material.
struct Segment {
    std::size_t begin;
    std::size_t end;
    const Material* material;
};

/// What one look at the cells gives.
struct Look {
    Cells degC;
    Cells perHeat; // K m3/J
    Cells conductivity;
    Cells watts;      // into each cell
    double in = 0;    // W through all sides
    double steam = 0; // kg/s from moist surfaces

    explicit Look(std::size_t cells) : degC(cells), perHeat(cells), conductivity(cells), watts(cells) {}
};

/// How far a moist face has dried: cells from the surface inwards, and how thick they are.
struct Dried {
    std::size_t cell = 0; // where the water now comes from
    double depth = 0;     // m of dry matter over it
    bool atSurface = true;
    bool any = true; // some is left
};

class Solver {
  public:
    Solver(const Body& body, const Stretch& run)
        : body_(body), grid_(body.grid), run_(run), n_(grid_.cells()), now_(n_), mid_(n_), next_(n_), heat_(n_),
          trial_(n_), first_(n_), second_(n_), rate_(n_), rateBefore_(n_), rateAfter_(n_), rhs_(n_),
          surface_(grid_.outside.size()), dried_(grid_.outside.size()) {
        for (int a = 0; a < 3; ++a) {
            if (grid_.count(a) < 2) continue;
            axes_.push_back(a);
            factors_.emplace_back(grid_, a);
            join_.emplace_back(n_, 0.0);
            leaves_.emplace_back(n_, 0.0);
            leavers_.emplace_back();
            goes_.emplace_back();
        }
        for (std::size_t c = 0; c < n_; ++c) {
            const Material* material = &body.materials[grid_.material[c]];
            heat_[c] = material->heatAt(grid_.start[c]);
            if (stretches_.empty() || stretches_.back().material != material) stretches_.push_back({c, c, material});
            stretches_.back().end = c + 1;
            dries_ = dries_ || material->dries();
        }
        if (dries_) {
            most_ = heat_;
            lost_.assign(n_, 0);
        }
        for (std::size_t f = 0; f < surface_.size(); ++f) {
            surface_[f] = grid_.start[grid_.outside[f].cell];
            dried_[f] = {grid_.outside[f].cell, 0, true, true};
        }
        start_ = heat_;
    }

    Result<History> solve();

  private:
    struct Sample {
        double seconds;
        std::vector<double> values; // coldest, hottest, probes, surfaces
        std::vector<double> rates;  // of the first ones
        double heatIn;
    };

    [[nodiscard]] std::size_t axisIndex(int axis) const {
        return static_cast<std::size_t>(std::find(axes_.begin(), axes_.end(), axis) - axes_.begin());
    }
    [[nodiscard]] Material::State stateOf(const Material& material, std::size_t cell, double heat) const;
    void look(const Cells& heat, double seconds, Look& seen, bool forFactor);
    void slanted(Look& seen) const;
    [[nodiscard]] double aside(const Grid::Outside& face, const Look& seen) const;
    void sides(double seconds, Look& seen, bool forFactor);
    double solveStage(const Cells& watts, double weight, Cells& out);
    [[nodiscard]] double error(double step) const;
    void settle(double step);
    void takeFrom(std::size_t f, double kilograms);
    void drawBack(std::size_t f);
    [[nodiscard]] double boiled(std::size_t cell) const;
    [[nodiscard]] Sample sampleNow(double seconds) const;
    Result<History> told(const std::vector<Sample>& samples) const;
    [[nodiscard]] std::vector<double> corners() const;

    const Body& body_;
    const Grid& grid_;
    const Stretch& run_;
    std::size_t n_;
    std::vector<int> axes_;
    std::vector<Factor> factors_;
    std::vector<Cells> join_;                                       // W/K, by axes_
    std::vector<Cells> leaves_;                                     // W/K to the outside, by axes_
    std::vector<std::vector<std::size_t>> leavers_;                 // cells where that is not 0
    std::vector<std::vector<std::pair<std::size_t, double>>> goes_; // and what it was when the factors were made
    std::vector<Segment> stretches_;
    Look now_;
    Look mid_;
    Look next_;
    Cells heat_; // J/m3
    Cells trial_;
    Cells first_;
    Cells second_;
    Cells rate_; // J/(m3 s) now, one step before, one after
    Cells rateBefore_;
    Cells rateAfter_;
    Cells rhs_;
    Cells start_;
    bool dries_ = false;
    Cells most_;                  // the most heat each drying cell has held
    Cells lost_;                  // kg/m3 that evaporated from it below boiling
    std::vector<double> surface_; // degC of each outside face
    std::vector<Dried> dried_;
    std::vector<double> faceSteam_;    // kg/s of each outside face at the last look
    std::vector<double> steamBefore_;  // at the start of the step
    std::vector<double> steamBetween_; // at its second stage
    double in_ = 0;
    double evaporated_ = 0;
    double stepBefore_ = 0;
    int steps_ = 0;
    int refused_ = 0;
};

/// A cell that lost water below boiling has less to boil off.
Material::State Solver::stateOf(const Material& material, std::size_t cell, double heat) const {
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

void Solver::look(const Cells& heat, double seconds, Look& seen, bool forFactor) {
    for (const Segment& stretch : stretches_) {
        const Material& material = *stretch.material;
        if (material.isConstant()) {
            const Material::State one = material.at(1);
            for (std::size_t c = stretch.begin; c < stretch.end; ++c) {
                seen.degC[c] = heat[c] * one.perHeat;
                seen.perHeat[c] = one.perHeat;
                seen.conductivity[c] = one.conductivity;
            }
        } else if (!material.dries()) {
            for (std::size_t c = stretch.begin; c < stretch.end; ++c) {
                const Material::State state = material.at(heat[c]);
                seen.degC[c] = state.degC;
                seen.perHeat[c] = state.perHeat;
                seen.conductivity[c] = state.conductivity;
            }
        } else {
            for (std::size_t c = stretch.begin; c < stretch.end; ++c) {
                const Material::State state = stateOf(material, c, heat[c]);
                seen.degC[c] = state.degC;
                seen.perHeat[c] = state.perHeat;
                seen.conductivity[c] = state.conductivity;
            }
        }
    }
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
            for (std::size_t base = 0; base < n_; base += plane) stretch(base, base + plane - 1);
        else
            for (std::size_t base = 0; base < n_; base += plane)
                for (std::size_t row = base; row < base + plane - stride; row += stride) stretch(row, row + stride);
    }
    if (!grid_.across.empty()) slanted(seen);
    sides(seconds, seen, forFactor);
}

/// What flows along slanted faces because the lines of the grid lean: explicit, as the factors know only straight ones.
void Solver::slanted(Look& seen) const {
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

double Solver::aside(const Grid::Outside& face, const Look& seen) const {
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

void Solver::sides(double seconds, Look& seen, bool forFactor) {
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
    seen.steam = 0;
    faceSteam_.assign(grid_.outside.size(), 0);
    for (std::size_t f = 0; f < grid_.outside.size(); ++f) {
        const Grid::Outside& face = grid_.outside[f];
        const auto side = static_cast<std::size_t>(face.side);
        Surroundings outside = around[side];
        const Boundary& boundary = body_.sides[side];
        const bool moist = boundary.moist && boundary.convection > 0 && dried_[f].any;
        const double k = evaporationCoefficient(boundary.convection);
        const Dried& dried = dried_[f];
        if (moist && dried.atSurface)
            outside.evaporation = dried.depth > 0 ? 1 / (1 / k + dried.depth / kSteamInCrust) : k;
        const double inside = seen.conductivity[face.cell] * face.inward / face.area;
        const SurfaceFlow flow = surfaceFlow(outside, inside, seen.degC[face.cell], aside(face, seen), surface_[f]);
        surface_[f] = flow.degC;
        seen.watts[face.cell] += flow.heat * face.area;
        seen.in += flow.heat * face.area;
        faceSteam_[f] = flow.steam * face.area;
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
                faceSteam_[f] = steam;
                leave(axis, dried.cell, heat / over * (saturationPressure(t + 0.5) - saturationPressure(t - 0.5)));
            }
        }
        seen.steam += faceSteam_[f];
    }
}

/// (I - weight A) out = watts / volume, one direction after the other. Returns the W that go out by the factors' own
/// share of the sides, to be counted with what flows in.
double Solver::solveStage(const Cells& watts, double weight, Cells& out) {
    double gone = 0;
    for (std::size_t a = 0; a < axes_.size(); ++a) {
        if (a == 0) {
            factors_[a].solve(watts, out);
        } else {
            for (std::size_t c = 0; c < n_; ++c) rhs_[c] = out[c] * grid_.volume[c];
            factors_[a].solve(rhs_, out);
        }
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

/// Takes what evaporated in a step from the cells it came from, and sees how far each moist face is dry now.
void Solver::settle(double step) {
    for (std::size_t f = 0; f < grid_.outside.size(); ++f) {
        const double kilograms = step * (steamBefore_[f] + steamBetween_[f]) / 2;
        evaporated_ += kilograms;
        if (dries_) takeFrom(f, kilograms);
    }
    if (!dries_) return;
    for (std::size_t c = 0; c < n_; ++c) most_[c] = std::max(most_[c], heat_[c]);
    for (std::size_t f = 0; f < grid_.outside.size(); ++f)
        if (body_.sides[static_cast<std::size_t>(grid_.outside[f].side)].moist) drawBack(f);
}

/// From where the wet edge is inwards, no cell giving more than it had: a long step may dry more than one.
void Solver::takeFrom(std::size_t f, double kilograms) {
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

void Solver::drawBack(std::size_t f) {
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

/// kg/m3
double Solver::boiled(std::size_t cell) const {
    const Material& material = body_.materials[grid_.material[cell]];
    const double from = material.boilsFrom();
    if (!material.dries() || most_[cell] <= from) return 0;
    const double share = std::max(0.0, 1 - lost_[cell] / material.removable());
    const double left = (material.boilsTo() - from) * std::max(1e-3, share);
    return share * material.removable() * std::min(1.0, (most_[cell] - from) / left);
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
        sum[side] += grid_.outside[f].area * surface_[f];
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
        if (dries_) made.boiled += grid_.whole * grid_.volume[c] * boiled(c);
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
    look(heat_, 0, now_, true);
    rates(now_, rate_);
    steamBefore_ = faceSteam_;
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
        for (std::size_t a = 0; a < axes_.size(); ++a)
            factors_[a].set(weight, grid_.volume, join_[a], leaves_[a], now_.perHeat);
        for (std::size_t a = 0; a < axes_.size(); ++a) {
            goes_[a].clear();
            for (const std::size_t cell : leavers_[a])
                goes_[a].emplace_back(cell, leaves_[a][cell] * now_.perHeat[cell]);
        }
        const double gone1 = solveStage(now_.watts, weight, first_);
        for (std::size_t c = 0; c < n_; ++c) trial_[c] = heat_[c] + step * first_[c];
        look(trial_, seconds + step, mid_, false);
        steamBetween_ = faceSteam_;
        for (std::size_t c = 0; c < n_; ++c) mid_.watts[c] -= 2 * grid_.volume[c] * first_[c];
        const double gone2 = solveStage(mid_.watts, weight, second_);
        for (std::size_t c = 0; c < n_; ++c) trial_[c] = heat_[c] + step * (1.5 * first_[c] + 0.5 * second_[c]);
        look(trial_, seconds + step, next_, true);
        rates(next_, rateAfter_);
        const double off = error(step);
        const double grow = std::clamp(0.85 * std::cbrt(run_.tolerance / std::max(off, 1e-12)), 0.2, 2.5);
        if (!(off <= run_.tolerance)) {
            ++refused_;
            step *= std::min(grow, 0.7);
            if (!(step > 1e-7)) return Problems::one(Fault::Ours, "the conduction solver cannot go on");
            look(heat_, seconds, now_, true); // the factors' parts were overwritten
            continue;
        }
        in_ += step / 2 * (now_.in - gone1 + mid_.in - gone2);
        std::swap(heat_, trial_);
        settle(step);
        std::swap(now_, next_);
        steamBefore_ = faceSteam_;
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
    if (!(run.seconds > 0 && run.seconds <= 30 * 86400.0))
        return Problems::one(Fault::Input, "a time of " + std::to_string(run.seconds) + " s",
                             "more than 0, at most 30 days");
    if (!(run.tolerance >= 1e-6 && run.tolerance <= 1))
        return Problems::one(Fault::Input, "a tolerance of " + std::to_string(run.tolerance) + " K", "0.000001 to 1 K");
    if (!(run.every > 0 && run.seconds / run.every <= 100'000))
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
