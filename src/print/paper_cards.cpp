// Weigh cards: two on a page, or one when it is long; weights to be read from two metres.
#include "print/cautions.h"
#include "print/paper_sheet.h"
#include "print/table.h"

#include <algorithm>

namespace piewright::print {

namespace {

constexpr double kWeight = 24;
constexpr double kGap = 24; ///< between the two cards of a page, with the cut in its middle

Block textBlock(Canvas& canvas, const std::string& text, const Style& style, double width, double after = 2) {
    const Laid laid = canvas.lay(text, style, width);
    return {laid.height + after, [laid](Canvas& onto, double x, double y) { onto.put(laid, x, y); }};
}

Block cautionBlock(Canvas& canvas, const std::string& text, const Style& style, double width) {
    const double size = style.points * 1.25;
    const Laid laid = canvas.lay(text, style, width - size - 4);
    return {std::max(laid.height, size) + 2, [laid, size](Canvas& onto, double x, double y) {
                onto.caution(x, y, size);
                onto.put(laid, x + size + 4, y);
            }};
}

Block title(Canvas& canvas, const day::WeighCard& card, double width) {
    const Laid batch = canvas.lay(batchOf(card), {18, true});
    const Laid name = canvas.lay(card.formula, {22, true, 0, Align::Left, 3}, width - batch.width - 10);
    std::string where = card.vessel;
    if (!where.empty()) where = "in: " + where;
    const Laid vessel = canvas.lay(where, {13}, width * 0.55);
    const Laid when = card.forTomorrow ? canvas.lay("for " + card.forWhen, {13, true}, width * 0.42) : Laid();
    const double second = std::max(vessel.height, when.height + (card.forTomorrow ? 4 : 0));
    const double height = std::max(name.height, batch.height) + second + 4;
    return {height, [=](Canvas& onto, double x, double y) {
                onto.put(name, x, y);
                onto.put(batch, x + width - batch.width, y + 3);
                const double below = y + std::max(name.height, batch.height);
                onto.put(vessel, x, below);
                if (when.height > 0) {
                    onto.frame(x + width - when.width - 8, below - 1, when.width + 8, when.height + 3, 1.2);
                    onto.put(when, x + width - when.width - 4, below);
                }
                onto.line(x, y + height - 2, x + width, y + height - 2, 1.4);
            }};
}

void weights(std::vector<Block>& blocks, Canvas& canvas, const day::WeighCard& card, double width) {
    Table table({{"", Align::Left}, {"", Align::Right}, {"", Align::Left, 0, 1}, {"", Align::Right}});
    table.padding = 1;
    table.gap = 12;
    for (const day::CardLine& line : card.lines) {
        Cell what{{line.what, {17}, Mark::None}};
        if (!line.note.empty()) what.push_back({line.note, {10}, Mark::None});
        Cell at;
        if (line.at) at.push_back({"at " + handText(*line.at), {20, true}, Mark::None});
        table.add({{{"", {19}, Mark::TickBox}}, {{handText(line.weight), {kWeight, true}, Mark::None}}, what, at});
    }
    Table::Laidout laid = table.layOut(canvas, width);
    for (Block& row : laid.rows) blocks.push_back(std::move(row));
}

/// Boxes to write into, each with its words before it.
Block blanks(Canvas& canvas, const std::vector<std::string>& words, double width) {
    constexpr double kBox = 22;
    std::vector<Laid> laid;
    double taken = 0;
    for (const std::string& word : words) {
        laid.push_back(canvas.lay(word, {10}));
        taken += laid.back().width + 6;
    }
    const double box = (width - taken) / static_cast<double>(words.size()) - 8;
    return {kBox + 4, [=](Canvas& onto, double x, double y) {
                for (const Laid& word : laid) {
                    onto.put(word, x, y + (kBox - word.height) / 2 + 1);
                    x += word.width + 6;
                    onto.frame(x, y + 1, box, kBox, 0.7);
                    x += box + 8;
                }
            }};
}

std::string sumsOf(const day::WeighCard& card) {
    std::string sums = "In " + handText(card.in);
    for (const auto& [at, mass] : card.lost) sums += ", less " + handText(mass) + " (" + at + ")";
    sums += ", out " + handText(card.out) + ".";
    if (card.scaleStep > Mass{}) {
        sums += " Weighed in steps of " + handText(card.scaleStep);
        if (card.roundingError != Mass{}) {
            const bool more = card.roundingError > Mass{};
            sums += more ? ", which adds " : ", which takes off ";
            sums += handText(more ? card.roundingError : -card.roundingError);
        }
        sums += ".";
    }
    return sums;
}

std::vector<Block> blocksOf(Canvas& canvas, const day::WeighCard& card, double width) {
    std::vector<Block> blocks{title(canvas, card, width)};
    weights(blocks, canvas, card, width);
    const std::string yields = joined(card.yields, "; ");
    if (!yields.empty()) blocks.push_back(textBlock(canvas, "makes " + yields, {13, true}, width));
    blocks.push_back(textBlock(canvas, sumsOf(card), {9}, width));
    for (std::size_t i = 0; i < card.method.size(); ++i)
        blocks.push_back(textBlock(canvas, std::to_string(i + 1) + ". " + card.method[i], {10.5}, width, 1));
    if (!card.allergens.empty())
        blocks.push_back(cautionBlock(canvas, "Contains: " + joined(card.allergens), {12, true}, width));
    if (!card.cautions.empty()) blocks.push_back(cautionBlock(canvas, wordsOf(card.cautions), {10}, width));
    std::vector<std::string> asked{"initials", "time"};
    if (card.target) asked.push_back("paste, aim " + handText(*card.target) + ", measured °C");
    blocks.push_back(blanks(canvas, asked, width));
    const bool cools = std::count(card.cautions.begin(), card.cautions.end(), book::Caution::Cooling) > 0;
    if (cools) blocks.push_back(blanks(canvas, {"cooling from °C", "at", "down to °C", "at"}, width));
    return blocks;
}

double heightOf(const std::vector<Block>& blocks) {
    double height = 0;
    for (const Block& block : blocks) height += block.height;
    return height;
}

void put(Flow& flow, const std::vector<Block>& blocks) {
    for (const Block& block : blocks) flow.add(block);
}

} // namespace

void paperCards(Flow& flow, const day::Plan& plan, const Times& /*times*/) {
    if (plan.cards.empty()) return;
    const char* const kTitle = "Weigh cards";
    bool half = false; // the page that was begun has its lower half free
    bool begun = false;
    double lower = 0;
    std::vector<book::Caution> cautions;
    // Halves are paired in order; a long card takes pages of its own after the pair that is open.
    std::vector<std::vector<Block>> shorts, longs;
    if (!begun) {
        flow.page(Turn::Upright, kTitle);
        begun = true;
    }
    const double most = (flow.fullRoom() - kGap) / 2;
    bool fresh = true;
    for (const day::WeighCard& card : plan.cards) {
        cautions.insert(cautions.end(), card.cautions.begin(), card.cautions.end());
        const std::vector<Block> blocks = blocksOf(flow.canvas(), card, flow.width());
        const std::string name = card.formula + (batchOf(card).empty() ? "" : ", " + batchOf(card));
        if (heightOf(blocks) > most) {
            if (!fresh) flow.page(Turn::Upright, name);
            flow.retitle(name);
            put(flow, blocks);
            half = false;
        } else if (half) {
            const double cut = lower - kGap / 2;
            flow.canvas().dashes(flow.left(), cut, flow.left() + flow.width(), cut, 0.6);
            flow.space(lower - flow.y());
            put(flow, blocks);
            half = false;
        } else {
            if (!fresh) flow.page(Turn::Upright, kTitle);
            lower = flow.y() + most + kGap;
            put(flow, blocks);
            half = true;
        }
        fresh = false;
    }
    flow.page(Turn::Upright, kTitle);
    flow.caution(kCheckAllergens, {11, true});
    paperCautions(flow, cautions);
}

} // namespace piewright::print
