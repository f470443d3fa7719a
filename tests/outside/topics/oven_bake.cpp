#include "outside/topics.h"
#include "thermal/bake_loss.h"
#include "thermal/heat_transfer.h"
#include "thermal/water.h"

#include <array>

namespace piewright::outside {

namespace {

bool says(const Case& asked, std::string_view words) { return asked.quantity.find(words) != std::string::npos; }

/// `186..225`, its middle
std::optional<double> middleOf(const std::string& text) {
    const std::size_t dots = text.find("..");
    if (dots == std::string::npos) return std::nullopt;
    const auto least = numberIn(std::string_view(text).substr(0, dots));
    const auto most = numberIn(std::string_view(text).substr(dots + 2));
    if (!least || !most) return std::nullopt;
    return (*least + *most) / 2;
}

} // namespace

/// Published bands: what the program would take for such an oven, a body of 100 mm with a surface near 100 C.
Answer ovenCoefficient(const Case& asked, const Foods&) {
    if (asked.unit != "W/(m2 K)") return NotCovered{"not in W/(m2 K)"};
    constexpr double kLength = 0.1;
    constexpr double kSurface = 100;
    if (says(asked, "convection+radiation") && asked.inputs.only({"T_oven_C", "air_m_s", "humidity_kg_kg"})) {
        const auto oven = middleOf(asked.inputs.text("T_oven_C"));
        const auto air = middleOf(asked.inputs.text("air_m_s"));
        if (!oven || !air) return NotCovered{"wants a band of temperatures and of air speeds"};
        return thermal::radiationCoefficient(*oven, kSurface, thermal::kMoistSurfaceEmissivity) +
               thermal::forcedConvection(*oven, *air, kLength);
    }
    if (says(asked, "fan ovens") && says(asked, "1-10 m/s") && asked.inputs.all().empty())
        return thermal::forcedConvection(200, 5.5, kLength, thermal::kFanTurbulence);
    if (says(asked, "natural convection") && asked.inputs.all().empty())
        return thermal::naturalConvection(200 - kSurface, kLength);
    return NotCovered{"an oven not known here"};
}

Answer ovenRadiation(const Case& asked, const Foods&) {
    const auto given = asked.inputs.exactly({"T_wall_C", "T_surface_C", "emissivity"});
    if (!given || asked.unit != "W/(m2 K)") return NotCovered{"wants two temperatures and an emissivity"};
    const auto [wall, surface, emissivity] = *given;
    return thermal::radiationCoefficient(wall, surface, emissivity);
}

Answer latentHeat(const Case& asked, const Foods&) {
    if (const auto t = asked.inputs.exactly({"T_C"}); t && asked.unit == "kJ/kg" && (*t)[0] >= 0 && (*t)[0] <= 110)
        return thermal::latentHeat((*t)[0]) / 1e3;
    if (const auto given = asked.inputs.exactly({"pie_g", "loss_pct", "hfg_kJ_kg"}); given && asked.unit == "kJ") {
        const auto [grams, percent, latent] = *given;
        return thermal::heatOfLoss(grams / 1e3, percent / 100, latent * 1e3) / 1e3;
    }
    return NotCovered{"keys not known here"};
}

Answer bakeLoss(const Case& asked, const Foods&) {
    if (asked.unit == "%" && asked.inputs.only({"raw", "baked", "water_raw", "water_baked"})) {
        const auto raw = asked.inputs.number("water_raw");
        const auto baked = asked.inputs.number("water_baked");
        if (raw && baked && *raw < 100 && *baked < 100) return 100 * thermal::lossFromWater(*raw / 100, *baked / 100);
    }
    if (const auto bread = asked.inputs.exactly({"bread_g"}); bread && asked.unit == "g")
        return thermal::doughForBread((*bread)[0]);
    constexpr std::array<std::string_view, 5> kKnown{"shortcrust", "flaky", "filo", "bread", "biscuit"};
    for (const std::string_view id : kKnown)
        if (asked.unit == "%" && says(asked, id)) {
            const thermal::BakeLoss* loss = thermal::bakeLoss(id);
            return loss ? Answer(100 * (loss->least + loss->most) / 2) : NotCovered{"not carried"};
        }
    return NotCovered{"a loss not known here"};
}

} // namespace piewright::outside
