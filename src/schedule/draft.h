// A schedule in the making: which units are in it and where, what is left out, what the rest may still do, and what it
// costs so far. All that builds or mends schedules works on one of these.
#pragma once

#include "schedule/board.h"
#include "schedule/model.h"
#include "schedule/network.h"
#include "schedule/tally.h"

#include <cstdint>
#include <optional>
#include <random>
#include <span>
#include <vector>

namespace piewright::schedule {

class Draft {
  public:
    enum class Now : char { Open, In, Out };

    /// Everything open. `model` must not be hopeless.
    explicit Draft(const Model& model);

    [[nodiscard]] Now now(std::size_t unit) const { return now_[unit]; }
    [[nodiscard]] const std::vector<std::size_t>& open() const { return open_; } ///< units, in no particular order
    [[nodiscard]] const std::vector<std::size_t>& out() const { return out_; }
    [[nodiscard]] Board& board() { return board_; }
    [[nodiscard]] const Board& board() const { return board_; }
    [[nodiscard]] const Tally& tally() const { return tally_; }
    /// Windows of what is open or left out; call after anything was taken away.
    const Bounds& bounds();
    [[nodiscard]] Cost total() const { return tally_.total(); }
    [[nodiscard]] Tick startOfUnit(std::size_t unit) const {
        return board_.placed(model_.units[unit].members.front()).start;
    }

    /// As given, by member; what it needs must be free. False, and the unit is open, when time rules forbid it.
    bool put(std::size_t unit, std::span<const Placed> places);
    /// At that very start, in the first modes that fit, or in `modes`. False, and the unit is open, where it can't be.
    bool putAt(std::size_t unit, Tick start, const std::vector<int>* modes = nullptr);
    /// At the earliest start there is.
    bool putEarliest(std::size_t unit);
    struct Search {
        bool isLateFirst = false;          ///< of starts that cost the same
        std::mt19937_64* random = nullptr; ///< to pass by a start now and then
        std::size_t tries = 48;
    };
    /// At the cheapest of the starts that are likely to be so: corners of curves, neighbours, ends of the window.
    bool putCheapest(std::size_t unit, const Search& search);
    /// As near to a start as there is room among those starts and the next free ones.
    bool putNearest(std::size_t unit, Tick start);
    /// Just so, if all of it fits; reservoirs are looked at unless settle() is going to be called.
    bool putIfFits(std::size_t unit, std::span<const Placed> places, bool isByStock = true);
    /// Puts all units of an optional group in, with what it implies; then leaves out again what is dearer than without.
    /// False when the group stays out. The units must be open; what it implies may be open or out.
    bool putWorthwhile(std::size_t group, const Search& search);

    /// From open to out, and back.
    void leaveOut(std::size_t unit);
    void takeUp(std::size_t unit);
    /// Out of the schedule: the unit, what must go with it, and what then has no stock. All of it is open then.
    void remove(std::size_t unit);
    /// Only these, with nothing that may have to go with them: they are going to be put elsewhere.
    void takeAll(const std::vector<std::pair<std::size_t, std::vector<Placed>>>& units);
    /// All reservoirs are within their limits.
    [[nodiscard]] bool isSound() const;
    /// Takes out what has no stock.
    void settle();

    /// Earliest start in [from, upTo] at which each member has room for itself, within its bounds or, `isOpen`, within
    /// those with nothing placed.
    [[nodiscard]] std::optional<Tick> earliest(std::size_t unit, Tick from, Tick upTo, bool isOpen = false);

    /// From here on, what changes is kept track of.
    void mark();
    /// Back to the mark.
    void rollBack();
    /// Units changed since the mark.
    [[nodiscard]] std::size_t changed() const { return journal_.size(); }

  private:
    struct Past {
        std::size_t unit;
        Now now;
        std::vector<Placed> places;
    };
    void remember(std::size_t unit);
    void setNow(std::size_t unit, Now now);
    void take(std::size_t unit);
    void takeGroup(std::size_t group);
    void takeMember(std::size_t activity);
    void gatherStarts(std::size_t unit, Tick from, Tick to);
    bool tryMembers(std::size_t unit, Tick start, Cost limit, Cost& cost);
    [[nodiscard]] bool isInWindow(std::size_t activity, Tick start, Tick end) const {
        return start >= bounds_.lower(startOf(activity)) && start <= bounds_.upper(startOf(activity)) &&
               end >= bounds_.lower(endOf(activity)) && end <= bounds_.upper(endOf(activity));
    }

    const Model& model_;
    Board board_;
    Bounds bounds_;
    Tally tally_;
    bool isStale_ = false;
    std::vector<Now> now_;
    std::vector<std::size_t> open_, out_;
    std::vector<std::size_t> place_; ///< by unit: where it is in open_ or out_
    std::vector<Past> journal_;
    std::vector<std::uint64_t> journaled_; ///< by unit: the mark at which it was remembered
    std::uint64_t marks_ = 1;
    bool isMarked_ = false;

    std::vector<std::size_t> loose_;             ///< scratch
    std::vector<Tick> starts_;                   ///< scratch
    std::vector<std::pair<Cost, Tick>> ordered_; ///< scratch: what the time costs, and the start
    std::vector<Placed> trial_;                  ///< scratch: by member
    std::vector<Placed> best_;                   ///< scratch
};

} // namespace piewright::schedule
