// The day as a scheduling problem: batches, lots, loads and servings become activities; hands and gear become limits.
#pragma once

#include "day/batches.h"
#include "day/clock.h"
#include "day/lots.h"
#include "finding/result.h"
#include "schedule/problem.h"

#include <optional>
#include <vector>

namespace piewright::day {

/// All that is made on one date.
struct Work {
    DayLots lots;
    DayBatches today;
    DayBatches ahead;
};

/// What an activity stands for.
enum class Does {
    Step,  ///< a whole step: hands and gear from its start to its end
    Begin, ///< the hands' part at a step's beginning
    Stand, ///< a step's gear for its whole time, without hands
    End,   ///< the hands' part at a step's end
    Break,
    Clean
};

enum class Whose { Batch, BatchAhead, Lot, Load, Serving, Hand, Gear };

struct Meaning {
    Does does = Does::Step;
    Whose whose = Whose::Batch;
    std::size_t index = 0; ///< among the batches, lots, loads or servings
    const book::Step* step = nullptr;
    std::size_t stepNumber = 0;       ///< within its route
    const book::Hand* hand = nullptr; ///< Break
    const book::Gear* gear = nullptr; ///< Clean
};

struct DeckOf {
    const book::Gear* oven = nullptr;
    int deck = 1; ///< counted through all ovens of that gear
};

/// The problem, and how to read its answer.
struct DayProblem {
    schedule::Problem problem;
    std::vector<Meaning> meanings;            ///< by activity
    std::vector<const book::Hand*> hands;     ///< by worker
    std::vector<std::optional<DeckOf>> decks; ///< by resource; none for other gear
    std::vector<const book::Gear*> gear;      ///< by resource
    std::vector<Celsius> families;            ///< by family
};

/// Problems: a step that nobody present can do, gear that a batch is too heavy for, with names.
Result<DayProblem> problemOf(const book::Book& book, const Work& work, const Clock& clock,
                             const std::vector<ClockSpan>& open);

/// The moment the first hand of that date comes in; none when nobody does.
[[nodiscard]] std::optional<Instant> firstHandIn(const book::Book& book, Date date);

} // namespace piewright::day
