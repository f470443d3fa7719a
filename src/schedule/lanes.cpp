#include "schedule/lanes.h"

#include "schedule/goal.h"
#include "schedule/improver.h"
#include "schedule/lists.h"
#include "schedule/neighbourhoods.h"
#include "schedule/proving.h"
#include "schedule/refuter.h"
#include "schedule/repair.h"
#include "schedule/ruin.h"

#include <utility>

namespace piewright::schedule {

Lanes lanesFor(const Model& model, std::uint64_t seed, const Schedule* broken) {
    const Problem& problem = model.problem;
    Lanes lanes;
    if (broken != nullptr) lanes.first.push_back(std::make_unique<Repair>(model, *broken, seed));
    auto seeker = std::make_unique<Seeker>(model, seed);
    lanes.seeker = seeker.get();
    lanes.first.push_back(std::move(seeker));
    // What the one learns from above helps the other from below.
    const auto shared = std::make_shared<SharedProver>();
    lanes.second.push_back(std::make_unique<Improver>(problem, shared));
    if (isWithoutCosts(problem)) return lanes;
    auto lists = isMakespan(problem) ? listSearch(problem, seed) : nullptr;
    if (lists) {
        lanes.first.push_back(std::move(lists));
    } else {
        lanes.first.push_back(std::make_unique<Ruin>(model, seed));
    }
    lanes.first.push_back(std::make_unique<Neighbourhoods>(problem, seed));
    lanes.second.insert(lanes.second.begin(), std::make_unique<Refuter>(problem, shared));
    return lanes;
}

} // namespace piewright::schedule
