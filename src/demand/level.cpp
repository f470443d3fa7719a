#include "demand/level.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

namespace piewright::demand {

namespace {

constexpr double kPriorDays = 2;
constexpr double kFarthest = 4;
constexpr int kMeanRounds = 12;
constexpr std::size_t kScoredDays = 156; // 26 weeks of a six-day week

/// Sold against exposure, where a sold-out day counts as at least the mean itself.
double meanLevel(std::span<const LevelDay> days) {
    double mean = 0;
    for (int round = 0; round < kMeanRounds; ++round) {
        double sold = 0;
        double exposure = 0;
        for (const LevelDay& day : days) {
            sold += day.atLeast ? std::max(day.sold, mean * day.exposure) : day.sold;
            exposure += day.exposure;
        }
        mean = exposure > 0 ? sold / exposure : 0;
    }
    return mean;
}

} // namespace

std::vector<double> levels(std::span<const LevelDay> days, double keep) {
    assert(keep > 0 && keep <= 1);
    const double mean = meanLevel(days);
    std::vector<double> result{mean};
    result.reserve(days.size() + 1);
    double a = 0;
    double b = 0;
    for (const LevelDay& day : days) {
        const double expected = result.back() * day.exposure;
        double counted = std::min(day.sold, kFarthest * expected + kFarthest);
        if (day.atLeast) counted = std::max(counted, expected);
        a = keep * a + counted;
        b = keep * b + day.exposure;
        const double level = (a + kPriorDays * mean) / (b + kPriorDays);
        result.push_back(std::clamp(level, mean / kFarthest, mean * kFarthest));
    }
    return result;
}

double bestKeep(std::span<const LevelDay> days, std::size_t lead) {
    assert(lead >= 1);
    constexpr std::array kKeeps{1.0, 0.99, 0.97, 0.93, 0.88, 0.80};
    const std::size_t first = std::max(lead, days.size() > kScoredDays ? days.size() - kScoredDays : std::size_t{14});
    double best = kKeeps.front();
    double bestError = -1;
    for (const double keep : kKeeps) {
        const std::vector<double> level = levels(days, keep);
        double error = 0;
        for (std::size_t i = first; i < days.size(); ++i)
            if (!days[i].atLeast) error += std::abs(days[i].sold - level[i + 1 - lead] * days[i].exposure);
        if (bestError < 0 || error < bestError * 0.99) {
            best = keep;
            bestError = error;
        }
    }
    return best;
}

} // namespace piewright::demand
