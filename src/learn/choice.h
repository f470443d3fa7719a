// x is one of several optional variables: the one that is present.
#pragma once

#include "learn/solver.h"

#include <vector>

namespace piewright::learn {

/// Bounds of `x` from those of the candidates that may still be present: x >= min(candidate + offset). The other
/// direction, from x to a present candidate, is a matter of arcs. One half only.
class Choice final : public Propagator {
  public:
    struct Candidate {
        Half half = 0;
        Value offset = 0;
        Literal present = kTrue;
    };
    static void post(Solver& solver, Half chosen, std::vector<Candidate> candidates);

    Choice(Half chosen, std::vector<Candidate> candidates) : chosen_(chosen), candidates_(std::move(candidates)) {}
    bool propagate(Solver& solver) override;
    void explain(const Solver& solver, Literal consequence, std::uint32_t data, std::int32_t position,
                 std::vector<Literal>& premises) override;

  private:
    Half chosen_;
    std::vector<Candidate> candidates_;
    std::int32_t id_ = 0;
};

} // namespace piewright::learn
