#include "schedule/refuter.h"

#include "schedule/proving.h"

#include <utility>

namespace piewright::schedule {

Refuter::Refuter(const Problem& problem, std::shared_ptr<SharedProver> shared)
    : problem_(problem), prover_(shared ? std::move(shared) : std::make_shared<SharedProver>()) {}
Refuter::~Refuter() = default;

std::uint64_t Refuter::run(const Turn& turn, Standing& standing) {
    return prove(problem_, prover_->prover, turn, standing, &Prover::refute);
}

} // namespace piewright::schedule
