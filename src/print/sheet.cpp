#include "print/sheet.h"

#include "print/cautions.h"
#include "print/paper_sheet.h"

#include <exception>

namespace piewright::print {

namespace {

/// Lines that the plan takes on paper, about.
std::size_t linesOf(const day::Plan& plan) {
    std::size_t lines = plan.amounts.size() + plan.pieces.size() + plan.loads.size() + plan.shifts.size() +
                        plan.before.size() + plan.needed.size() + plan.surplus.size() + plan.assumptions.size() +
                        plan.warnings.size() + plan.open.size();
    for (const day::PlannedAmount& amount : plan.amounts) lines += amount.waves.size() + amount.because.size();
    for (const day::Task& task : plan.tasks) lines += 1 + task.hands.size() + task.gear.size();
    for (const day::WeighCard& card : plan.cards)
        lines += card.lines.size() + card.method.size() + card.yields.size() + card.lost.size() + card.allergens.size();
    for (const day::DeckLoad& load : plan.loads) lines += load.contents.size();
    return lines;
}

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
    // Far beyond any day of any house; a file that claims more would keep the printer busy for hours.
    constexpr std::size_t kMostLines = 10'000;
    if (const std::size_t lines = linesOf(plan); lines > kMostLines)
        return Problems::one(Fault::Input, "the plan has " + std::to_string(lines) + " lines to print",
                             "at most " + std::to_string(kMostLines));
    int pages = 0;
    const auto counted = drawn(plan, which, 0, pages);
    if (!counted) return counted;
    return drawn(plan, which, pages, pages);
}

} // namespace piewright::print
