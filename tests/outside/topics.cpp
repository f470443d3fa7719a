#include "outside/topics.h"

#include <algorithm>
#include <array>

namespace piewright::outside {

std::span<const Topic> topics() {
    static constexpr std::array<Topic, 46> kTopics{{
        {"accumulated-lethality", accumulatedLethality},
        {"bake-loss", bakeLoss},
        {"benchmark", lethalityBenchmark},
        {"chilled-holding", chilledHolding},
        {"component", componentProperty},
        {"cooling", coolingRule},
        {"cooling-layer", coolingLayer},
        {"core-survey", coreSurvey},
        {"d-value", decimalReduction},
        {"density", pasteDensity},
        {"ecoli-combination", ecoliCombination},
        {"equivalent-time", equivalentTime},
        {"finite-cylinder", finiteCylinder},
        {"finite-cylinder-time", finiteCylinder},
        {"first-coefficient", conductionRoot},
        {"first-root", conductionRoot},
        {"food", foodProperty},
        {"formula", formulaLayers},
        {"fsa-combination", fsaCombination},
        {"fsa-implied-z", zValue},
        {"fsis-appendix-a", appendixA},
        {"fsis-implied-z", zValue},
        {"gelatine", gelatine},
        {"heat-transfer-coefficient", ovenCoefficient},
        {"higher-root", conductionRoot},
        {"hot-holding", hotHolding},
        {"latent-heat", latentHeat},
        {"lethality-at-centre", finiteCylinder},
        {"lining", lining},
        {"lumped", stirredKettle},
        {"mash", mash},
        {"measured-equivalent", measuredEquivalent},
        {"meat-yield", meatYield},
        {"nonproteolytic-c-botulinum", nonProteolytic},
        {"paste-temperature", pasteTemperature},
        {"preparation-loss", preparationLoss},
        {"published-example", publishedCooling},
        {"radiation", ovenRadiation},
        {"reheating", reheating},
        {"relaxation", relaxation},
        {"semi-infinite", halfSpace},
        {"steady-layers", steadyLayers},
        {"theta", conductionTheta},
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
