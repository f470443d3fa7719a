// Builds a schedule activity by activity (serial schedule generation) and, where one finds no place, takes others away.
#pragma once

#include "schedule/board.h"
#include "schedule/eject.h"
#include "schedule/model.h"
#include "schedule/network.h"

#include <cstdint>
#include <optional>
#include <random>
#include <vector>

namespace piewright::schedule {

class Builder {
  public:
    Builder(const Model& model, std::uint64_t seed);

    /// Goes on until a schedule is found or `work` placements were tried in all; may be called again with more.
    [[nodiscard]] std::optional<Schedule> run(std::uint64_t work);
    /// A schedule from elsewhere, moved to the left and into earlier modes where there is room.
    [[nodiscard]] Schedule compacted(const Schedule& schedule);
    [[nodiscard]] std::uint64_t work() const { return board_.work(); }
    /// How often each unit found no place.
    [[nodiscard]] const std::vector<std::uint64_t>& failures() const { return failures_; }

  private:
    void restart();
    void renewBounds();
    [[nodiscard]] std::size_t next() const;
    bool place(std::size_t unit);
    bool placeAt(std::size_t unit, Tick start, const std::vector<int>* modes);
    [[nodiscard]] std::optional<Tick> earliest(std::size_t unit, Tick from, Tick upTo);
    void eject(std::size_t unit);
    void takeUnit(std::size_t unit);
    void compact();
    [[nodiscard]] std::uint64_t draw(std::uint64_t below) { return random_() % below; }

    const Model& model_;
    Bounds open_;   ///< nothing placed
    Bounds bounds_; ///< with all that is placed
    Board board_;
    std::mt19937_64 random_;
    std::vector<std::uint64_t> weights_; ///< by unit, grow with every failure
    std::vector<std::uint64_t> failures_;
    Ejection ejection_;
    std::vector<char> isPlaced_; ///< by unit
    std::size_t unplaced_ = 0;
    std::vector<std::int64_t> bias_; ///< by unit, on its latest start
    std::size_t ejections_ = 0;      ///< since the last restart
    std::size_t restarts_ = 0;
    bool begun_ = false;
};

} // namespace piewright::schedule
