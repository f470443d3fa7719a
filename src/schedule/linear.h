// A weighted sum on the learning kernel.
#pragma once

#include "learn/solver.h"

#include <cstdint>
#include <vector>

namespace piewright::schedule {

/// Sum of weight * half >= least. Bounds consistent. The variables all count, or are all optional by one literal.
class Linear final : public learn::Propagator {
  public:
    struct Term {
        learn::Half half = 0;
        std::int64_t weight = 1; ///< above 0
    };
    /// Terms of one half are added up; the two halves of a variable must not both occur.
    static void post(learn::Solver& solver, std::vector<Term> terms, std::int64_t least);

    Linear(std::vector<Term> terms, std::int64_t least) : terms_(std::move(terms)), least_(least) {}
    bool propagate(learn::Solver& solver) override;
    void explain(const learn::Solver& solver, learn::Literal consequence, std::uint32_t data, std::int32_t position,
                 std::vector<learn::Literal>& premises) override;

  private:
    std::vector<Term> terms_;
    std::int64_t least_;
    std::int32_t id_ = 0;
};

} // namespace piewright::schedule
