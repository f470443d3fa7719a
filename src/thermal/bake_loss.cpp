#include "thermal/bake_loss.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace piewright::thermal {

namespace {

constexpr std::string_view kCofid = "McCance and Widdowson CoFID 2015, description of the baked food";

constexpr std::array<BakeLoss, 5> kLosses{{
    {"shortcrust", "retail shortcrust alone, fully dried (CoFID 11-851 to 11-853)", 0.172, 0.172, kCofid},
    {"flaky", "retail flaky or puff alone (CoFID 11-852 to 11-854)", 0.211, 0.211, kCofid},
    {"filo", "retail filo alone (CoFID 11-855 to 11-856)", 0.236, 0.236, kCofid},
    {"bread", "bread, bake-out loss", 0.098, 0.115, "Baking Business, Baker's Dictionary: bake-out loss"},
    {"biscuit", "biscuit, of its dough", 0.145, 0.165, "Rwanda TVET Board, course on biscuits"},
}};

} // namespace

std::span<const BakeLoss> bakeLosses() { return kLosses; }

const BakeLoss* bakeLoss(std::string_view id) {
    const auto* found = std::find_if(kLosses.begin(), kLosses.end(), [&](const auto& loss) { return loss.id == id; });
    return found == kLosses.end() ? nullptr : found;
}

double doughForBread(double breadGrams) { return 45.654 + 1.0624 * breadGrams; }

double browningGuide(const Curve& surface) {
    constexpr double kGas = 8.314462618;
    const auto rate = [](double degC) { return 42'000 * std::exp(-64'151 / (kGas * (degC + 273.15))); };
    const auto points = surface.points();
    double sum = 0;
    for (std::size_t i = 1; i < points.size(); ++i) { // Simpson on each line: a guide needs no more
        const CurvePoint& a = points[i - 1];
        const CurvePoint& b = points[i];
        sum += (b.seconds - a.seconds) / 6 * (rate(a.degC) + 4 * rate((a.degC + b.degC) / 2) + rate(b.degC));
    }
    return 1 - std::exp(-sum);
}

} // namespace piewright::thermal
