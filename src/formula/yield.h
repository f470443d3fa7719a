// What a balance says about a yield or a strength, where nobody has weighed it.
#pragma once

#include "book/formula.h"

namespace piewright::formula {

/// Weight kept in cooking, from a constituent that stays in the food (protein, or all solids): what 100 g of it hold
/// raw and cooked, in any one unit, both positive. kept = raw / cooked. An estimate: what goes into the liquor is
/// neglected and the two samples are different animals; expect +-5 points, and weigh the kettle. Source: mass balance
/// on published compositions [outside cases, topic meat-yield].
[[nodiscard]] Share keptInCooking(double raw, double cooked);

/// Part of a batch's input that is this line's stuff or formula, all its lines together.
[[nodiscard]] Share shareOfInput(const book::Formula& formula, const book::StuffOrFormula& of);

} // namespace piewright::formula
