// Everything that is placed so far, and where more can go. Looks at resources and people; time rules are Bounds' part.
#pragma once

#include "schedule/diary.h"
#include "schedule/level.h"
#include "schedule/line.h"
#include "schedule/model.h"
#include "schedule/problem.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace piewright::schedule {

class Board {
  public:
    /// A use of a cumulative resource by a placed activity.
    struct Booking {
        Tick start;
        Tick end;
        int amount;
        std::size_t activity;
    };

    explicit Board(const Model& model);

    [[nodiscard]] bool isPlaced(std::size_t activity) const { return isPlaced_[activity] != 0; }
    [[nodiscard]] const Placed& placed(std::size_t activity) const { return placed_[activity]; }
    [[nodiscard]] const std::vector<Placed>& placed() const { return placed_; }

    /// Earliest start in [from, upTo] at which the mode has its resources and people; nothing when there is none.
    [[nodiscard]] std::optional<Tick> earliest(std::size_t activity, int mode, Tick from, Tick upTo);
    /// The activity at that very start, with its people chosen; nothing when it does not fit there.
    [[nodiscard]] std::optional<Placed> fit(std::size_t activity, int mode, Tick start);

    void put(std::size_t activity, Placed placed);
    void take(std::size_t activity);

    [[nodiscard]] const Line& line(ResourceIndex resource) const { return lines_[lineOf_[at(resource)]]; }
    [[nodiscard]] const Diary& diary(WorkerIndex worker) const { return diaries_[at(worker)]; }
    [[nodiscard]] const std::vector<Booking>& bookings(ResourceIndex resource) const {
        return bookings_[levelOf_[at(resource)]];
    }

    [[nodiscard]] std::uint64_t work() const { return work_; } ///< placements tried
    void addWork(std::uint64_t more) { work_ += more; }

  private:
    [[nodiscard]] Tick nextFreeOfCrew(const Mode& mode, Tick from) const;
    [[nodiscard]] Tick nextCrew(const Mode& mode, Tick from, Tick upTo);
    void gatherCandidates(const Mode& mode);
    void rank(std::size_t activity, std::vector<WorkerIndex>& workers);

    const Model* model_;
    std::vector<std::size_t> lineOf_, levelOf_; ///< by resource
    std::vector<Line> lines_;
    std::vector<Level> levels_;
    std::vector<std::vector<Booking>> bookings_;
    std::vector<Diary> diaries_;
    std::vector<Placed> placed_;
    std::vector<char> isPlaced_;
    std::uint64_t work_ = 0;
    std::vector<WorkerIndex> candidates_, free_; ///< scratch
    std::vector<char> mark_;                     ///< scratch, by worker
};

} // namespace piewright::schedule
