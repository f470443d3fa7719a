// Begins from a schedule that may break limits: the plan of before, with windows moved, a person gone, something added.
// What can stay as it was stays; the rest goes near by, with as few others moved as can be (minimal perturbation: El
// Sakkout, Wallace 2000, Constraints 5): around what has no place a few more are taken out and put back, ever more of
// them where that does not do.
#pragma once

#include "schedule/builder.h"
#include "schedule/draft.h"
#include "schedule/member.h"
#include "schedule/model.h"

#include <cstdint>
#include <optional>
#include <random>
#include <vector>

namespace piewright::schedule {

class Repair : public Member {
  public:
    /// `previous` of the same activities in the same order; those it does not speak of (kAbsent) are added where they
    /// are required. The model must outlive it.
    Repair(const Model& model, const Schedule& previous, std::uint64_t seed);

    /// Once it has found a schedule, it has nothing more to try. Where mending does not lead to one it builds anew.
    std::uint64_t run(const Turn& turn, Standing& standing) override;

    /// Activities that are otherwise than before, in the schedule found.
    [[nodiscard]] std::size_t moved() const;

  private:
    void keep();
    bool putBack(std::size_t unit);
    void mendAround(std::size_t unit);
    void returnMoved();
    void leaveOutOptional();
    [[nodiscard]] bool isAsBefore(std::size_t unit) const;
    [[nodiscard]] std::uint64_t draw(std::uint64_t below) { return random_() % below; }

    const Model& model_;
    std::vector<std::vector<Placed>> before_; ///< by unit; empty: was not there
    std::mt19937_64 random_;
    std::uint64_t seed_;
    std::optional<Draft> draft_;
    std::optional<Builder> builder_;
    std::vector<std::uint32_t> failures_;                      ///< by unit
    std::vector<std::pair<std::int64_t, std::size_t>> ranked_; ///< scratch
    std::size_t least_ = 0;                                    ///< fewest open at once so far
    std::uint64_t since_ = 0;                                  ///< work at which that was
    bool isDone_ = false;
};

} // namespace piewright::schedule
