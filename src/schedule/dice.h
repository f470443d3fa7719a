// Random numbers that are the same on every machine: the distributions of the standard library are not.
#pragma once

#include "schedule/problem.h"

#include <cstdint>
#include <random>

namespace piewright::schedule {

class Dice {
  public:
    explicit Dice(std::uint64_t seed) : engine_(seed) {}
    /// Of 0 .. count - 1; count > 0, below 2^32.
    std::size_t below(std::size_t count) {
        return static_cast<std::size_t>((engine_() >> 32) * static_cast<std::uint64_t>(count) >> 32);
    }
    /// Of from .. to.
    Tick between(Tick from, Tick to) {
        return from + static_cast<Tick>(below(static_cast<std::size_t>(to - from) + 1));
    }
    bool chance(std::size_t percent) { return below(100) < percent; }
    /// Of [0, 1).
    double share() { return static_cast<double>(engine_() >> 11) * 0x1p-53; }

  private:
    std::mt19937_64 engine_;
};

} // namespace piewright::schedule
