// Makes a schedule cheaper, whatever it is that costs: takes related units out of it and puts them back where they cost
// least (ruin and recreate: Schrimpf, Schneider, Stamm-Wilbrandt, Dueck 2000, Journal of Computational Physics 159;
// large neighbourhood search: Shaw 1998, CP-98). Which ruins pay is learnt on the way (Ropke, Pisinger 2006,
// Transportation Science 40); what is a little dearer may be taken for a while (late acceptance: Burke, Bykov 2017,
// European Journal of Operational Research 258).
#pragma once

#include "schedule/builder.h"
#include "schedule/draft.h"
#include "schedule/eject.h"
#include "schedule/member.h"
#include "schedule/model.h"
#include "schedule/shift.h"

#include <array>
#include <cstdint>
#include <optional>
#include <random>
#include <vector>

namespace piewright::schedule {

class Ruin : public Member {
  public:
    /// `model` must outlive it.
    Ruin(const Model& model, std::uint64_t seed);

    /// Begins from the standing schedule; builds one where there is none.
    std::uint64_t run(const Turn& turn, Standing& standing) override;

    [[nodiscard]] std::uint64_t rounds() const { return rounds_; } ///< ruins tried

  private:
    enum class Way : std::uint8_t { NearInTime, OfWorker, OfResource, Dear, Linked, Anyhow };
    static constexpr std::size_t kWays = 6;

    void load(const Schedule& schedule);
    /// One ruin. True when the schedule in the draft is the best so far.
    bool round();
    void ruin(Way way, std::size_t count);
    void ruinNear(Tick when, std::size_t count);
    void ruinOfWorker(std::size_t count);
    void ruinOfResource(std::size_t count);
    void ruinLinked(std::size_t seed, std::size_t count);
    void removeActivity(std::size_t activity) { draft_->remove(model_.unitOf[activity]); }
    [[nodiscard]] std::size_t dearest();
    [[nodiscard]] std::size_t anyIn();
    bool recreate();
    bool force(std::size_t unit);
    [[nodiscard]] Way choose();
    [[nodiscard]] std::uint64_t draw(std::uint64_t below) { return random_() % below; }
    [[nodiscard]] bool chance(std::uint64_t of) { return draw(of) == 0; }
    [[nodiscard]] std::uint64_t work() const;

    const Model& model_;
    std::mt19937_64 random_;
    std::optional<Builder> builder_; ///< until there is a schedule
    std::optional<Draft> draft_;
    std::vector<std::uint64_t> weights_; ///< by unit, for ejections
    std::optional<Ejection> ejection_;
    std::optional<Shift> shift_;
    Cost best_ = std::numeric_limits<Cost>::max();
    std::vector<Cost> history_;
    std::size_t at_ = 0;
    std::array<double, kWays> worth_{};
    std::array<double, kWays> gained_{};
    std::array<double, kWays> tried_{};
    std::uint64_t rounds_ = 0;
    std::vector<std::pair<std::int64_t, std::size_t>> ranked_; ///< scratch
    std::vector<std::int64_t> key_;                            ///< by unit: for the order of putting back
};

} // namespace piewright::schedule
