// The complete search from above: better and better schedules until none is left.
#pragma once

#include "schedule/member.h"

#include <memory>

namespace piewright::schedule {

struct SharedProver;

class Improver final : public Member {
  public:
    /// `problem` must have no faultsIn and must outlive it. The problem is stated to the kernel in the first turn,
    /// unless a member that it shares the prover with has done so; these never run at the same time.
    explicit Improver(const Problem& problem, std::shared_ptr<SharedProver> shared = nullptr);
    ~Improver() override;
    Improver(const Improver&) = delete;
    Improver& operator=(const Improver&) = delete;
    Improver(Improver&&) = delete;
    Improver& operator=(Improver&&) = delete;

    std::uint64_t run(const Turn& turn, Standing& standing) override;

  private:
    const Problem& problem_;
    std::shared_ptr<SharedProver> prover_;
};

} // namespace piewright::schedule
