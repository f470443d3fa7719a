// First the activity that can start earliest, as early as it can; after seven of eight restarts activity decides.
#pragma once

#include "learn/brancher.h"
#include "schedule/compiled.h"

namespace piewright::schedule {

class BranchEarliest final : public learn::Brancher {
  public:
    explicit BranchEarliest(const Compiled& compiled) : compiled_(compiled) {}

    std::optional<learn::Literal> first(const learn::Solver& solver) override;
    std::optional<learn::Literal> last(const learn::Solver& solver) override;
    void restarted(std::int64_t count) override { isEarliestTurn_ = count % 8 == 0; }

  private:
    static bool isChosen(const learn::Solver& solver, const Doing& doing);
    std::optional<learn::Literal> undecided(const learn::Solver& solver);

    const Compiled& compiled_;
    bool isEarliestTurn_ = true;
};

} // namespace piewright::schedule
