#include "schedule/improver.h"

#include "schedule/proving.h"

#include <utility>

namespace piewright::schedule {

Improver::Improver(const Problem& problem, std::shared_ptr<SharedProver> shared)
    : problem_(problem), prover_(shared ? std::move(shared) : std::make_shared<SharedProver>()) {}
Improver::~Improver() = default;

std::uint64_t Improver::run(const Turn& turn, Standing& standing) {
    return prove(problem_, prover_->prover, turn, standing, &Prover::improve);
}

} // namespace piewright::schedule
