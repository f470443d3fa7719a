#include "outside/topics.h"

#include <algorithm>
#include <array>

namespace piewright::outside {

std::span<const Topic> topics() {
    static constexpr std::array<Topic, 9> kTopics{{{"density", pasteDensity},
                                                   {"formula", formulaLayers},
                                                   {"gelatine", gelatine},
                                                   {"lining", lining},
                                                   {"mash", mash},
                                                   {"meat-yield", meatYield},
                                                   {"paste-temperature", pasteTemperature},
                                                   {"preparation-loss", preparationLoss},
                                                   {"relaxation", relaxation}}};
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
