// Whole things from what the lots and servings ask for: heads, mixes, kettles, pans. Rounded once, here.
#pragma once

#include "book/book.h"
#include "day/lots.h"
#include "finding/result.h"
#include "formula/weigh.h"
#include "pastry/heads.h"
#include "pastry/tin.h"

#include <optional>
#include <variant>
#include <vector>

namespace piewright::day {

enum class Part { Base, Lid };

/// Pieces that are pressed alike: one paste, one weight.
struct PieceKind {
    FormulaId paste;
    pastry::Piece piece;
    const book::Gear* divider = nullptr;
    pastry::Heads heads; ///< for the whole day
    std::vector<std::pair<const book::Good*, Part>> uses;
};

/// So many heads of one kind pressed from one batch.
struct HeadsFrom {
    std::size_t kind = 0;
    std::int64_t heads = 0;
};

/// One making of a formula, in one vessel.
struct Batch {
    const book::Formula* formula = nullptr;
    int number = 1; ///< of `of` for the same day
    int of = 1;
    const book::Gear* vessel = nullptr; ///< none when the formula needs none
    formula::WeighedBatch weighed;
    std::vector<HeadsFrom> heads;       ///< pastes
    std::vector<Date> forDates;         ///< other than the plan's date; empty: for the plan's date
    std::optional<ClockTime> notBefore; ///< its fish or other perishable comes in then
};

/// What uses a batch up.
struct LotUses {
    std::size_t lot = 0;
    book::Takes takes{};
};
struct ServingUses {
    std::size_t serving = 0;
};
struct BatchUses {
    std::size_t batch = 0;
};
struct Supply {
    std::size_t batch = 0;
    std::variant<LotUses, ServingUses, BatchUses> to;
};

/// Made before the plan's date and taken from the chiller.
struct Before {
    const book::Formula* formula = nullptr;
    Mass mass;
};

struct DayBatches {
    std::vector<PieceKind> kinds;
    std::vector<Batch> batches; ///< users of a batch may come before it
    std::vector<Supply> supplies;
    std::vector<Before> before;
};

/// What is made on `date` for that date. Problems: no vessel or divider fits, with what would.
Result<DayBatches> batchesFor(const book::Book& book, const DayLots& lots, Date date);

/// The same with every formula made, whenever it usually is: for weighing out one good or formula.
Result<DayBatches> allBatchesFor(const book::Book& book, const DayLots& lots, Date date);

/// One formula alone, so much of it. Nested formulas are made too.
Result<DayBatches> allBatchesOf(const book::Book& book, const book::Formula& formula, Mass out, Date date);

/// What is made on `date` for the dates after it: formulas of the day before for the next open date, and formulas that
/// are made when their perishable comes in. `next` are the next open date's lots; `over` the cold goods' amounts to
/// come.
Result<DayBatches> batchesAhead(const book::Book& book, const DayLots& next, Date nextDate,
                                const std::vector<Chosen>& over, Date date);

} // namespace piewright::day
