// Builds a schedule unit by unit (serial schedule generation) and, where one finds no place, takes others away.
#pragma once

#include "schedule/draft.h"
#include "schedule/eject.h"
#include "schedule/model.h"

#include <atomic>
#include <cstdint>
#include <optional>
#include <random>
#include <vector>

namespace piewright::schedule {

class Builder {
  public:
    Builder(const Model& model, std::uint64_t seed);

    /// Goes on until a schedule is found or `work` placements were tried in all; may be called again with more.
    [[nodiscard]] std::optional<Schedule> run(std::uint64_t work, const std::atomic<bool>* cancelled = nullptr);
    /// A schedule from elsewhere, moved to the left and into earlier modes, or to where it costs less.
    [[nodiscard]] Schedule compacted(const Schedule& schedule);
    [[nodiscard]] std::uint64_t work() const { return draft_.board().work(); }
    /// Of the schedule found last.
    [[nodiscard]] Cost value() const { return draft_.total(); }
    /// How often each unit found no place.
    [[nodiscard]] const std::vector<std::uint64_t>& failures() const { return failures_; }

  private:
    void restart();
    [[nodiscard]] std::size_t next();
    bool place(std::size_t unit);
    void eject(std::size_t unit);
    [[nodiscard]] bool waitsForStock(std::size_t unit) const;
    void leaveOutOptional();
    void fillIn();
    void compact();
    [[nodiscard]] std::uint64_t draw(std::uint64_t below) { return random_() % below; }

    const Model& model_;
    Draft draft_;
    std::mt19937_64 random_;
    std::vector<std::uint64_t> weights_; ///< by unit, grow with every failure
    std::vector<std::uint64_t> failures_;
    Ejection ejection_;
    std::vector<char> isDeferred_; ///< by unit: until something else is placed
    std::vector<std::size_t> deferred_;
    std::vector<std::int64_t> bias_;       ///< by unit, on its latest start
    std::vector<std::vector<char>> flows_; ///< by resource and unit: 1 into it, 2 out of it, in some mode
    std::size_t ejections_ = 0;            ///< since the last restart
    std::size_t restarts_ = 0;
    bool begun_ = false;
};

} // namespace piewright::schedule
