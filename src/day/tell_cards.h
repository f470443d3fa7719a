// The parts of a plan that are about weights: cards, pieces, needs and what is left over.
#pragma once

#include "day/plan.h"
#include "day/tell.h"

namespace piewright::day {

/// `Base paste 2 of 3`.
[[nodiscard]] std::string batchName(const Batch& batch);
/// `base-paste 2`, with the date when it is for another: the card's number.
[[nodiscard]] std::string cardId(const Batch& batch);
/// What a lot's step takes, for people: `, 84 bases of 68 g`.
[[nodiscard]] std::string takenText(const Told& told, const Lot& lot, book::Takes takes);

/// One batch as its card: weights, water, heads, method, allergens, cautions.
[[nodiscard]] WeighCard cardOf(const book::Book& book, const DayBatches& batches, const Batch& batch);
/// The pieces pressed for the lots: weights, heads, gauge.
[[nodiscard]] std::vector<PiecesLine> piecesOf(const book::Book& book, const DayLots& lots, const DayBatches& batches);
/// What is bought for batches, in packs.
[[nodiscard]] std::vector<Needed> neededFor(const book::Book& book, const std::vector<const DayBatches*>& all);

/// Fills cards, pieces, needed, surplus.
void addBatchPapers(const Told& told, Plan& plan);

} // namespace piewright::day
