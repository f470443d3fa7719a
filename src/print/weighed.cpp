#include "print/weighed.h"

#include "print/sheet.h"

namespace piewright::print {

std::string asText(const day::WeighedOut& weighed, int width) {
    // A plan of nothing but weights: its cards print as any plan's do.
    day::Plan plan;
    plan.house = weighed.what;
    plan.zone = "UTC";
    plan.pieces = weighed.pieces;
    plan.cards = weighed.cards;
    plan.needed = weighed.needed;
    return asText(plan, {false, true, false}, width);
}

} // namespace piewright::print
