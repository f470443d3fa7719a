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
    flow.text(times.day(), {26, true});
    flow.text(openingOf(plan, times) + (plan.note.empty() ? "" : ". " + plan.note), {14, false, 0, Align::Left, 3});
    flow.space(3);
    if (!times.zoneKnown())
        flow.caution("The time zone " + plan.zone + " is not known here: all times are in UTC.", {11, true});
    if (!plan.tasks.empty()) {
        const std::string change = times.changeBetween(plan.tasks.front().start, plan.tasks.back().end);
        if (!change.empty()) flow.caution(change, {11, true});
    }
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
                 {"ready", Align::Left, 0, 1.15}});
    table.padding = 1;
    for (const day::PlannedAmount& amount : plan.amounts) {
        std::string ready;
        for (const day::PlannedWave& wave : amount.waves)
            ready +=
                (ready.empty() ? "" : "   ") + unbroken(std::to_string(wave.pieces) + " at " + times.clock(wave.ready));
        Cell when = cell(ready, 11);
        if (amount.setAside > 0)
            when.push_back({std::to_string(amount.setAside) + " of them for the days after", {11}, Mark::None});
        table.add({cell(amount.name, 13, true), cell(std::to_string(amount.pieces), 22, true), cell(amount.unit, 9),
                   cell(std::to_string(amount.low) + "–" + std::to_string(amount.high), 11), when});
    }
    table.flow(flow);
}

void pieces(Flow& flow, const day::Plan& plan) {
    if (plan.pieces.empty()) return;
    flow.heading("Heads, pieces and gauge");
    Table table({{"", Align::Left, 0, 1},
                 {"", Align::Left, 60},
                 {"heads", Align::Right},
                 {"of", Align::Right},
                 {"one head", Align::Right},
                 {"pieces", Align::Right},
                 {"each", Align::Right},
                 {"gauge", Align::Right},
                 {"rests to", Align::Right},
                 {"blank", Align::Right},
                 {"on pie", Align::Right}});
    table.padding = 1.2;
    std::string before;
    for (const day::PiecesLine& line : plan.pieces) {
        Row row;
        row.ruled = line.good != before;
        row.cells = {cell(line.good == before ? "" : line.good, 10.5, true),
                     cell(line.part, 10.5),
                     cell(std::to_string(line.heads), 12, true),
                     cell(std::to_string(line.perHead), 9.5),
                     cell(handText(line.head), 10.5, true),
                     cell(std::to_string(line.pieces), 9.5),
                     cell(handText(line.each), 9.5),
                     cell(handText(line.gauge), 10.5, true),
                     cell(handText(line.finished), 9.5),
                     cell(blankOf(line), 9.5),
                     cell(handText(line.onPie), 9.5)};
        before = line.good;
        table.add(row);
    }
    table.flow(flow);
}

/// Two lists side by side when both fit, else one below the other.
void stores(Flow& flow, const day::Plan& plan) {
    Table before({{"", Align::Left}, {"", Align::Right}, {"", Align::Left, 0, 1}});
    for (const day::FromBefore& one : plan.before)
        before.add({{{"", {10}, Mark::TickBox}},
                    cell(handText(one.mass), 10.5, true),
                    {{one.what, {10.5}, Mark::None}, {one.made, {8.5}, Mark::None}}});
    Table needed({{"", Align::Left}, {"", Align::Right}, {"", Align::Left, 0, 1}});
    for (const day::Needed& one : plan.needed) {
        Cell what = cell(one.stuff, 10.5);
        if (!one.pack.empty()) what.push_back({packsOf(one), {8.5}, Mark::None});
        needed.add({{{"", {10}, Mark::TickBox}}, cell(handText(one.mass), 10.5, true), what});
    }
    before.padding = needed.padding = 1.5;
    const char* const beforeHead = "There from before";
    const char* const neededHead = "Bought stuff needed";
    const double half = (flow.width() - 18) / 2;
    const Table::Laidout left = before.layOut(flow.canvas(), half);
    const Table::Laidout right = needed.layOut(flow.canvas(), half);
    const double tallest = std::max(left.height, right.height);
    if (before.empty() || needed.empty() || tallest > flow.fullRoom() - 40) {
        if (!before.empty()) flow.heading(beforeHead), before.flow(flow);
        if (!needed.empty()) flow.heading(neededHead), needed.flow(flow);
        return;
    }
    flow.space(12);
    flow.need(tallest + 26);
    const double rightX = flow.left() + half + 18;
    flow.canvas().put(flow.canvas().lay(beforeHead, {14, true}), flow.left(), flow.y());
    flow.canvas().put(flow.canvas().lay(neededHead, {14, true}), rightX, flow.y());
    flow.space(20);
    const auto put = [&](const Table::Laidout& laid, double x) {
        double y = flow.y();
        for (const Block& row : laid.rows) {
            row.draw(flow.canvas(), x, y);
            y += row.height;
        }
    };
    put(left, flow.left());
    put(right, rightX);
    flow.space(tallest);
}

void surplus(Flow& flow, const day::Plan& plan) {
    if (plan.surplus.empty()) return;
    flow.heading("Left over by rounding");
    Table table({{"", Align::Right}, {"", Align::Right}, {"", Align::Left, 0, 1}, {"", Align::Left, 0, 1}});
    table.padding = 1.5;
    for (const day::PlannedSurplus& one : plan.surplus)
        table.add({cell(one.pieces > 0 ? countOf(one.pieces, "pieces") : "", 10.5, true),
                   cell(handText(one.mass), 10.5), cell(one.what, 10.5), cell(one.where, 10.5, true)});
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
    stores(flow, plan);
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
