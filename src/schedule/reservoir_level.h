// A reservoir that must not run dry, on the learning kernel. (One that must not overflow is the same with all signs
// turned.)
#pragma once

#include "learn/solver.h"
#include "schedule/compiled_time.h"

#include <vector>

namespace piewright::schedule {

/// `amount`, not 0, flows in or out at `time`, where it is done.
struct Flowing {
    Time time;
    std::int64_t amount = 0;
    learn::Literal present = learn::kTrue;
};

/// initial + what has flowed by then >= least, at all times. What may have come in by a time, less what has surely gone
/// out, bounds the level from above (compare Neumann, Schwindt 2002, Mathematical Methods of Operations Research 56).
class ReservoirLevel final : public learn::Propagator {
  public:
    /// Propagates only where `active` holds. initial >= least.
    static void post(learn::Solver& solver, std::vector<Flowing> flows, std::int64_t initial, std::int64_t least,
                     learn::Literal active);

    ReservoirLevel(std::vector<Flowing> flows, std::int64_t spare, learn::Literal active)
        : flows_(std::move(flows)), spare_(spare), active_(active) {}
    /// O(n^2).
    bool propagate(learn::Solver& solver) override;

  private:
    [[nodiscard]] bool mayBeIn(const learn::Solver& solver, const Flowing& flow, Tick time) const;
    [[nodiscard]] bool isOut(const learn::Solver& solver, const Flowing& flow, Tick time) const;
    /// What there may be above `least` at the most, without one of them.
    [[nodiscard]] std::int64_t levelAt(const learn::Solver& solver, std::size_t without, Tick time) const;
    /// Premises for: without `index` the level at `time` is below `below` at the most.
    void gather(const learn::Solver& solver, std::size_t index, Tick time, std::int64_t below);
    bool keepOut(learn::Solver& solver, std::size_t index, Tick from, Tick until);
    bool callIn(learn::Solver& solver, std::size_t index, Tick by);

    std::vector<Flowing> flows_;
    std::int64_t spare_; ///< initial - least
    learn::Literal active_;
    std::vector<Tick> times_;
    struct Share {
        std::int32_t position;
        std::size_t flow;
    };
    std::vector<Share> shares_;
    std::vector<learn::Literal> premises_;
};

} // namespace piewright::schedule
