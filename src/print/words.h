// A plan's values in the words that its sheets use, paper and terminal alike.
#pragma once

#include "day/plan.h"
#include "units/text.h"

#include <optional>
#include <string>
#include <vector>

namespace piewright::print {

/// Valid UTF-8 in one line: broken bytes become U+FFFD, control characters become spaces.
[[nodiscard]] std::string clean(const std::string& text);

/// The wall clock of the house on the plan's date.
class Times {
  public:
    explicit Times(const day::Plan& plan);

    /// False: the plan's zone is not known here, and times are in UTC.
    [[nodiscard]] bool zoneKnown() const { return zone_.has_value(); }
    /// `04:30`; `Sat 00:30` on another date; `01:30a`, `01:30b` for a time that the clock shows twice.
    [[nodiscard]] std::string clock(Instant instant) const;
    /// `04:30–05:10`
    [[nodiscard]] std::string span(Instant from, Instant to) const;
    /// `Friday 27 November 2026`
    [[nodiscard]] const std::string& day() const { return day_; }
    /// What to say when the clocks change between these instants; empty otherwise.
    [[nodiscard]] std::string changeBetween(Instant from, Instant to) const;
    /// Whole hours on the wall clock are whole hours of these: for the axis of a picture.
    [[nodiscard]] Seconds pastTheHour(Instant instant) const;

  private:
    [[nodiscard]] Date dateOf(Instant instant) const;
    [[nodiscard]] ClockTime clockOf(Instant instant) const;
    std::optional<Zone> zone_;
    Date date_;
    std::string day_;
};

/// `open 11:00–14:00 and 17:00–20:00`, `shut`
[[nodiscard]] std::string openingOf(const day::Plan& plan, const Times& times);
/// `1 piece`, `96 pieces`; `unit` in the plural
[[nodiscard]] std::string countOf(std::int64_t count, const std::string& unit);
/// `Nell, Joss`
[[nodiscard]] std::string joined(const std::vector<std::string>& texts, const char* between = ", ");
/// `Oven A, deck 1`
[[nodiscard]] std::string deckName(const day::DeckLoad& load);
/// `batch 2 of 3`; empty when there is only one
[[nodiscard]] std::string batchOf(const day::WeighCard& card);
/// `2 × sack of 25 kg`; empty when not bought in packs
[[nodiscard]] std::string packsOf(const day::Needed& needed);
/// `0.4`, `12`: an expectation, to what it is good for
[[nodiscard]] std::string expectationOf(double count);
/// `360 × 330 mm`, and plain when square or only one way is given
[[nodiscard]] std::string blankOf(const day::PiecesLine& line);

/// `In 21.2 kg, less 212 g (bowl), out 21 kg. Weighed in steps of 5 g, which adds 2 g.`
[[nodiscard]] std::string sumsOf(const day::WeighCard& card);
/// `Contains: milk`; says so when the book names none, which is not the same as there being none.
[[nodiscard]] std::string allergensOf(const day::WeighCard& card);
/// `96 × Beef and onion pie`
[[nodiscard]] std::string contentOf(const day::LoadContent& content);
/// All of a load, joined by commas.
[[nodiscard]] std::string contentsOf(const day::DeckLoad& load);
/// What to say when the clocks change between the first task and the last; empty otherwise.
[[nodiscard]] std::string clockChangeOf(const day::Plan& plan, const Times& times);

/// Indices of the plan's loads by oven and deck in order of name, each deck's by time.
struct Deck {
    std::string name;
    std::vector<const day::DeckLoad*> loads;
};
[[nodiscard]] std::vector<Deck> decksOf(const day::Plan& plan);

/// Tasks by start, then number.
[[nodiscard]] std::vector<const day::Task*> tasksInOrder(const day::Plan& plan);
/// Everybody who has a shift or a task, in the order of first coming in.
[[nodiscard]] std::vector<std::string> handsOf(const day::Plan& plan);
[[nodiscard]] const day::PlannedShift* shiftOf(const day::Plan& plan, const std::string& hand);
[[nodiscard]] bool takesPart(const day::Task& task, const std::string& hand);

} // namespace piewright::print
