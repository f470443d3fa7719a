// A date's amounts as bakes and batches at the counter: when each is ready, in which deck loads, as which lots of pies.
#pragma once

#include "book/book.h"
#include "day/amounts.h"
#include "finding/result.h"

#include <vector>

namespace piewright::day {

/// Pies of one good that go through the bench and one deck load together.
struct Lot {
    const book::Good* good = nullptr;
    std::size_t load = 0; ///< index of its load
    int bake = 1;         ///< number of the wave, from 1
    int pieces = 0;
    int trays = 0;
};

/// What goes into one deck at once.
struct Load {
    Celsius at;
    Seconds bake{0};
    ClockTime ready, until;
    Seconds hold{0}; ///< least hold of the goods in it
    int trays = 0;
    std::vector<std::size_t> lots;
};

/// One wave of a good that is portioned: so much of its formula at the counter by `ready`.
struct Serving {
    const book::Good* good = nullptr;
    ClockTime ready, until;
    int number = 1;
    int portions = 0;
    Mass mass;
};

struct DayLots {
    std::vector<Load> loads;
    std::vector<Lot> lots; ///< in the order they are wanted
    std::vector<Serving> servings;
};

/// Goods that share a deck (same temperature and time) share their ready times, so that their trays fill decks
/// together; a load holds at most `deckTrays`, of one ready time. Cold goods stand ready once, at opening. Assumes
/// every amount's good is sold on a date with opening hours `open`.
[[nodiscard]] DayLots lotsFor(const book::Book& book, const std::vector<Chosen>& amounts,
                              const std::vector<ClockSpan>& open);

} // namespace piewright::day
