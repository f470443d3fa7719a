// Which part of a schedule a neighbourhood lets go.
#pragma once

#include "schedule/dice.h"
#include "schedule/problem.h"

#include <cstddef>
#include <vector>

namespace piewright::schedule {

enum class Relax {
    Window,    ///< what lies around a time
    Peak,      ///< what uses one resource around a time
    Linked,    ///< what hangs together by lags, from one activity on
    Scattered, ///< any
    Two        ///< what lies around either of two times
};
constexpr std::size_t kRelaxes = 5;

class Relaxing {
  public:
    explicit Relaxing(const Problem& problem);
    /// About `count` activities, as a mark for each; O(n log n).
    [[nodiscard]] std::vector<char> pick(Relax how, std::size_t count, const Schedule& schedule, Dice& dice) const;

  private:
    void nearest(Tick time, std::size_t count, const Schedule& schedule, const std::vector<std::size_t>& among,
                 std::vector<char>& isPicked) const;

    std::vector<std::vector<std::size_t>> linked_; ///< by activity
    std::vector<std::vector<std::size_t>> users_;  ///< of each resource and each worker with anything in some mode
    std::vector<std::size_t> all_;
};

} // namespace piewright::schedule
