// The complete search from below: raises the bound until a schedule reaches it.
#pragma once

#include "schedule/member.h"

#include <memory>

namespace piewright::schedule {

class Prover;

class Refuter final : public Member {
  public:
    /// `problem` must have no faultsIn and must outlive it. The problem is stated to the kernel in the first turn.
    explicit Refuter(const Problem& problem);
    ~Refuter() override;
    Refuter(const Refuter&) = delete;
    Refuter& operator=(const Refuter&) = delete;
    Refuter(Refuter&&) = delete;
    Refuter& operator=(Refuter&&) = delete;

    std::uint64_t run(const Turn& turn, Standing& standing) override;

  private:
    const Problem& problem_;
    std::unique_ptr<Prover> prover_;
};

} // namespace piewright::schedule
