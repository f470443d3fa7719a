#include "print/cautions.h"
#include "print/paper_sheet.h"
#include "print/table.h"

#include <algorithm>

namespace piewright::print {

namespace {

Cell cell(const std::string& text, double points, bool bold = false) { return {{text, {points, bold}, Mark::None}}; }

/// Keeps `72 at 10:55` on one line.
std::string unbroken(std::string text) {
    for (std::size_t at = text.find(' '); at != std::string::npos; at = text.find(' ', at))
        text.replace(at, 1, "\u00A0");
    return text;
}

void masthead(Flow& flow, const day::Plan& plan, const Times& times) {
    flow.text(plan.house + (plan.place.empty() ? "" : ", " + plan.place), {11, false, 0, Align::Left, 2});
    flow.text(times.day(), {24, true});
    flow.text(openingOf(plan, times) + (plan.note.empty() ? "" : ". " + plan.note), {13, false, 0, Align::Left, 3});
    flow.space(2);
    if (!times.zoneKnown())
        flow.caution("The time zone " + plan.zone + " is not known here: all times are in UTC.", {11, true});
    if (const std::string change = clockChangeOf(plan, times); !change.empty()) flow.caution(change, {11, true});
    if (!plan.warnings.empty())
        flow.caution(countOf(static_cast<std::int64_t>(plan.warnings.size()), "warnings") +
                         " at the end of this sheet: look before working by it.",
                     {11, true});
}

void amounts(Flow& flow, const day::Plan& plan, const Times& times) {
    flow.heading("Make");
    if (plan.amounts.empty()) return flow.text("Nothing.", {12});
    Table table({{"", Align::Left, 0, 1},
                 {"make", Align::Right},
                 {"", Align::Left},
                 {"likely wanted", Align::Right},
                 {"ready", Align::Left, 0, 1.4}});
    table.padding = 1;
    for (const day::PlannedAmount& amount : plan.amounts) {
        std::string ready;
        for (const day::PlannedWave& wave : amount.waves)
            ready +=
                (ready.empty() ? "" : "   ") + unbroken(std::to_string(wave.pieces) + " at " + times.clock(wave.ready));
        Cell when = cell(ready, 10.5);
        if (amount.setAside > 0)
            when.push_back({std::to_string(amount.setAside) + " of them for the days after", {10.5}, Mark::None});
        table.add({cell(amount.name, 12.5, true), cell(std::to_string(amount.pieces), 20, true), cell(amount.unit, 8.5),
                   cell(std::to_string(amount.low) + "–" + std::to_string(amount.high), 11), when});
    }
    table.flow(flow);
}

void pieces(Flow& flow, const day::Plan& plan) {
    if (plan.pieces.empty()) return;
    flow.heading("Heads, pieces and gauge");
    Table table({{"", Align::Left, 0, 1, 120},
                 {"heads", Align::Right},
                 {"one head", Align::Right},
                 {"pieces", Align::Right},
                 {"each", Align::Right},
                 {"gauge", Align::Right},
                 {"blank", Align::Right},
                 {"on pie", Align::Right}});
    table.gap = 7;
    table.padding = 1.2;
    constexpr double kSize = 9.5;
    for (const day::PiecesLine& line : plan.pieces)
        table.add({{{line.part, {kSize, true}, Mark::None}, {line.good, {kSize - 1.5}, Mark::None}},
                   cell(unbroken(std::to_string(line.heads) + " of " + std::to_string(line.perHead)), kSize, true),
                   cell(unbroken(handText(line.head)), kSize, true),
                   cell(std::to_string(line.pieces), kSize),
                   cell(unbroken(handText(line.each)), kSize),
                   {{unbroken(handText(line.gauge)), {kSize, true}, Mark::None},
                    {unbroken("to " + handText(line.finished)), {kSize - 2}, Mark::None}},
                   cell(blankOf(line).empty() ? "–" : unbroken(blankOf(line)), kSize - 2),
                   cell(unbroken(handText(line.onPie)), kSize - 1)});
    table.flow(flow);
}

void fromBefore(Flow& flow, const day::Plan& plan) {
    if (plan.before.empty()) return;
    flow.heading("There from before: look and probe");
    Table table({{"", Align::Left}, {"", Align::Right}, {"", Align::Left, 0, 1}, {"", Align::Left, 200}});
    table.padding = 1.2;
    for (const day::FromBefore& one : plan.before)
        table.add({{{"", {10}, Mark::TickBox}},
                   cell(handText(one.mass), 10.5, true),
                   cell(one.what, 10.5, true),
                   cell(one.made, 9.5)});
    table.flow(flow);
}

Table neededTable(const day::Plan& plan, std::size_t from, std::size_t to) {
    Table table({{"", Align::Left}, {"", Align::Right}, {"", Align::Left, 0, 1}, {"", Align::Left, 110}});
    table.padding = 1.2;
    table.gap = 6;
    for (std::size_t i = from; i < to; ++i) {
        const day::Needed& one = plan.needed[i];
        table.add({{{"", {10}, Mark::TickBox}},
                   cell(handText(one.mass), 9.5),
                   cell(one.stuff, 10),
                   cell(packsOf(one), 10, true)});
    }
    return table;
}

/// In two columns, unless they are longer than a page.
void needed(Flow& flow, const day::Plan& plan) {
    if (plan.needed.empty()) return;
    const char* const kHead = "Bought stuff needed";
    constexpr double kApart = 18;
    constexpr double kHeading = 34;
    const double width = (flow.width() - kApart) / 2;
    const std::size_t half = (plan.needed.size() + 1) / 2;
    const Table::Laidout left = neededTable(plan, 0, half).layOut(flow.canvas(), width);
    const Table::Laidout right = neededTable(plan, half, plan.needed.size()).layOut(flow.canvas(), width);
    const double tallest = std::max(left.height, right.height);
    if (tallest + kHeading > flow.fullRoom()) {
        flow.heading(kHead);
        return neededTable(plan, 0, plan.needed.size()).flow(flow);
    }
    flow.heading(kHead, tallest);
    const auto put = [&](const Table::Laidout& laid, double x) {
        double y = flow.y();
        for (const Block& row : laid.rows) {
            row.draw(flow.canvas(), x, y);
            y += row.height;
        }
    };
    put(left, flow.left());
    put(right, flow.left() + width + kApart);
    flow.space(tallest);
}

void surplus(Flow& flow, const day::Plan& plan) {
    if (plan.surplus.empty()) return;
    flow.heading("Left over by rounding");
    Table table({{"", Align::Right}, {"", Align::Right}, {"", Align::Left, 0, 1}, {"", Align::Left, 0, 1.2}});
    table.padding = 1;
    for (const day::PlannedSurplus& one : plan.surplus)
        table.add({cell(one.pieces > 0 ? countOf(one.pieces, "pieces") : "", 9, true), cell(handText(one.mass), 9),
                   cell(one.what, 9), cell(one.where, 9, true)});
    table.flow(flow);
}

void listing(Flow& flow, const std::string& heading, const std::vector<std::string>& texts, bool warn) {
    if (texts.empty()) return;
    flow.heading(heading);
    for (const std::string& text : texts) {
        if (warn)
            flow.caution(text, {11});
        else
            flow.text("– " + text, {10});
        flow.space(2);
    }
}

void reasons(Flow& flow, const day::Plan& plan) {
    Table table({{"", Align::Left, 150},
                 {"turned away, expected", Align::Right, 60},
                 {"left over, expected", Align::Right, 60},
                 {"because", Align::Left, 0, 1}});
    for (const day::PlannedAmount& amount : plan.amounts) {
        if (amount.because.empty()) continue;
        table.add({cell(amount.name, 9.5, true), cell(expectationOf(amount.expectedMissed), 9.5),
                   cell(expectationOf(amount.expectedLeft), 9.5), cell(joined(amount.because, "; "), 9.5)});
    }
    if (table.empty()) return;
    flow.heading("Why so many");
    table.flow(flow);
}

} // namespace

void paperCautions(Flow& flow, const std::vector<book::Caution>& cautions) {
    flow.heading("Cautions");
    for (const book::Caution caution : distinct(cautions))
        flow.caution(std::string(textOf(caution).word) + ": " + textOf(caution).sentence, {10});
    flow.caution(kTimesAreGuesses, {10});
    flow.space(2);
    flow.text(kCautionsDefer, {10});
}

void paperDay(Flow& flow, const day::Plan& plan, const Times& times) {
    flow.page(Turn::Upright, "Day sheet");
    masthead(flow, plan, times);
    amounts(flow, plan, times);
    pieces(flow, plan);
    fromBefore(flow, plan);
    needed(flow, plan);
    surplus(flow, plan);
    paperStrip(flow, plan, times);
    paperTasks(flow, plan, times);
    flow.page(Turn::Upright, "Day sheet");
    listing(flow, "Warnings", plan.warnings, true);
    std::vector<book::Caution> cautions;
    for (const day::Task& task : plan.tasks)
        cautions.insert(cautions.end(), task.cautions.begin(), task.cautions.end());
    paperCautions(flow, cautions);
    listing(flow, "Taken for granted", plan.assumptions, false);
    reasons(flow, plan);
}

} // namespace piewright::print
