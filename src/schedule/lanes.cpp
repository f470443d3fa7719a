#include "schedule/lanes.h"

#include "schedule/goal.h"
#include "schedule/improver.h"
#include "schedule/lists.h"
#include "schedule/neighbourhoods.h"
#include "schedule/refuter.h"

#include <utility>

namespace piewright::schedule {

Lanes lanesFor(const Model& model, std::uint64_t seed) {
    const Problem& problem = model.problem;
    Lanes lanes;
    auto seeker = std::make_unique<Seeker>(model, seed);
    lanes.seeker = seeker.get();
    lanes.first.push_back(std::move(seeker));
    if (isWithoutCosts(problem)) {
        lanes.second.push_back(std::make_unique<Improver>(problem));
        return lanes;
    }
    if (auto lists = listSearch(problem, seed)) lanes.first.push_back(std::move(lists));
    lanes.first.push_back(std::make_unique<Neighbourhoods>(problem, seed));
    lanes.second.push_back(std::make_unique<Refuter>(problem));
    lanes.second.push_back(std::make_unique<Improver>(problem));
    return lanes;
}

} // namespace piewright::schedule
