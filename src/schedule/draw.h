// Random draws that are the same everywhere: the distributions of the standard library differ from one to another.
#pragma once

#include <cstddef>
#include <cstdint>
#include <random>

namespace piewright::schedule {

class Draw {
  public:
    explicit Draw(std::uint64_t seed) : random_(seed) {}
    /// 0..count-1; count > 0.
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(random_() % count); }
    bool chance(std::uint64_t percent) { return random_() % 100 < percent; }
    /// In [0, 1).
    double share() { return static_cast<double>(random_() >> 11U) * 0x1.0p-53; }

  private:
    std::mt19937_64 random_;
};

} // namespace piewright::schedule
