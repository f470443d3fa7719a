// The oven sheet: what goes into each deck when, and boxes for what really happened.
#include "print/cautions.h"
#include "print/paper_sheet.h"
#include "print/table.h"

namespace piewright::print {

namespace {

Cell cell(const std::string& text, double points, bool bold = false) { return {{text, {points, bold}, Mark::None}}; }
const Cell kBlank{{"", {10}, Mark::Blank}};

} // namespace

void paperOvens(Flow& flow, const day::Plan& plan, const Times& times) {
    if (plan.loads.empty()) return;
    flow.page(Turn::Sideways, "Oven sheet");
    flow.text("Oven sheet, " + times.day(), {18, true});
    flow.space(2);
    flow.caution(kProbe, {13, true});
    flow.caution(std::string(textOf(book::Caution::Burns).word) + ": " + textOf(book::Caution::Burns).sentence, {10});
    flow.caution(kTimesAreGuesses, {10});
    for (const Deck& deck : decksOf(plan)) {
        flow.heading(deck.name);
        flow.retitle(deck.name);
        Table table({{"load", Align::Right},
                     {"light by", Align::Left},
                     {"in", Align::Left},
                     {"out", Align::Left},
                     {"deck", Align::Right},
                     {"what", Align::Left, 0, 1},
                     {"trays", Align::Right},
                     {"really in", Align::Left, 0, 0, 48},
                     {"really out", Align::Left, 0, 0, 48},
                     {"core °C", Align::Left, 0, 0, 44},
                     {"core °C", Align::Left, 0, 0, 44},
                     {"initials", Align::Left, 0, 0, 44}});
        table.gap = 7;
        table.padding = 3;
        int number = 0;
        for (const day::DeckLoad* load : deck.loads) {
            Cell what;
            for (const day::LoadContent& content : load->contents) {
                std::string text = contentOf(content);
                if (load->contents.size() > 1) text += ", " + countOf(content.trays, "trays");
                what.push_back({text, {12}, Mark::None});
            }
            table.add({cell(std::to_string(++number), 14, true),
                       cell(load->lightBy ? times.clock(*load->lightBy) : "", 13, true),
                       cell(times.clock(load->in), 16, true), cell(times.clock(load->out), 16, true),
                       cell(handText(load->at), 13, true), what,
                       cell(std::to_string(load->trays) + " of " + std::to_string(load->room), 12), kBlank, kBlank,
                       kBlank, kBlank, kBlank});
        }
        table.flow(flow);
    }
}

} // namespace piewright::print
