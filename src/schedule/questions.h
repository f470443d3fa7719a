// What the loops that narrow the cost from above and from below ask of the prover.
#pragma once

#include "schedule/prover.h"

#include <cstdint>
#include <optional>

namespace piewright::schedule {

constexpr Cost kNoValue = std::numeric_limits<Cost>::max(); ///< there is no schedule yet

class Questions {
  public:
    Questions() = default;
    Questions(const Questions&) = delete;
    Questions& operator=(const Questions&) = delete;
    Questions(Questions&&) = delete;
    Questions& operator=(Questions&&) = delete;
    virtual ~Questions() = default;

    /// Of the best schedule known; kNoValue where there is none.
    [[nodiscard]] virtual Cost value() const = 0;
    [[nodiscard]] virtual Cost bound() const = 0;
    [[nodiscard]] virtual bool isHopeless() const = 0;
    /// Is there a schedule of this value at most (any, without one)? value(), bound() and isHopeless() have the answer
    /// too.
    virtual Verdict ask(std::optional<Cost> by, const ProverLimits& limits) = 0;
    /// From now on only what is better than value() counts.
    virtual void tighten() = 0;
    /// Tells the best schedule.
    virtual void tell(const Prover::Improved& improved) const = 0;
    [[nodiscard]] virtual std::uint64_t work() const = 0;
    [[nodiscard]] virtual std::uint64_t conflicts() const = 0;
};

/// What is left of `limits` since a time at which the counts stood at these.
class Rest {
  public:
    Rest(const Questions& questions, const ProverLimits& limits)
        : limits_(limits), work_(questions.work()), conflicts_(questions.conflicts()) {}
    [[nodiscard]] ProverLimits of(const Questions& questions) const {
        const std::uint64_t work = questions.work() - work_;
        const std::uint64_t conflicts = questions.conflicts() - conflicts_;
        return {work < limits_.work ? limits_.work - work : 0,
                conflicts < limits_.conflicts ? limits_.conflicts - conflicts : 0, limits_.cancelled};
    }

  private:
    ProverLimits limits_;
    std::uint64_t work_;
    std::uint64_t conflicts_;
};

[[nodiscard]] inline bool isSpent(const ProverLimits& limits) {
    return limits.work == 0 || limits.conflicts == 0 ||
           (limits.cancelled != nullptr && limits.cancelled->load(std::memory_order_relaxed));
}

} // namespace piewright::schedule
