// From below: refutes value after value, so that the bound rises; step doubling while refutations are cheap.
#pragma once

#include "schedule/questions.h"

namespace piewright::schedule {

/// Satisfied: the best schedule is proved to be the best. Refuted: there is none. Unknown: the limits ran out.
Verdict searchUp(Questions& questions, const ProverLimits& limits, const Prover::Improved& improved);

} // namespace piewright::schedule
