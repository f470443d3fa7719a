// Looks for any schedule at all: by building with ejection, by the balance of energy and by a short tree of orders.
#pragma once

#include "schedule/builder.h"
#include "schedule/member.h"
#include "schedule/model.h"

#include <cstdint>
#include <vector>

namespace piewright::schedule {

class Seeker final : public Member {
  public:
    /// `model` must outlive it and is not hopeless.
    Seeker(const Model& model, std::uint64_t seed);

    /// Ends with the first schedule; has nothing to try once there is one.
    std::uint64_t run(const Turn& turn, Standing& standing) override;

    /// By activity: how often it found no place.
    [[nodiscard]] std::vector<std::uint64_t> failures() const;

  private:
    void keep(Schedule schedule, const Turn& turn, Standing& standing) const;
    std::uint64_t prove(std::uint64_t work, const Turn& turn, Standing& standing);

    const Model& model_;
    Builder builder_;
    std::uint64_t nextProof_; ///< once so much has been built
    int proofs_ = 0;
};

} // namespace piewright::schedule
