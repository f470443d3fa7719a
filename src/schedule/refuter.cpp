#include "schedule/refuter.h"

#include "schedule/proving.h"

namespace piewright::schedule {

Refuter::Refuter(const Problem& problem) : problem_(problem) {}
Refuter::~Refuter() = default;

std::uint64_t Refuter::run(const Turn& turn, Standing& standing) {
    return prove(problem_, prover_, turn, standing, &Prover::refute);
}

} // namespace piewright::schedule
