// Moves what is placed earlier or later without changing who does what, in which mode, or in what order: the times at
// which that order costs least. Where the costs of time are convex that is exact: each step moves the set of units that
// gains most from it, a minimum cut over what is tight (steepest descent on an L-natural convex function: Murota 2003,
// Discrete Convex Analysis; closures by cuts: Picard 1976, Management Science 22).
#pragma once

#include "schedule/draft.h"
#include "schedule/model.h"

#include <cstdint>
#include <vector>

namespace piewright::schedule {

class Shift {
  public:
    /// `model` must outlive it and not be hopeless.
    explicit Shift(const Model& model);

    /// True when the draft, all of which must be placed or left out, has become cheaper; else it is as it was. Uses the
    /// draft's mark.
    bool run(Draft& draft);

  private:
    using Position = std::size_t; ///< a unit, or the first start or last end of an extent
    struct Arc {
        Position from;
        Position to;
        std::int64_t least; ///< time(to) - time(from)
    };

    void gather(const Draft& draft);
    void gatherUnits(const Draft& draft);
    void gatherLines(const Draft& draft);
    void gatherLevels(const Draft& draft);
    void gatherStocks(const Draft& draft);
    void gatherExtents(const Draft& draft);
    void order(std::size_t one, Tick oneEnds, std::size_t other, Tick otherStarts, Tick gap);
    void tie(std::size_t one, std::size_t other);
    void notBefore(std::size_t activity, Tick start, Tick earliest);
    void notAfter(std::size_t activity, Tick end, Tick latest);
    /// Moves the best set by 1 or more ticks; false when none gains.
    bool step(const Draft& draft, int way);
    [[nodiscard]] Cost costAt(const Draft& draft, Position position, std::int64_t time) const;
    [[nodiscard]] std::int64_t untilBend(const Draft& draft, Position position, int way) const;
    bool apply(Draft& draft);

    const Model& model_;
    std::size_t units_;
    std::vector<std::int64_t> time_, lower_, upper_; ///< by position
    std::vector<char> isHere_;                       ///< by position
    std::vector<Arc> arcs_;
    std::vector<char> isMoving_; ///< scratch
};

} // namespace piewright::schedule
