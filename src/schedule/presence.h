// Which activities are done for certain, and which are done wherever another is.
#pragma once

#include "schedule/problem.h"

#include <vector>

namespace piewright::schedule {

class Presence {
  public:
    /// O(optional activities · implications).
    explicit Presence(const Problem& problem);

    /// Not optional, or asked for by one that is not.
    [[nodiscard]] bool isRequired(std::size_t activity) const { return isRequired_[activity] != 0; }
    /// Wherever `given` is done, `also` is done.
    [[nodiscard]] bool follows(std::size_t given, std::size_t also) const;
    /// Optional activities that are done wherever this optional one is, itself among them, in order; empty when it is
    /// required.
    [[nodiscard]] const std::vector<std::size_t>& implied(std::size_t activity) const { return implied_[activity]; }

  private:
    std::vector<char> isRequired_;
    std::vector<std::vector<std::size_t>> implied_;
};

} // namespace piewright::schedule
