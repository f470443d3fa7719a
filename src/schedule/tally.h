// What a schedule in the making costs, kept up to date while activities come and go.
#pragma once

#include "schedule/level.h"
#include "schedule/model.h"
#include "schedule/problem.h"

#include <vector>

namespace piewright::schedule {

class Board;

/// Value of a curve. O(log pieces).
[[nodiscard]] Cost valueAt(const Curve& curve, Tick t);

class Tally {
  public:
    explicit Tally(const Model& model);

    /// Of all that is placed or left out. What is neither costs nothing yet.
    [[nodiscard]] Cost total() const { return total_; }

    /// The activity is being placed, or taken away; `board` holds all others that are placed, and not this one.
    /// Returns by how much the total grows. O(costs that speak of it, and a few steps in time).
    Cost put(const Board& board, std::size_t activity, const Placed& placed);
    Cost take(const Board& board, std::size_t activity, const Placed& placed);
    /// It is left out, or no longer.
    Cost leaveOut(std::size_t activity);
    Cost takeUp(std::size_t activity);

    /// What depends on the time alone: curves of the activity's start and end, and its way from where it was before.
    [[nodiscard]] Cost ofTime(std::size_t activity, Tick start, Tick end) const;
    /// How much dearer one person is than another, with everyone else as placed; `placed` need have nobody yet.
    [[nodiscard]] Cost ofPerson(std::size_t activity, const Placed& placed, WorkerIndex worker) const;
    /// Ticks at which the cost of its start, or end, bends or jumps; told as starts for the mode's duration.
    void addCorners(std::size_t activity, Tick duration, std::vector<Tick>& starts) const;
    /// Nothing costs anything.
    [[nodiscard]] bool isIdle() const { return isIdle_; }
    /// Nothing but extents costs anything: earlier is as good or better, as a rule.
    [[nodiscard]] bool isOfExtents() const { return isOfExtents_; }
    /// Whether people make a difference to what the activity costs.
    [[nodiscard]] bool caresForPeople(std::size_t activity) const;

  private:
    struct Times {
        std::vector<Tick> starts, ends; ///< in order
    };
    [[nodiscard]] Cost ofExtent(std::size_t extent) const;
    void changeExtent(std::size_t extent, Tick start, Tick end, bool isComing);
    template <class Visit> void forExtents(const Placed& placed, const Mode& mode, Visit visit);
    Cost change(const Board& board, std::size_t activity, const Placed& placed, bool isComing);
    [[nodiscard]] Cost ofSetups(const Board& board, const Mode& mode, const Placed& placed) const;
    [[nodiscard]] Cost ofHandOvers(const Board& board, std::size_t activity, const Placed& placed) const;
    [[nodiscard]] Cost ofBefore(std::size_t activity, const Placed* placed) const;

    const Model& model_;
    const Costs& costs_;
    Cost total_ = 0;
    bool isIdle_ = true;
    bool isOfExtents_ = true;
    bool isAnyPersonal_ = false;                          ///< work, or extents of people
    std::vector<std::vector<const TimeCost*>> times_;     ///< by activity
    std::vector<std::vector<const Before*>> before_;      ///< by activity
    std::vector<std::vector<const HandOver*>> handOvers_; ///< by activity, either way
    std::vector<std::size_t> everywhere_;                 ///< extents of all activities
    std::vector<std::vector<std::size_t>> extentsOf_;     ///< by resource
    std::vector<std::vector<std::size_t>> extentsBy_;     ///< by worker
    std::vector<std::vector<std::size_t>> loadsOf_;       ///< by resource
    std::vector<std::vector<std::size_t>> workBy_;        ///< by worker
    std::vector<Times> extents_;
    std::vector<Level> levels_;        ///< by load cost
    std::vector<std::int64_t> worked_; ///< by worker: ticks
    std::vector<std::size_t> touched_; ///< scratch: extents
    const Board* board_ = nullptr;     ///< as of the last put or take
};

} // namespace piewright::schedule
