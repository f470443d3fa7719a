#include "outside/topics.h"
#include "pastry/layers.h"

#include <array>

namespace piewright::outside {

namespace {

/// `three-folds` is 3.
std::optional<int> foldedInto(std::string_view quantity) {
    constexpr std::array<std::pair<std::string_view, int>, 5> kWords{
        {{"two-fold", 2}, {"half-fold", 2}, {"three-fold", 3}, {"four-fold", 4}, {"book-fold", 4}}};
    for (const auto& [word, into] : kWords)
        if (quantity.find(word) != std::string_view::npos) return into;
    return std::nullopt;
}

} // namespace

Answer formulaLayers(const Case& asked, const Foods& /*foods*/) {
    const auto into = foldedInto(asked.quantity);
    if (!asked.quantity.starts_with("layers after") || !into || asked.unit != "layers")
        return NotCovered{"not a number of layers after folds in two, three or four"};
    const auto in = asked.inputs.exactly({"folds", "start_layers"});
    if (!in) return NotCovered{"wants folds and start_layers"};
    const auto [folds, start] = *in;
    if (folds < 0 || folds > 100 || start < 1 || folds != static_cast<int>(folds)) return NotCovered{"out of range"};
    const auto layers = pastry::layersAfter(static_cast<int>(folds), static_cast<std::int64_t>(start), *into);
    if (!layers) return NotCovered{"more layers than can be counted"};
    return static_cast<double>(*layers);
}

} // namespace piewright::outside
