// The plan of a day as a document: everything a person needs to work by it, with names and numbers in full, so that it
// can be printed, stored and read back without the book it came from.
#pragma once

#include "book/route.h"
#include "units/civil.h"
#include "units/money.h"
#include "units/quantity.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace piewright::day {

/// One ready time of a good.
struct PlannedWave {
    Instant ready;
    Instant until; ///< meant to sell until then
    int pieces = 0;
    bool operator==(const PlannedWave&) const = default;
};

/// How many of one good, and why.
struct PlannedAmount {
    std::string good; ///< id
    std::string name;
    std::string unit;                  ///< `pieces`, `portions`
    int low = 0, middle = 0, high = 0; ///< likely demand: 10, 50 and 90 % quantiles
    int pieces = 0;                    ///< to make
    int setAside = 0;                  ///< of these, not for this date but for the days after (cold goods)
    double fractile = 0;
    Money price, cost, leftover;
    double expectedMissed = 0, expectedLeft = 0;
    std::vector<PlannedWave> waves;
    std::vector<std::string> because;
    bool operator==(const PlannedAmount&) const = default;
};

struct CardLine {
    std::string what;
    Mass weight;
    std::optional<Celsius> at; ///< water
    std::string note;          ///< `peeled, from 31 kg bought`
    bool operator==(const CardLine&) const = default;
};

/// What one batch is weighed from: one card, one vessel, one making.
struct WeighCard {
    std::string id;      ///< `base-paste 2`
    std::string formula; ///< name
    int number = 1;      ///< of `of` alike
    int of = 1;
    bool forTomorrow = false;
    std::string forWhen; ///< `Friday 27 November` when not for the plan's date
    std::string vessel;
    std::vector<CardLine> lines;
    Mass in, out;
    std::vector<std::pair<std::string, Mass>> lost;
    Mass scaleStep;
    Mass roundingError;
    std::optional<Celsius> target;
    std::vector<std::string> yields; ///< `12 heads of 3.12 kg, 36 pieces of 86.7 g each`
    std::vector<std::string> method;
    std::vector<std::string> allergens;
    std::vector<book::Caution> cautions;
    bool operator==(const WeighCard&) const = default;
};

/// One thing to do, by whom, with what.
struct Task {
    int number = 0;     ///< by start, from 1
    std::string what;   ///< `Line the tins`
    std::string of;     ///< `Beef and onion pie, bake 2`
    std::string amount; ///< `96 pieces of 86.7 g, 8 trays`
    Instant start, end;
    std::vector<std::string> hands; ///< names; none: nobody need stand by
    std::vector<std::string> gear;  ///< names
    std::string card;               ///< weigh card, if it starts from one
    bool isBreak = false;
    std::vector<book::Caution> cautions;
    bool operator==(const Task&) const = default;
};

struct LoadContent {
    std::string good;
    int pieces = 0;
    int trays = 0;
    bool operator==(const LoadContent&) const = default;
};

/// One load of one deck.
struct DeckLoad {
    std::string oven;
    int deck = 1;
    Instant in, out;
    Celsius at;
    std::vector<LoadContent> contents;
    int trays = 0;
    int room = 0;                   ///< trays the deck holds
    std::optional<Instant> lightBy; ///< when the oven must be lit or changed for it
    bool operator==(const DeckLoad&) const = default;
};

/// One person's day.
struct PlannedShift {
    std::string hand;
    Instant from, to;
    std::vector<std::pair<Instant, Instant>> breaks;
    Minutes busy{0};
    bool operator==(const PlannedShift&) const = default;
};

/// Something that must be there when the day begins, made before.
struct FromBefore {
    std::string what;
    Mass mass;
    std::string made; ///< `made on Thursday 26 November`
    bool operator==(const FromBefore&) const = default;
};

/// Bought stuff that the plan uses.
struct Needed {
    std::string stuff;
    Mass mass; ///< as bought, unrounded
    std::int64_t packs = 0;
    std::string pack; ///< `sack of 25 kg`; empty when not bought in packs
    bool operator==(const Needed&) const = default;
};

/// Pieces or paste beyond what is wanted.
struct PlannedSurplus {
    std::string what;
    std::int64_t pieces = 0;
    Mass mass;
    std::string where; ///< `kept chilled for tomorrow`, `re-worked into Base paste`
    bool operator==(const PlannedSurplus&) const = default;
};

struct PiecesLine {
    std::string good; ///< name
    std::string part; ///< `base`, `lid`
    std::int64_t pieces = 0;
    Mass each;  ///< divided weight
    Mass onPie; ///< after trimming
    std::int64_t heads = 0;
    int perHead = 0;
    Mass head;
    Length gauge; ///< sheeter setting
    Length finished;
    Length blankLength, blankWidth;
    bool operator==(const PiecesLine&) const = default;
};

struct Plan {
    std::string house, place, zone;
    Date date;
    std::string note; ///< of a special day
    std::vector<std::pair<Instant, Instant>> open;
    std::string ruleBook;
    bool letterPaper = false;
    std::vector<PlannedAmount> amounts;
    std::vector<PiecesLine> pieces;
    std::vector<WeighCard> cards;
    std::vector<Task> tasks;
    std::vector<DeckLoad> loads;
    std::vector<PlannedShift> shifts;
    std::vector<FromBefore> before;
    std::vector<Needed> needed;
    std::vector<PlannedSurplus> surplus;
    std::vector<std::string> assumptions; ///< what the plan takes for granted
    std::vector<std::string> warnings;    ///< what a person should look at before working by it
    bool operator==(const Plan&) const = default;
};

} // namespace piewright::day
