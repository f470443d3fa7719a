// Begins from a schedule that may break limits: the plan of yesterday, with windows moved, a person gone, something
// added. What can stay as it was stays; the rest goes near by, at the expense of as few others as can be (minimal
// perturbation: El Sakkout, Wallace 2000, Constraints 5; by ejection, as in the builder).
#pragma once

#include "schedule/builder.h"
#include "schedule/member.h"
#include "schedule/model.h"

#include <cstdint>
#include <optional>

namespace piewright::schedule {

class Repair : public Member {
  public:
    /// `previous` of the same activities in the same order; those it does not speak of (kAbsent) are added. Both must
    /// be there as long as it is.
    Repair(const Model& model, const Schedule& previous, std::uint64_t seed);

    /// Once it has found a schedule, it has nothing more to try.
    std::uint64_t run(const Turn& turn, Standing& standing) override;

  private:
    const Model& model_;
    const Schedule& previous_;
    std::uint64_t seed_;
    std::optional<Builder> builder_;
    bool isDone_ = false;
};

} // namespace piewright::schedule
