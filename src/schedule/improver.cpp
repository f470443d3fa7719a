#include "schedule/improver.h"

#include "schedule/proving.h"

namespace piewright::schedule {

Improver::Improver(const Problem& problem) : problem_(problem) {}
Improver::~Improver() = default;

std::uint64_t Improver::run(const Turn& turn, Standing& standing) {
    return prove(problem_, prover_, turn, standing, &Prover::improve);
}

} // namespace piewright::schedule
