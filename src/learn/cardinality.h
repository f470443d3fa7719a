// At least so many of some literals.
#pragma once

#include "learn/solver.h"

#include <vector>

namespace piewright::learn {

/// At least `least` of `literals` hold where `when` does.
class Cardinality final : public Propagator {
  public:
    static void post(Solver& solver, std::vector<Literal> literals, int least, Literal when);

    Cardinality(std::vector<Literal> literals, int least, Literal when)
        : literals_(std::move(literals)), least_(least), when_(when) {}
    bool propagate(Solver& solver) override;
    void explain(const Solver& solver, Literal consequence, std::uint32_t data, std::int32_t position,
                 std::vector<Literal>& premises) override;

  private:
    std::vector<Literal> literals_;
    int least_;
    Literal when_;
    std::int32_t id_ = 0;
};

} // namespace piewright::learn
