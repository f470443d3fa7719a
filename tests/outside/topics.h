// What answers a case: one handler for each topic, calling the project's own functions and computing nothing itself.
// A new topic is one file in topics/, one declaration and one line in topics.cpp.
#pragma once

#include "outside/case.h"
#include "outside/foods.h"

#include <span>
#include <string>
#include <string_view>
#include <variant>

namespace piewright::outside {

/// Why a case is not answered. Wherever a handler doesn't know a key, a quantity or a unit it says so and guesses
/// nothing.
struct NotCovered {
    std::string why;
};

using Answer = std::variant<NotCovered, double, std::string>;
using Handler = Answer (*)(const Case& asked, const Foods& foods);

struct Topic {
    std::string_view name;
    Handler answer;
};

[[nodiscard]] std::span<const Topic> topics();

/// By the topic's handler, if there is one.
[[nodiscard]] Answer answerTo(const Case& asked, const Foods& foods);

Answer accumulatedLethality(const Case& asked, const Foods& foods);
Answer appendixA(const Case& asked, const Foods& foods);
Answer bakeLoss(const Case& asked, const Foods& foods);
Answer chilledHolding(const Case& asked, const Foods& foods);
Answer conductionRoot(const Case& asked, const Foods& foods);
Answer conductionTheta(const Case& asked, const Foods& foods);
Answer finiteCylinder(const Case& asked, const Foods& foods);
Answer coolingLayer(const Case& asked, const Foods& foods);
Answer publishedCooling(const Case& asked, const Foods& foods);
Answer stirredKettle(const Case& asked, const Foods& foods);
Answer halfSpace(const Case& asked, const Foods& foods);
Answer steadyLayers(const Case& asked, const Foods& foods);
Answer componentProperty(const Case& asked, const Foods& foods);
Answer coolingRule(const Case& asked, const Foods& foods);
Answer coreSurvey(const Case& asked, const Foods& foods);
Answer decimalReduction(const Case& asked, const Foods& foods);
Answer ecoliCombination(const Case& asked, const Foods& foods);
Answer equivalentTime(const Case& asked, const Foods& foods);
Answer foodCode(const Case& asked, const Foods& foods);
Answer foodProperty(const Case& asked, const Foods& foods);
Answer formulaLayers(const Case& asked, const Foods& foods);
Answer fsaCombination(const Case& asked, const Foods& foods);
Answer gelatine(const Case& asked, const Foods& foods);
Answer hotHolding(const Case& asked, const Foods& foods);
Answer latentHeat(const Case& asked, const Foods& foods);
Answer lethalityBenchmark(const Case& asked, const Foods& foods);
Answer lining(const Case& asked, const Foods& foods);
Answer mash(const Case& asked, const Foods& foods);
Answer measuredEquivalent(const Case& asked, const Foods& foods);
Answer meatYield(const Case& asked, const Foods& foods);
Answer nonProteolytic(const Case& asked, const Foods& foods);
Answer ovenCoefficient(const Case& asked, const Foods& foods);
Answer ovenRadiation(const Case& asked, const Foods& foods);
Answer pasteDensity(const Case& asked, const Foods& foods);
Answer pasteTemperature(const Case& asked, const Foods& foods);
Answer preparationLoss(const Case& asked, const Foods& foods);
Answer reheating(const Case& asked, const Foods& foods);
Answer relaxation(const Case& asked, const Foods& foods);
Answer timeControl(const Case& asked, const Foods& foods);
Answer zValue(const Case& asked, const Foods& foods);

} // namespace piewright::outside
