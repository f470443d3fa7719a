// The naive twin of the kernel: every assignment of a few small variables, every rule looked at literally.
#pragma once

#include "learn/solver.h"

#include <functional>
#include <random>
#include <span>
#include <vector>

namespace piewright::learn {

struct Domain {
    Variable variable{};
    Value least = 0;
    Value most = 0;
};

/// Values of all variables by index, 0 where not named.
using Assignment = std::vector<Value>;

inline bool holds(const Assignment& values, Literal literal) {
    const Value value = values[at(variableOf(literal.half))];
    return ((literal.half & 1) == 0 ? value : -value) >= literal.bound;
}

/// Calls `visit` with each assignment until it returns true; whether it did.
inline bool enumerate(std::span<const Domain> domains, Assignment& values,
                      const std::function<bool(const Assignment&)>& visit) {
    if (domains.empty()) return visit(values);
    for (Value value = domains[0].least; value <= domains[0].most; ++value) {
        values[at(domains[0].variable)] = value;
        if (enumerate(domains.subspan(1), values, visit)) return true;
    }
    return false;
}

/// Own draws: the standard distributions differ between libraries.
class Draw {
  public:
    explicit Draw(std::uint64_t seed) : random_(seed) {}
    int operator()(int from, int to) {
        return from + static_cast<int>(random_() % static_cast<std::uint64_t>(to - from + 1));
    }
    bool chance(int percent) { return (*this)(1, 100) <= percent; }

  private:
    std::mt19937_64 random_;
};

/// Smallest value of each variable in turn; activity decides in the odd restarts.
class InOrder final : public Brancher {
  public:
    explicit InOrder(std::vector<Domain> domains) : domains_(std::move(domains)) {}
    std::optional<Literal> first(const Solver& solver) override { return isTurn_ ? last(solver) : std::nullopt; }
    std::optional<Literal> last(const Solver& solver) override {
        for (const Domain& domain : domains_) {
            if (!solver.isFixed(domain.variable)) return atMost(domain.variable, solver.lower(domain.variable));
        }
        return std::nullopt;
    }
    void restarted(std::int64_t count) override { isTurn_ = count % 2 == 0; }

  private:
    std::vector<Domain> domains_;
    bool isTurn_ = true;
};

} // namespace piewright::learn
