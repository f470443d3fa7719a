// Everything that is placed so far, and where more can go. Looks at resources and people; time rules are Bounds' part.
#pragma once

#include "schedule/diary.h"
#include "schedule/level.h"
#include "schedule/line.h"
#include "schedule/model.h"
#include "schedule/problem.h"
#include "schedule/stock.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace piewright::schedule {

class Tally;

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
    /// What is not placed is left out.
    [[nodiscard]] const std::vector<Placed>& placed() const { return placed_; }

    /// Earliest start in [from, upTo] at which the mode has its resources and people; nothing when there is none.
    [[nodiscard]] std::optional<Tick> earliest(std::size_t activity, int mode, Tick from, Tick upTo);
    /// The activity at that very start, with its people chosen: those who cost least by the tally, if there is one;
    /// nothing when it does not fit there.
    [[nodiscard]] std::optional<Placed> fit(std::size_t activity, int mode, Tick start, const Tally* tally = nullptr);
    /// Whether it fits just as it is, by people and by all resources but reservoirs.
    [[nodiscard]] bool takes(std::size_t activity, const Placed& placed);

    void put(std::size_t activity, Placed placed);
    void take(std::size_t activity);

    [[nodiscard]] const Line& line(ResourceIndex resource) const { return lines_[placeOf_[at(resource)]]; }
    [[nodiscard]] const Stock& stock(ResourceIndex resource) const { return stocks_[placeOf_[at(resource)]]; }
    [[nodiscard]] const Diary& diary(WorkerIndex worker) const { return diaries_[at(worker)]; }
    [[nodiscard]] const std::vector<Booking>& bookings(ResourceIndex resource) const {
        return bookings_[placeOf_[at(resource)]];
    }
    [[nodiscard]] const std::vector<Stock>& stocks() const { return stocks_; }

    [[nodiscard]] std::uint64_t work() const { return work_; } ///< placements tried
    void addWork(std::uint64_t more) { work_ += more; }

  private:
    [[nodiscard]] Tick nextRoom(const Mode& way, const Stretch& stretch, Tick from, Tick upTo, bool isByStock = true);
    [[nodiscard]] Tick nextFlow(const Mode& way, const Stretch& stretch, Tick start);
    [[nodiscard]] Tick nextCrew(const Mode& way, const Stretch& stretch, Tick from, Tick upTo);
    /// Who may take part, and who must; false when who is named outright may not.
    bool gatherCandidates(std::size_t activity, const Mode& way);
    void rank(std::size_t activity, const Tally* tally, const Placed& placed, std::vector<WorkerIndex>& workers);
    [[nodiscard]] bool isWith(std::size_t activity, WorkerIndex worker) const;

    const Model* model_;
    std::vector<std::size_t> placeOf_; ///< by resource: where it is among its kind
    std::vector<Line> lines_;
    std::vector<Level> levels_;
    std::vector<Stock> stocks_;
    std::vector<std::vector<Booking>> bookings_;
    std::vector<Diary> diaries_;
    std::vector<Placed> placed_;
    std::vector<char> isPlaced_;
    std::uint64_t work_ = 0;
    std::vector<WorkerIndex> candidates_, free_; ///< scratch; those who must take part come first
    std::size_t forced_ = 0;                     ///< how many of the candidates must
    std::vector<char> mark_;                     ///< scratch, by worker
    std::vector<Stock::Change> changes_;         ///< scratch
    struct Ranked {
        Cost cost;
        int versatility;
        int mark;
        WorkerIndex worker;
        auto operator<=>(const Ranked&) const = default;
    };
    std::vector<Ranked> ranked_; ///< scratch
};

} // namespace piewright::schedule
