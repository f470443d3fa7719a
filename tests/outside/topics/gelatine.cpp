#include "formula/yield.h"
#include "outside/topics.h"

namespace piewright::outside {

Answer gelatine(const Case& asked, const Foods& /*foods*/) {
    if (!asked.quantity.starts_with("Bloom test concentration") || asked.unit != "% w/w")
        return NotCovered{"not the concentration of the Bloom test"};
    // How the test is read, not how its jelly is made.
    if (!asked.inputs.only({"T_C", "hours", "plunger_mm"}))
        return NotCovered{"a key that the test's jelly doesn't have"};
    // BS 757: 7.5 g of gelatine in 105 g of water [from memory; the makers' page gives the 6.667 %].
    book::Formula jelly;
    jelly.basis = book::Basis::Weight;
    book::Line powder;
    powder.of = StuffId("gelatine");
    powder.weight = milligrams(7'500);
    book::Line water;
    water.of = StuffId("water");
    water.weight = grams(105);
    jelly.lines = {powder, water};
    return 100 * asFraction(formula::shareOfInput(jelly, powder.of));
}

} // namespace piewright::outside
