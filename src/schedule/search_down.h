// From above: schedules that are better and better, large steps first and smaller ones where they fail.
#pragma once

#include "schedule/questions.h"

namespace piewright::schedule {

class SearchDown {
  public:
    /// Satisfied: the best schedule is proved to be the best. Refuted: there is none. Unknown: the limits ran out.
    Verdict run(Questions& questions, const ProverLimits& limits, const Prover::Improved& improved);
    /// How much better the next question asks for; no more than half the gap.
    void aimFor(Cost step) { step_ = step; }

  private:
    Cost step_ = 0;
};

} // namespace piewright::schedule
