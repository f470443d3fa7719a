#include "day/weigh_out.h"

#include "day/batches.h"
#include "day/tell_cards.h"
#include "units/text.h"

namespace piewright::day {

namespace {

WeighedOut told(const book::Book& book, std::string what, const DayLots& lots, const DayBatches& batches) {
    WeighedOut out;
    out.what = std::move(what);
    out.pieces = piecesOf(book, lots, batches);
    for (const Batch& batch : batches.batches) out.cards.push_back(cardOf(book, batches, batch));
    out.needed = neededFor(book, {&batches});
    return out;
}

} // namespace

Result<WeighedOut> weighOut(const book::Book& book, const book::Good& good, int pieces) {
    DayLots lots;
    if (good.tin) {
        const int perTray = book.tins.at(*good.tin).perTray;
        lots.loads.emplace_back();
        lots.loads.front().lots = {0};
        lots.lots.push_back({&good, 0, 1, pieces, (pieces + perTray - 1) / perTray});
    } else {
        lots.servings.push_back({&good, {}, {}, 1, pieces, good.deposits.front().weight * pieces});
    }
    const auto batches = allBatchesFor(book, lots, Date{});
    if (!batches) return batches.problems();
    return told(book, std::to_string(pieces) + " x " + good.name, lots, *batches);
}

Result<WeighedOut> weighOut(const book::Book& book, const book::Formula& formula, Mass out) {
    const auto batches = allBatchesOf(book, formula, out, Date{});
    if (!batches) return batches.problems();
    return told(book, handText(out) + " of " + formula.name, {}, *batches);
}

} // namespace piewright::day
