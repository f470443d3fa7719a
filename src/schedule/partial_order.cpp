#include "schedule/partial_order.h"

#include <algorithm>
#include <tuple>

namespace piewright::schedule {

namespace {

constexpr std::size_t kNobody = static_cast<std::size_t>(-1);
constexpr std::size_t kChains = 256; ///< units of a resource; more are bundled

/// Each unit of a resource as the activity that had it last.
class Chains {
  public:
    explicit Chains(std::size_t units) : last_(units, {kNobody, -kNever}) {}

    /// `units` of them go to the activity; tells who had them.
    template <class Tell>
    void take(std::size_t activity, const Placed& placed, std::size_t units, Dice& dice, const Tell& tell) {
        const std::size_t count = last_.size();
        std::size_t place = dice.below(count);
        std::size_t preferred = kNobody;
        for (int round = 0; round < 2 && units > 0; ++round) {
            // First what the same one hands on, then whatever is free.
            for (std::size_t i = 0; i < count && units > 0; ++i, place = place + 1 == count ? 0 : place + 1) {
                Last& last = last_[place];
                if (last.end > placed.start) continue;
                if (round == 0 && preferred != kNobody && last.activity != preferred) continue;
                preferred = last.activity;
                if (last.activity != kNobody) tell(last.activity, activity);
                last = {activity, placed.end};
                --units;
            }
        }
    }

  private:
    struct Last {
        std::size_t activity;
        Tick end;
    };
    std::vector<Last> last_;
};

} // namespace

std::vector<std::pair<std::size_t, std::size_t>> partialOrder(const Problem& problem, const Schedule& schedule,
                                                              const std::vector<char>& isKept, Dice& dice) {
    std::vector<std::size_t> byStart;
    for (std::size_t a = 0; a < schedule.placed.size(); ++a) {
        if (isKept[a] != 0 && schedule.placed[a].mode >= 0) byStart.push_back(a);
    }
    std::sort(byStart.begin(), byStart.end(), [&](std::size_t x, std::size_t y) {
        const Placed& first = schedule.placed[x];
        const Placed& second = schedule.placed[y];
        return std::tuple{first.start, first.end, x} < std::tuple{second.start, second.end, y};
    });
    std::vector<Chains> resources;
    std::vector<int> bundle; // units of a resource to a chain
    for (const Resource& resource : problem.resources) {
        const int capacity = resource.cumulative ? std::max(1, resource.cumulative->capacity) : 1;
        bundle.push_back(1 + (capacity - 1) / static_cast<int>(kChains));
        resources.emplace_back(static_cast<std::size_t>(capacity / bundle.back()));
    }
    std::vector<Chains> workers(problem.workers.size(), Chains(1));
    std::vector<std::pair<std::size_t, std::size_t>> orders;
    const auto tell = [&](std::size_t before, std::size_t after) { orders.emplace_back(before, after); };
    for (const std::size_t a : byStart) {
        const Placed& placed = schedule.placed[a];
        const Mode& mode = problem.activities[a].modes[static_cast<std::size_t>(placed.mode)];
        for (const Use& use : mode.uses) {
            if (use.amount <= 0 || (placed.start == placed.end && !problem.resources[at(use.resource)].machine))
                continue;
            const int units = bundle[at(use.resource)];
            resources[at(use.resource)].take(a, placed, static_cast<std::size_t>((use.amount + units - 1) / units),
                                             dice, tell);
        }
        for (const WorkerIndex worker : placed.workers) workers[at(worker)].take(a, placed, 1, dice, tell);
    }
    std::sort(orders.begin(), orders.end());
    orders.erase(std::unique(orders.begin(), orders.end()), orders.end());
    return orders;
}

} // namespace piewright::schedule
