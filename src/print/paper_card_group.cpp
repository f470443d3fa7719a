// Batches of one formula that are made over and over through the day, side by side: a column each.
#include "print/cautions.h"
#include "print/paper_sheet.h"
#include "print/table.h"

#include <algorithm>

namespace piewright::print {

namespace {

constexpr std::size_t kColumns = 5; ///< batches side by side
constexpr std::size_t kFewest = 3;  ///< batches that make a group

const day::Task* firstTaskOf(const day::Plan& plan, const day::WeighCard& card) {
    const auto found =
        std::find_if(plan.tasks.begin(), plan.tasks.end(), [&](const day::Task& task) { return task.card == card.id; });
    return found == plan.tasks.end() ? nullptr : &*found;
}

/// A weight that stays on one line.
Cell bold(std::string text, double points) {
    if (const auto space = text.find(' '); space != std::string::npos) text.replace(space, 1, "\u00A0");
    return {{std::move(text), {points, true, 0, Align::Left, 1}, Mark::None}};
}

/// One column of names can stand for both: the same things in the same order, none at a temperature of its own.
bool linesAlike(const day::WeighCard& a, const day::WeighCard& b) {
    return std::equal(a.lines.begin(), a.lines.end(), b.lines.begin(), b.lines.end(),
                      [](const day::CardLine& one, const day::CardLine& other) {
                          return one.what == other.what && !one.at && !other.at;
                      });
}

/// Some of a group's batches, one column each.
void columns(Flow& flow, const day::Plan& plan, const std::vector<const day::WeighCard*>& cards, const Times& times) {
    std::vector<Column> heads{{"", Align::Left, 0, 1.3, 90}};
    Row starts;
    starts.cells.push_back({{"batch, begin at", {10}, Mark::None}});
    for (const day::WeighCard* card : cards) {
        heads.push_back({"", Align::Right, 0, 1});
        const day::Task* task = firstTaskOf(plan, *card);
        starts.cells.push_back({{std::to_string(card->number) + " of " + std::to_string(card->of), {10}, Mark::None},
                                {task ? times.clock(task->start) : "–", {15, true}, Mark::None}});
    }
    Table table(heads);
    table.padding = 1.8;
    table.add(starts);
    for (std::size_t line = 0; line < cards.front()->lines.size(); ++line) {
        Row row;
        row.cells.push_back({{cards.front()->lines[line].what, {14}, Mark::None}});
        for (const day::WeighCard* card : cards) {
            Cell weight = bold(handText(card->lines[line].weight), cards.size() > 4   ? 12.5
                                                                   : cards.size() > 3 ? 14
                                                                                      : 17);
            // What is bought for it, short: the words stand in the first column's note.
            const std::string& note = card->lines[line].note;
            if (const auto from = note.find("from "); from != std::string::npos)
                weight.push_back({note.substr(from), {6.5}, Mark::None});
            row.cells.push_back(weight);
        }
        table.add(row);
    }
    const auto sums = [&](const char* what, auto value) {
        Row row;
        row.cells.push_back({{what, {10}, Mark::None}});
        for (const day::WeighCard* card : cards) row.cells.push_back({{handText(value(*card)), {11}, Mark::None}});
        table.add(row);
    };
    sums("in all, in", [](const day::WeighCard& card) { return card.in; });
    sums("comes out", [](const day::WeighCard& card) { return card.out; });
    for (const char* asked : {"done at", "initials"}) {
        Row row;
        row.cells.push_back({{asked, {10}, Mark::None}});
        for (std::size_t i = 0; i < cards.size(); ++i) row.cells.push_back({{"", {10}, Mark::Blank}});
        table.add(row);
    }
    table.flow(flow);
    flow.space(10);
}

} // namespace

std::vector<std::vector<const day::WeighCard*>> alikeCards(const day::Plan& plan) {
    std::vector<std::vector<const day::WeighCard*>> groups;
    for (const day::WeighCard& card : plan.cards) {
        // Pastes have heads and a temperature to meet: each mix keeps its own card.
        if (card.target || !card.yields.empty()) continue;
        const auto same = std::find_if(groups.begin(), groups.end(), [&](const auto& group) {
            const day::WeighCard& first = *group.front();
            return first.formula == card.formula && first.forWhen == card.forWhen && first.vessel == card.vessel &&
                   first.allergens == card.allergens && first.method == card.method &&
                   first.cautions == card.cautions && linesAlike(first, card);
        });
        if (same == groups.end())
            groups.push_back({&card});
        else
            same->push_back(&card);
    }
    std::erase_if(groups, [](const auto& group) { return group.size() < kFewest; });
    return groups;
}

void paperCardGroup(Flow& flow, const day::Plan& plan, const std::vector<const day::WeighCard*>& cards,
                    const Times& times) {
    const day::WeighCard& first = *cards.front();
    flow.text(first.formula, {26, true});
    std::string where = first.vessel.empty() ? "" : "in: " + first.vessel + ", ";
    where += times.day();
    if (first.forTomorrow) where += ", for " + first.forWhen;
    flow.text(where + ". Weighed in steps of " + handText(first.scaleStep) + ".", {11});
    flow.space(4);
    // As few rows of columns as may be, and those alike.
    const std::size_t blocks = (cards.size() + kColumns - 1) / kColumns;
    const std::size_t each = (cards.size() + blocks - 1) / blocks;
    for (std::size_t from = 0; from < cards.size(); from += each)
        columns(flow, plan,
                {cards.begin() + static_cast<std::ptrdiff_t>(from),
                 cards.begin() + static_cast<std::ptrdiff_t>(std::min(from + each, cards.size()))},
                times);
    for (const day::CardLine& line : first.lines)
        if (const auto from = line.note.find(", from "); from != std::string::npos)
            flow.text(line.what + ": " + line.note.substr(0, from) + "; the small figures are what is bought.", {10});
    for (std::size_t i = 0; i < first.method.size(); ++i)
        flow.text(std::to_string(i + 1) + ". " + first.method[i], {11});
    flow.space(3);
    flow.caution(allergensOf(first), {12, true});
    if (!first.cautions.empty()) flow.caution(wordsOf(first.cautions), {11});
}

} // namespace piewright::print
