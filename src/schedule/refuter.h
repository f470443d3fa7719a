// The complete search from below: raises the bound until a schedule reaches it.
#pragma once

#include "schedule/member.h"

#include <memory>

namespace piewright::schedule {

struct SharedProver;

class Refuter final : public Member {
  public:
    /// `problem` must have no faultsIn and must outlive it. The problem is stated to the kernel in the first turn,
    /// unless a member that it shares the prover with has done so; these never run at the same time.
    explicit Refuter(const Problem& problem, std::shared_ptr<SharedProver> shared = nullptr);
    ~Refuter() override;
    Refuter(const Refuter&) = delete;
    Refuter& operator=(const Refuter&) = delete;
    Refuter(Refuter&&) = delete;
    Refuter& operator=(Refuter&&) = delete;

    std::uint64_t run(const Turn& turn, Standing& standing) override;

  private:
    const Problem& problem_;
    std::shared_ptr<SharedProver> prover_;
};

} // namespace piewright::schedule
