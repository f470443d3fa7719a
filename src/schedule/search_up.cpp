#include "schedule/search_up.h"

#include <algorithm>

namespace piewright::schedule {

namespace {
constexpr std::uint64_t kPatience = 400; ///< dead ends for a step that may turn out too large
} // namespace

Verdict searchUp(Questions& questions, const ProverLimits& limits, const Prover::Improved& improved) {
    const Rest rest(questions, limits);
    Cost step = 1;
    while (!questions.isHopeless()) {
        if (questions.bound() >= questions.value()) return Verdict::Satisfied;
        ProverLimits left = rest.of(questions);
        if (isSpent(left)) return Verdict::Unknown;
        const Cost target = std::min(questions.bound() + step - 1, questions.value() - 1);
        if (step > 1) left.conflicts = std::min(left.conflicts, kPatience);
        switch (questions.ask(target, left)) {
        case Verdict::Satisfied:
            step = 1;
            questions.tell(improved);
            break;
        case Verdict::Refuted:
            step *= 2;
            break;
        case Verdict::Unknown:
            step = 1;
            break;
        }
    }
    return Verdict::Refuted;
}

} // namespace piewright::schedule
