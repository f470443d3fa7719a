#include "schedule/decide.h"

#include "schedule/lanes.h"
#include "schedule/model.h"

#include <algorithm>

namespace piewright::schedule {

Decision decide(const Model& model, const Options& options, Standing& standing, const Schedule* broken) {
    Decision decision;
    if (model.hopeless) {
        decision.status = Status::Infeasible;
        decision.loop = model.loop;
        standing.isHopeless = true;
        return decision;
    }
    Lanes lanes = lanesFor(model, options.seed, broken);
    const Seeker* const seeker = lanes.seeker;
    Portfolio portfolio(std::move(lanes.first), std::move(lanes.second), options);
    decision.work = portfolio.run(standing, options.work);
    decision.status = standing.isHopeless    ? Status::Infeasible
                      : !standing.schedule   ? Status::OutOfTime
                      : standing.isSettled() ? Status::Proven
                                             : Status::Feasible;
    if (decision.status == Status::OutOfTime) decision.failures = seeker->failures();
    return decision;
}

} // namespace piewright::schedule
