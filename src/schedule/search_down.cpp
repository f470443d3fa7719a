#include "schedule/search_down.h"

#include <algorithm>

namespace piewright::schedule {

namespace {
constexpr std::uint64_t kPatience = 400; ///< dead ends for a step that may turn out too large
} // namespace

Verdict SearchDown::run(Questions& questions, const ProverLimits& limits, const Prover::Improved& improved) {
    const Rest rest(questions, limits);
    while (!questions.isHopeless()) {
        if (questions.bound() >= questions.value()) return Verdict::Satisfied;
        ProverLimits left = rest.of(questions);
        if (isSpent(left)) return Verdict::Unknown;
        const Cost before = questions.value();
        std::optional<Cost> target;
        if (before != kNoValue) {
            questions.tighten();
            const Cost gap = before - questions.bound();
            if (gap <= 0) continue;
            step_ = std::clamp<Cost>(step_, 1, std::max<Cost>(1, gap / 2));
            target = before - step_;
            if (step_ > 1) left.conflicts = std::min(left.conflicts, kPatience);
        }
        switch (questions.ask(target, left)) {
        case Verdict::Satisfied:
            step_ = before == kNoValue ? questions.value() - questions.bound()
                                       : std::max(step_ * 2, before - questions.value());
            questions.tell(improved);
            break;
        case Verdict::Refuted:
            break; // bound() has moved, or the end is reached
        case Verdict::Unknown:
            step_ /= 2;
            break;
        }
    }
    return Verdict::Refuted;
}

} // namespace piewright::schedule
