#include "schedule/goal.h"

#include <algorithm>

namespace piewright::schedule {

namespace {

bool isFree(const Activity& activity) {
    return (!activity.isOptional || activity.absentCost == 0) &&
           std::all_of(activity.modes.begin(), activity.modes.end(), [](const Mode& mode) { return mode.cost == 0; });
}

bool isFree(const Resource& resource) {
    return !resource.machine || (resource.machine->firstCost.empty() && resource.machine->setupCost.empty());
}

/// All but the extents.
bool isOtherwiseFree(const Problem& problem) {
    const Costs& costs = problem.costs;
    return costs.times.empty() && costs.loads.empty() && costs.work.empty() && costs.handOvers.empty() &&
           costs.before.empty() &&
           std::all_of(problem.activities.begin(), problem.activities.end(),
                       [](const Activity& one) { return isFree(one); }) &&
           std::all_of(problem.resources.begin(), problem.resources.end(),
                       [](const Resource& one) { return isFree(one); });
}

} // namespace

bool isWithoutCosts(const Problem& problem) { return problem.costs.extents.empty() && isOtherwiseFree(problem); }

Problem withoutCosts(Problem problem) {
    problem.costs = {};
    for (Activity& activity : problem.activities) {
        activity.absentCost = 0;
        for (Mode& mode : activity.modes) mode.cost = 0;
    }
    for (Resource& resource : problem.resources) {
        if (!resource.machine) continue;
        resource.machine->firstCost.clear();
        resource.machine->setupCost.clear();
    }
    return problem;
}

bool isMakespan(const Problem& problem) {
    if (problem.costs.extents.size() != 1 || !isOtherwiseFree(problem)) return false;
    const ExtentCost& extent = problem.costs.extents.front();
    const std::vector<Curve::Piece>& pieces = extent.curve.pieces;
    return extent.of == ExtentCost::Of::Last && !extent.resource && !extent.worker && pieces.size() == 1 &&
           pieces[0].perTick == 1 && pieces[0].value == pieces[0].from;
}

Cost leastCost(const Model& model) {
    const Problem& problem = model.problem;
    if (isWithoutCosts(problem)) return 0;
    if (!isMakespan(problem)) return -kMostCost;
    const Bounds bounds(model.network, problem, model.presence, model.lengths);
    Cost latest = 0;
    for (std::size_t a = 0; a < problem.activities.size(); ++a) {
        if (model.presence.isRequired(a)) latest = std::max<Cost>(latest, bounds.lower(endOf(a)));
    }
    return latest;
}

} // namespace piewright::schedule
