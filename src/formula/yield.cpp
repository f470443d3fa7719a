#include "formula/yield.h"

#include <cassert>

namespace piewright::formula {

Share keptInCooking(double raw, double cooked) {
    assert(raw > 0 && cooked > 0);
    return Share::nearest(1e6 * raw / cooked);
}

Share shareOfInput(const book::Formula& formula, const book::StuffOrFormula& of) {
    std::int64_t whole = 0;
    std::int64_t part = 0;
    for (const book::Line& line : formula.lines) {
        const std::int64_t lines = formula.basis == book::Basis::Flour ? line.percent.raw() : line.weight.raw();
        whole += lines;
        if (line.of == of) part += lines;
    }
    assert(whole > 0);
    return Share::nearest(1e6 * static_cast<double>(part) / static_cast<double>(whole));
}

} // namespace piewright::formula
