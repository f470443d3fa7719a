#include "print/sheet.h"

#include "print/cautions.h"
#include "print/paper_sheet.h"

#include <exception>

namespace piewright::print {

namespace {

/// Draws everything. The foot says "page n of m", so that it is drawn twice: once to count.
Result<std::string> drawn(const day::Plan& plan, const Sheets& which, int total, int& pages) {
    const Times times(plan);
    Canvas canvas(plan.letterPaper ? kLetter : kA4, plan.house + ", " + times.day(), plan.house,
                  toText(plan.date) + "T00:00:00Z");
    Flow flow(canvas, {plan.house + ", " + times.day(), kFootnote, total});
    if (which.day) paperDay(flow, plan, times);
    if (which.cards) paperCards(flow, plan, times);
    if (which.ovens) paperOvens(flow, plan, times);
    if (canvas.pages() == 0) {
        flow.page(Turn::Upright, "");
        flow.text(times.day() + ": nothing to print.", {14});
    }
    pages = canvas.pages();
    return canvas.finish();
}

} // namespace

Result<std::string> asPdf(const day::Plan& plan, const Sheets& which) {
    int pages = 0;
    const auto counted = drawn(plan, which, 0, pages);
    if (!counted) return counted;
    return drawn(plan, which, pages, pages);
}

} // namespace piewright::print
