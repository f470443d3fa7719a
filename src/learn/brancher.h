// Where the search asks what to try next.
#pragma once

#include "learn/literal.h"

#include <cstdint>
#include <optional>

namespace piewright::learn {

class Solver;

class Brancher {
  public:
    Brancher() = default;
    Brancher(const Brancher&) = delete;
    Brancher& operator=(const Brancher&) = delete;
    Brancher(Brancher&&) = delete;
    Brancher& operator=(Brancher&&) = delete;
    virtual ~Brancher() = default;

    /// Asked before activity decides; an undecided literal, or nothing to leave the choice to activity.
    virtual std::optional<Literal> first(const Solver& solver) = 0;
    /// Asked when activity has nothing left; nothing means that every variable that counts is fixed: a solution.
    virtual std::optional<Literal> last(const Solver& solver) = 0;
    /// A restart, the `count`th of this solve.
    virtual void restarted(std::int64_t count) = 0;
};

} // namespace piewright::learn
