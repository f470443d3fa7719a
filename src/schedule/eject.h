// What stands in the way of a unit at a given start: guided ejection in the manner of Nagata and Bräysy 2009
// (Operations Research Letters 37), with the greatest lags "bulldozed" as by Smith and Pyle 2004 (AAAI-04).
#pragma once

#include "schedule/board.h"
#include "schedule/distances.h"
#include "schedule/model.h"
#include "schedule/network.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace piewright::schedule {

class Ejection {
  public:
    struct Plan {
        std::uint64_t cost = 0;         ///< sum of the weights of what must go
        std::vector<std::size_t> units; ///< that must go
        std::vector<int> modes;         ///< for the members that come
    };

    /// `weights` by unit.
    Ejection(const Model& model, const std::vector<std::uint64_t>& weights);

    /// The cheapest things found to take away so that the unit can start then; nothing when no taking away helps, or
    /// when it would cost `limit` or more.
    [[nodiscard]] std::optional<Plan> plan(const Board& board, const Bounds& bounds, std::size_t unit, Tick start,
                                           std::uint64_t limit);

  private:
    void add(std::size_t activity);
    [[nodiscard]] std::uint64_t newCost(const std::vector<std::size_t>& units);
    /// Units in the way of one mode; false when nothing that may be moved is to blame.
    bool gatherBlockers(const Board& board, std::size_t activity, int mode, Tick start,
                        std::vector<std::size_t>& units);
    bool gatherOnLevel(const Board& board, const Use& use, Tick start, Tick end, std::vector<std::size_t>& units);
    bool gatherOnLine(const Board& board, const Use& use, Tick start, const Stretch& stretch,
                      std::vector<std::size_t>& units);
    bool gatherAtStocks(const Board& board, const Mode& mode, Tick start, Tick end, std::vector<std::size_t>& units);
    bool gatherPeople(const Board& board, std::size_t activity, const Mode& mode, Tick start,
                      std::vector<std::size_t>& units);
    [[nodiscard]] bool isGone(std::size_t activity, const std::vector<std::size_t>& units) const;
    void gatherTemporal(const Board& board, std::size_t unit, Tick start, const std::vector<int>& modes);

    const Model& model_;
    const std::vector<std::uint64_t>& weights_;
    std::vector<std::size_t> chosen_;
    std::vector<char> isChosen_; ///< by unit
    std::uint64_t cost_ = 0;
    Distances distances_;
};

} // namespace piewright::schedule
