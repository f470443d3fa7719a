#include "schedule/lists.h"

#include "schedule/population.h"
#include "schedule/shop.h"

namespace piewright::schedule {

namespace {

/// Schedules from lists before the shop takes over.
constexpr std::size_t kBeforeShop = 100;

class ListSearch : public Member {
  public:
    ListSearch(const Problem& problem, Project project, std::uint64_t seed)
        : problem_(problem), project_(std::move(project)), back_(mirrored(project_)),
          population_(project_, back_, seed) {
        if (Shop::takes(project_)) shop_.emplace(project_, seed);
    }

    std::uint64_t run(const Turn& turn, Standing& standing) override {
        if (standing.isSettled()) return 0;
        if (standing.schedule && standing.value < valueOfEnd(best().end)) {
            if (const std::optional<Plan> plan = asPlan(problem_, project_, *standing.schedule)) take(*plan);
        }
        const std::uint64_t begin = steps();
        std::uint64_t done = 0;
        while (done < turn.work && (turn.cancelled == nullptr || !turn.cancelled->load(std::memory_order_relaxed))) {
            const bool isBetter = step();
            done = steps() - begin;
            if (!isBetter) continue;
            const Cost value = valueOfEnd(best().end);
            if (value >= standing.value) continue;
            standing.schedule = asSchedule(problem_, project_, best());
            standing.value = value;
            if (turn.found) turn.found(*standing.schedule, value);
            if (standing.isSettled()) break;
        }
        return std::max<std::uint64_t>(done, 1);
    }

  private:
    [[nodiscard]] bool isInShop() const { return shop_ && shop_->best().end != kNever; }
    [[nodiscard]] const Plan& best() const { return isInShop() ? shop_->best() : population_.best(); }
    [[nodiscard]] std::uint64_t steps() const { return population_.steps() + (shop_ ? shop_->steps() : 0); }

    void take(const Plan& plan) {
        if (shop_) {
            shop_->take(plan);
        } else {
            population_.take(plan);
        }
    }

    bool step() {
        if (isInShop()) return shop_->step();
        const bool isBetter = population_.step();
        if (shop_ && population_.tried() >= kBeforeShop && population_.best().end != kNever) {
            shop_->take(population_.best());
        }
        return isBetter;
    }

    [[nodiscard]] Cost valueOfEnd(Tick end) const {
        if (end == kNever) return std::numeric_limits<Cost>::max();
        const Cost ticks = Cost{end} * project_.scale;
        if (problem_.costs.extents.empty()) return ticks;
        const Curve::Piece& piece = problem_.costs.extents.front().curve.pieces.front();
        return piece.value + piece.perTick * (ticks - piece.from);
    }

    const Problem& problem_;
    const Project project_;
    const Project back_;
    Population population_;
    std::optional<Shop> shop_;
};

} // namespace

std::unique_ptr<Member> listSearch(const Problem& problem, std::uint64_t seed) {
    std::optional<Project> project = asProject(problem);
    if (!project) return nullptr;
    return std::make_unique<ListSearch>(problem, *std::move(project), seed);
}

} // namespace piewright::schedule
