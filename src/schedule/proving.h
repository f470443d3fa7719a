// A turn of a prover as a member.
#pragma once

#include "schedule/member.h"
#include "schedule/prover.h"

#include <memory>

namespace piewright::schedule {

/// What members of one lane learn together.
struct SharedProver {
    std::unique_ptr<Prover> prover; ///< none yet
};

using Loop = Verdict (Prover::*)(const ProverLimits&, const Prover::Improved&);

/// A prover of the problem; none when the turn was cancelled meanwhile.
std::unique_ptr<Prover> stateFor(const Problem& problem, const Turn& turn);

/// States the problem if need be, takes up what is new, goes on with the loop and tells what came of it. Steps taken.
std::uint64_t prove(const Problem& problem, std::unique_ptr<Prover>& prover, const Turn& turn, Standing& standing,
                    Loop loop);

} // namespace piewright::schedule
