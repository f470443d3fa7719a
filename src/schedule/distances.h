// How far apart the rules on time force two units to be: longest paths in the network, each found when first asked for.
#pragma once

#include "schedule/model.h"
#include "schedule/network.h"

#include <cstdint>
#include <limits>
#include <span>
#include <vector>

namespace piewright::schedule {

class Distances {
  public:
    /// A node whose time is told by where a unit is: its own start and, where their durations are open, its members'
    /// ends.
    struct Mark {
        std::size_t unit;
        Node node;
    };
    static constexpr Tick kNone = std::numeric_limits<Tick>::min(); ///< no path

    explicit Distances(const Model& model);

    [[nodiscard]] const std::vector<Mark>& marks() const { return marks_; }
    /// Positions in marks() of one unit.
    [[nodiscard]] std::pair<std::size_t, std::size_t> marksOf(std::size_t unit) const {
        return {first_[unit], first_[unit + 1]};
    }
    /// By mark: least time(mark) - time(from); with every duration still open. Valid until the next call.
    [[nodiscard]] std::span<const Tick> after(std::size_t from) { return row(from, true); }
    /// By mark: least time(to) - time(mark); likewise.
    [[nodiscard]] std::span<const Tick> before(std::size_t to) { return row(to, false); }

  private:
    [[nodiscard]] std::span<const Tick> row(std::size_t mark, bool forward);
    void find(Node from, bool forward, std::vector<Tick>& row);

    const Model& model_;
    std::vector<Mark> marks_;
    std::vector<std::size_t> first_;      ///< by unit
    std::vector<std::vector<Tick>> rows_; ///< 2·mark, and one more for backward; empty: not yet found
    std::size_t kept_ = 0;                ///< numbers in all rows
    std::vector<std::int64_t> distance_;
    std::vector<Node> queue_, touched_;
    std::vector<char> isQueued_;
};

} // namespace piewright::schedule
