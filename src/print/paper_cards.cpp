// Weigh cards: two on a page, or one when it is long; weights to be read from two metres. Small batches of one formula,
// made over and over through the day, share a page.
#include "print/cautions.h"
#include "print/paper_sheet.h"
#include "print/table.h"

#include <algorithm>

namespace piewright::print {

namespace {

/// Sizes of print, in points.
struct Sizes {
    double name, weight, what, note, method, padding;
};
constexpr Sizes kUsual{22, 24, 17, 10, 10.5, 1.5};
constexpr Sizes kSmall{20, 20, 15, 9, 9.5, 0.2}; ///< before a card takes a page of its own
constexpr Sizes kLarge{28, 34, 22, 13, 14, 4};   ///< with a page of its own
constexpr double kGap = 24;                      ///< between the two cards of a page, with the cut in its middle

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

Block title(Canvas& canvas, const day::WeighCard& card, const std::string& day, const Sizes& sizes, double width) {
    const Laid batch = canvas.lay(batchOf(card), {sizes.name * 0.8, true});
    const Laid name = canvas.lay(card.formula, {sizes.name, true, 0, Align::Left, 3}, width - batch.width - 10);
    std::string where = card.vessel.empty() ? "" : "in: " + card.vessel + ", ";
    where += "card " + card.id + ", " + day;
    const Laid when =
        card.forTomorrow ? canvas.lay("for " + card.forWhen, {13, true, 0, Align::Left, 1}, width * 0.45) : Laid();
    const Laid vessel = canvas.lay(where, {11, false, 0, Align::Left, 2}, width - when.width - 20);
    const double second = std::max(vessel.height, when.height + (card.forTomorrow ? 4 : 0));
    const double first = std::max(name.height, batch.height);
    return {first + second + 4, [=](Canvas& onto, double x, double y) {
                onto.put(name, x, y);
                onto.put(batch, x + width - batch.width, y + name.baseline - batch.baseline);
                const double below = y + first;
                onto.put(vessel, x, below);
                if (when.height > 0) {
                    onto.frame(x + width - when.width - 8, below - 1, when.width + 8, when.height + 3, 1.2);
                    onto.put(when, x + width - when.width - 4, below);
                }
                onto.line(x, below + second + 2, x + width, below + second + 2, 1.4);
            }};
}

void weights(std::vector<Block>& blocks, Canvas& canvas, const day::WeighCard& card, const Sizes& sizes, double width) {
    Table table({{"", Align::Left}, {"", Align::Right}, {"", Align::Left, 0, 1}, {"", Align::Right}});
    table.padding = sizes.padding;
    table.gap = 12;
    for (const day::CardLine& line : card.lines) {
        Cell what{{line.what, {sizes.what}, Mark::None}};
        if (!line.note.empty()) what.push_back({line.note, {sizes.note}, Mark::None});
        Cell at;
        if (line.at) at.push_back({"at " + handText(*line.at), {sizes.weight * 0.85, true}, Mark::None});
        Row row;
        row.ruled = !table.empty(); // the title has its own rule
        row.cells = {{{"", {sizes.weight * 0.75}, Mark::TickBox}},
                     {{handText(line.weight), {sizes.weight, true}, Mark::None}},
                     what,
                     at};
        table.add(std::move(row));
    }
    Table::Laidout laid = table.layOut(canvas, width);
    for (Block& row : laid.rows) blocks.push_back(std::move(row));
}

bool isGrouped(const std::vector<std::vector<const day::WeighCard*>>& groups, const day::WeighCard& card) {
    return std::any_of(groups.begin(), groups.end(),
                       [&](const auto& group) { return std::find(group.begin(), group.end(), &card) != group.end(); });
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

std::vector<Block> blocksOf(Canvas& canvas, const day::WeighCard& card, const std::string& day, const Sizes& sizes,
                            double width) {
    std::vector<Block> blocks{title(canvas, card, day, sizes, width)};
    weights(blocks, canvas, card, sizes, width);
    blocks.push_back({3, [](Canvas&, double, double) {}});
    const Style makes{sizes.method * 1.2, true};
    if (!card.yields.empty()) blocks.push_back(textBlock(canvas, "makes " + joined(card.yields, "; "), makes, width));
    blocks.push_back(textBlock(canvas, sumsOf(card), {9}, width));
    for (std::size_t i = 0; i < card.method.size(); ++i)
        blocks.push_back(textBlock(canvas, std::to_string(i + 1) + ". " + card.method[i], {sizes.method}, width, 1));
    blocks.push_back(cautionBlock(canvas, allergensOf(card), {sizes.method * 1.15, true}, width));
    if (!card.cautions.empty()) blocks.push_back(cautionBlock(canvas, wordsOf(card.cautions), {sizes.method}, width));
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

void paperCards(Flow& flow, const day::Plan& plan, const Times& times) {
    if (plan.cards.empty()) return;
    const char* const kTitle = "Weigh cards";
    flow.page(Turn::Upright, kTitle);
    Canvas& canvas = flow.canvas();
    const double top = flow.y();
    const double half = (flow.room() - kGap) / 2;
    std::vector<book::Caution> cautions;
    const std::vector<std::vector<const day::WeighCard*>> groups = alikeCards(plan);
    std::vector<const day::WeighCard*> longs;
    int shorts = 0;
    // Two on a page first, in the plan's order; what is longer than half a page comes after them.
    for (const day::WeighCard& card : plan.cards) {
        cautions.insert(cautions.end(), card.cautions.begin(), card.cautions.end());
        if (isGrouped(groups, card)) continue;
        std::vector<Block> blocks = blocksOf(canvas, card, times.day(), kUsual, flow.width());
        if (heightOf(blocks) > half) blocks = blocksOf(canvas, card, times.day(), kSmall, flow.width());
        if (heightOf(blocks) > half) {
            longs.push_back(&card);
            continue;
        }
        const bool lower = shorts % 2 == 1;
        if (shorts > 0 && !lower) flow.page(Turn::Upright, kTitle);
        if (lower) {
            const double cut = top + half + kGap / 2;
            canvas.dashes(flow.left(), cut, flow.left() + flow.width(), cut, 0.6);
            flow.space(top + half + kGap - flow.y());
        }
        put(flow, blocks);
        ++shorts;
    }
    for (std::size_t i = 0; i < longs.size(); ++i) {
        const day::WeighCard& card = *longs[i];
        const std::string name = card.formula + (batchOf(card).empty() ? "" : ", " + batchOf(card));
        if (shorts > 0 || i > 0) flow.page(Turn::Upright, name);
        flow.retitle(name);
        std::vector<Block> blocks = blocksOf(canvas, card, times.day(), kLarge, flow.width());
        if (heightOf(blocks) > flow.room()) blocks = blocksOf(canvas, card, times.day(), kUsual, flow.width());
        put(flow, blocks);
    }
    for (std::size_t i = 0; i < groups.size(); ++i) {
        if (shorts > 0 || !longs.empty() || i > 0) flow.page(Turn::Upright, groups[i].front()->formula);
        flow.retitle(groups[i].front()->formula);
        paperCardGroup(flow, plan, groups[i], times);
    }
    flow.page(Turn::Upright, kTitle);
    flow.caution(kCheckAllergens, {11, true});
    paperCautions(flow, cautions);
}

} // namespace piewright::print
