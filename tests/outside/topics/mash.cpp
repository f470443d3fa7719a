#include "formula/weigh.h"
#include "outside/topics.h"

namespace piewright::outside {

Answer mash(const Case& asked, const Foods& /*foods*/) {
    if (asked.quantity != "published mash recipe" || asked.unit != "g")
        return NotCovered{"not the weight of a recipe's mash"};
    book::Formula recipe;
    recipe.basis = book::Basis::Weight;
    for (const auto& [key, text] : asked.inputs.all()) {
        const auto weight = numberIn(text);
        if (!key.ends_with("_g") || !weight || *weight <= 0 || *weight > 1e6)
            return NotCovered{"\"" + key + "\" is no weight of a line"};
        book::Line line;
        line.of = StuffId(key.substr(0, key.size() - 2));
        line.weight = Mass::nearest(*weight * 1e3);
        recipe.lines.push_back(line);
    }
    if (recipe.lines.empty()) return NotCovered{"no lines"};
    const Mass out = formula::outputFor(recipe, formula::writtenInput(recipe));
    return inGrams(formula::weigh(recipe, out, milligrams(1)).out);
}

} // namespace piewright::outside
