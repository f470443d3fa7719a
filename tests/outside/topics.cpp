#include "outside/topics.h"

#include <algorithm>
#include <array>

namespace piewright::outside {

std::span<const Topic> topics() {
    static constexpr std::array<Topic, 34> kTopics{{
        {"accumulated-lethality", accumulatedLethality},
        {"bake-loss", bakeLoss},
        {"benchmark", lethalityBenchmark},
        {"chilled-holding", chilledHolding},
        {"component", componentProperty},
        {"cooling", coolingRule},
        {"core-survey", coreSurvey},
        {"d-value", decimalReduction},
        {"density", pasteDensity},
        {"ecoli-combination", ecoliCombination},
        {"equivalent-time", equivalentTime},
        {"food", foodProperty},
        {"formula", formulaLayers},
        {"fsa-combination", fsaCombination},
        {"fsa-implied-z", zValue},
        {"fsis-appendix-a", appendixA},
        {"fsis-implied-z", zValue},
        {"gelatine", gelatine},
        {"heat-transfer-coefficient", ovenCoefficient},
        {"hot-holding", hotHolding},
        {"latent-heat", latentHeat},
        {"lining", lining},
        {"mash", mash},
        {"measured-equivalent", measuredEquivalent},
        {"meat-yield", meatYield},
        {"nonproteolytic-c-botulinum", nonProteolytic},
        {"paste-temperature", pasteTemperature},
        {"preparation-loss", preparationLoss},
        {"radiation", ovenRadiation},
        {"reheating", reheating},
        {"relaxation", relaxation},
        {"time-control", timeControl},
        {"us-food-code-3-401.11", foodCode},
        {"z-value", zValue},
    }};
    return kTopics;
}

Answer answerTo(const Case& asked, const Foods& foods) {
    const auto all = topics();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Topic& topic) { return topic.name == asked.topic; });
    if (found == all.end()) return NotCovered{"no handler for topic \"" + asked.topic + "\""};
    return found->answer(asked, foods);
}

} // namespace piewright::outside
