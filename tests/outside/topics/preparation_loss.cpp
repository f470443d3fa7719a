#include "formula/weigh.h"
#include "outside/topics.h"

namespace piewright::outside {

Answer preparationLoss(const Case& asked, const Foods& foods) {
    if (!asked.quantity.starts_with("refuse") || asked.unit != "% of bought weight" || !asked.inputs.only({"food"}))
        return NotCovered{"not the refuse of a food in per cent of its bought weight"};
    const Food* food = foods.find(asked.inputs.text("food"));
    if (!food || !food->refuse || *food->refuse >= 100) return NotCovered{"a food that isn't known, or not its refuse"};
    // A line with that loss: 10 kg go in, and what is bought beyond them is the refuse.
    book::Formula prepared;
    prepared.basis = book::Basis::Weight;
    book::Line line;
    line.of = StuffId("food");
    line.weight = kilograms(1);
    line.prepLoss = Share::nearest(*food->refuse * 1e4);
    prepared.lines = {line};
    const formula::WeighedLine weighed = formula::weigh(prepared, kilograms(10), milligrams(1)).lines.front();
    return 100 * ratio(weighed.bought - weighed.weighed, weighed.bought);
}

} // namespace piewright::outside
