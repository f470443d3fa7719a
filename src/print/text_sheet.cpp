#include "print/text_sheet.h"

#include "print/cautions.h"
#include "print/sheet.h"

#include <algorithm>

namespace piewright::print {

namespace {

constexpr std::size_t kNarrowestSheet = 20;

/// `! burns, steam`
std::string cautionsOf(const std::vector<book::Caution>& cautions) {
    return cautions.empty() ? "" : "! " + wordsOf(cautions);
}

std::string wavesOf(const day::PlannedAmount& amount, const Times& times) {
    std::vector<std::string> waves;
    waves.reserve(amount.waves.size());
    for (const day::PlannedWave& wave : amount.waves)
        waves.push_back(std::to_string(wave.pieces) + " at " + times.clock(wave.ready));
    return joined(waves);
}

void writeAmounts(TextSheet& sheet, const day::Plan& plan, const Times& times) {
    sheet.heading("Make");
    if (plan.amounts.empty()) return sheet.line("Nothing.");
    TextTable table({{"good", Side::Left, true},
                     {"make", Side::Right},
                     {"", Side::Left},
                     {"likely wanted", Side::Left},
                     {"ready", Side::Left, true}});
    for (const day::PlannedAmount& amount : plan.amounts) {
        std::string ready = wavesOf(amount, times);
        if (amount.setAside > 0) {
            if (!ready.empty()) ready += "; ";
            ready += std::to_string(amount.setAside) + " for the days after";
        }
        table.add({amount.name, std::to_string(amount.pieces), amount.unit,
                   std::to_string(amount.low) + "–" + std::to_string(amount.high), ready});
    }
    sheet.table(table);
}

void writeStores(TextSheet& sheet, const day::Plan& plan) {
    if (!plan.before.empty()) {
        sheet.heading("There from before");
        TextTable table({{"", Side::Left, true}, {"", Side::Right}, {"", Side::Left, true}});
        for (const day::FromBefore& before : plan.before) table.add({before.what, handText(before.mass), before.made});
        sheet.table(table);
    }
    writeNeeded(sheet, plan.needed);
    if (!plan.surplus.empty()) {
        sheet.heading("Left over by rounding");
        TextTable table({{"", Side::Left, true}, {"", Side::Right}, {"", Side::Right}, {"", Side::Left, true}});
        for (const day::PlannedSurplus& surplus : plan.surplus)
            table.add({surplus.what, surplus.pieces > 0 ? countOf(surplus.pieces, "pieces") : "",
                       handText(surplus.mass), surplus.where});
        sheet.table(table);
    }
}

void writeTasks(TextSheet& sheet, const day::Plan& plan, const Times& times) {
    if (plan.tasks.empty()) return;
    sheet.heading("Tasks by time");
    TextTable table({{"time"}, {"no.", Side::Right}, {"who", Side::Left, true}, {"what", Side::Left, true}});
    for (const day::Task* task : tasksInOrder(plan)) {
        std::vector<std::string> what{task->what};
        if (!task->of.empty()) what.back() += ": " + task->of;
        std::string with = task->amount;
        for (const std::string& more : {joined(task->gear), task->card.empty() ? "" : "card " + task->card})
            if (!more.empty()) with += (with.empty() ? "" : "; ") + more;
        if (!task->cautions.empty()) with += (with.empty() ? "" : "  ") + cautionsOf(task->cautions);
        if (!with.empty()) what.push_back(with);
        table.addLines({{times.span(task->start, task->end)},
                        {std::to_string(task->number)},
                        {task->hands.empty() ? "by itself" : joined(task->hands)},
                        what});
    }
    sheet.table(table);
}

void writeShifts(TextSheet& sheet, const day::Plan& plan, const Times& times) {
    if (plan.shifts.empty()) return;
    sheet.heading("Who is in");
    TextTable table(
        {{"who", Side::Left, true}, {"from–to"}, {"break", Side::Left, true}, {"at work on tasks", Side::Right}});
    for (const day::PlannedShift& shift : plan.shifts) {
        std::vector<std::string> breaks;
        breaks.reserve(shift.breaks.size());
        for (const auto& [from, to] : shift.breaks) breaks.push_back(times.span(from, to));
        table.add({shift.hand, times.span(shift.from, shift.to), breaks.empty() ? "none" : joined(breaks),
                   handText(Seconds(shift.busy))});
    }
    sheet.table(table);
}

void writeReasons(TextSheet& sheet, const day::Plan& plan) {
    const bool any =
        std::any_of(plan.amounts.begin(), plan.amounts.end(), [](const auto& a) { return !a.because.empty(); });
    if (!any) return;
    sheet.heading("Why so many");
    for (const day::PlannedAmount& amount : plan.amounts) {
        if (amount.because.empty()) continue;
        sheet.line(amount.name + ": " + joined(amount.because, "; ") + ".", "", "  ");
    }
}

void writeList(TextSheet& sheet, const std::string& heading, const std::vector<std::string>& texts, const char* mark) {
    if (texts.empty()) return;
    sheet.heading(heading);
    for (const std::string& text : texts) sheet.line(text, mark, "  ");
}

} // namespace

TextSheet::TextSheet(int width) : width_(std::max(static_cast<std::size_t>(std::max(width, 0)), kNarrowestSheet)) {}

void TextSheet::heading(const std::string& text) {
    blank();
    line(text);
    std::string rule;
    for (std::size_t i = 0; i < std::min(columnsOf(text), width_); ++i) rule += "─";
    text_ += rule + '\n';
}

void TextSheet::line(const std::string& text, const std::string& indent, const std::string& hanging) {
    const std::string& before = indent.empty() ? hanging : indent;
    const std::size_t taken = columnsOf(before);
    bool first = true;
    for (const std::string& part : wrapped(clean(text), width_ - std::min(taken, width_ - 2))) {
        text_ += (first ? indent : std::string(taken, ' ')) + part + '\n';
        first = false;
    }
}

void TextSheet::blank() {
    if (!text_.empty() && !text_.ends_with("\n\n")) text_ += '\n';
}

void TextSheet::table(const TextTable& table) { text_ += table.print(width_); }

void writePieces(TextSheet& sheet, const std::vector<day::PiecesLine>& pieces) {
    if (pieces.empty()) return;
    sheet.heading("Heads, pieces and gauge");
    TextTable table({{"for", Side::Left, true},
                     {"heads", Side::Right},
                     {"one head", Side::Right},
                     {"pieces", Side::Right},
                     {"each", Side::Right},
                     {"gauge", Side::Right},
                     {"blank", Side::Right},
                     {"on pie", Side::Right}});
    for (const day::PiecesLine& line : pieces)
        table.addLines({{line.part, line.good},
                        {std::to_string(line.heads) + " of " + std::to_string(line.perHead)},
                        {handText(line.head)},
                        {std::to_string(line.pieces)},
                        {handText(line.each)},
                        {handText(line.gauge), "to " + handText(line.finished)},
                        {blankOf(line)},
                        {handText(line.onPie)}});
    sheet.table(table);
}

void writeNeeded(TextSheet& sheet, const std::vector<day::Needed>& needed) {
    if (needed.empty()) return;
    sheet.heading("Bought stuff needed");
    TextTable table({{"", Side::Left, true}, {"", Side::Right}, {"", Side::Left, true}});
    for (const day::Needed& one : needed) table.add({one.stuff, handText(one.mass), packsOf(one)});
    sheet.table(table);
}

void writeDay(TextSheet& sheet, const day::Plan& plan, const Times& times) {
    sheet.line(plan.house + (plan.place.empty() ? "" : ", " + plan.place));
    sheet.line(times.day() + ": " + openingOf(plan, times) + (plan.note.empty() ? "" : ". " + plan.note));
    if (!times.zoneKnown())
        sheet.line("The time zone " + plan.zone + " is not known here: all times are in UTC.", "! ");
    if (const std::string change = clockChangeOf(plan, times); !change.empty()) sheet.line(change, "! ");
    if (!plan.warnings.empty())
        sheet.line(countOf(static_cast<std::int64_t>(plan.warnings.size()), "warnings") +
                       " at the end of this sheet: look before working by it.",
                   "! ");
    writeAmounts(sheet, plan, times);
    writePieces(sheet, plan.pieces);
    writeStores(sheet, plan);
    writeShifts(sheet, plan, times);
    writeTasks(sheet, plan, times);
    writeReasons(sheet, plan);
    writeList(sheet, "Taken for granted", plan.assumptions, "- ");
    writeList(sheet, "Warnings", plan.warnings, "! ");
    sheet.heading("Cautions");
    std::vector<book::Caution> cautions;
    for (const day::Task& task : plan.tasks)
        cautions.insert(cautions.end(), task.cautions.begin(), task.cautions.end());
    for (const book::Caution caution : distinct(cautions))
        sheet.line(std::string(textOf(caution).word) + ": " + textOf(caution).sentence, "! ");
    sheet.line(kTimesAreGuesses, "! ");
    sheet.line(kCautionsDefer);
}

void writeCards(TextSheet& sheet, const std::vector<day::WeighCard>& cards) {
    for (const day::WeighCard& card : cards) {
        std::string title = card.formula;
        for (const std::string& more :
             {batchOf(card), card.vessel, card.forTomorrow ? "for " + card.forWhen : "", "card " + card.id})
            if (!more.empty()) title += ", " + more;
        sheet.heading(title);
        TextTable table({{"", Side::Right}, {"", Side::Left, true}, {"", Side::Left, true}});
        for (const day::CardLine& line : card.lines)
            table.add({handText(line.weight), line.what + (line.at ? " at " + handText(*line.at) : ""), line.note});
        sheet.table(table);
        if (!card.yields.empty()) sheet.line("Makes " + joined(card.yields, "; ") + ".");
        sheet.line(sumsOf(card));
        if (card.target) sheet.line("Finished at " + handText(*card.target) + ". Measured: ______ °C");
        for (std::size_t i = 0; i < card.method.size(); ++i)
            sheet.line(card.method[i], std::to_string(i + 1) + ". ", "   ");
        sheet.line(allergensOf(card), "! ");
        if (!card.cautions.empty()) sheet.line(wordsOf(card.cautions) + ".", "! ");
    }
    if (!cards.empty()) {
        sheet.blank();
        sheet.line(kCheckAllergens, "! ");
    }
}

void writeOvens(TextSheet& sheet, const day::Plan& plan, const Times& times) {
    for (const Deck& deck : decksOf(plan)) {
        sheet.heading(deck.name);
        TextTable table({{"load", Side::Right},
                         {"light by"},
                         {"in"},
                         {"out"},
                         {"deck", Side::Right},
                         {"what", Side::Left, true},
                         {"trays", Side::Right},
                         {"core"}});
        int number = 0;
        for (const day::DeckLoad* load : deck.loads) {
            table.add({std::to_string(++number), load->lightBy ? times.clock(*load->lightBy) : "",
                       times.clock(load->in), times.clock(load->out), handText(load->at), contentsOf(*load),
                       std::to_string(load->trays) + " of " + std::to_string(load->room), "____ °C"});
        }
        sheet.table(table);
    }
    if (!plan.loads.empty()) {
        sheet.blank();
        sheet.line(kProbe, "! ");
        sheet.line(std::string(textOf(book::Caution::Burns).word) + ": " + textOf(book::Caution::Burns).sentence, "! ");
        sheet.line(kTimesAreGuesses, "! ");
    }
}

std::string asText(const day::Plan& plan, const Sheets& which, int width) {
    TextSheet sheet(width);
    const Times times(plan);
    if (which.day)
        writeDay(sheet, plan, times);
    else
        sheet.line(plan.house + ", " + times.day());
    if (which.cards) writeCards(sheet, plan.cards);
    if (which.ovens) writeOvens(sheet, plan, times);
    sheet.blank();
    sheet.line(kFootnote);
    return std::move(sheet).take();
}

} // namespace piewright::print
