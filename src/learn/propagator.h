// A constraint that reads bounds and tightens others, and can say why.
#pragma once

#include "learn/literal.h"

#include <cstdint>
#include <vector>

namespace piewright::learn {

class Solver;

class Propagator {
  public:
    Propagator() = default;
    Propagator(const Propagator&) = delete;
    Propagator& operator=(const Propagator&) = delete;
    Propagator(Propagator&&) = delete;
    Propagator& operator=(Propagator&&) = delete;
    virtual ~Propagator() = default;

    /// Tightens what it can by Solver::infer, or finds a clash by Solver::fail; false as soon as either returns false.
    virtual bool propagate(Solver& solver) = 0;

    /// A bound watched under `tag` was tightened. True: wants to be run. Called often.
    virtual bool woken(std::int32_t tag);

    /// Literals, all true before trail position `position`, that together imply `consequence`, which was inferred
    /// with `data`; what is asked may be weaker than what was inferred. The weaker the premises the better.
    virtual void explain(const Solver& solver, Literal consequence, std::uint32_t data, std::int32_t position,
                         std::vector<Literal>& premises);
};

} // namespace piewright::learn
