#include "schedule/solve.h"

#include "schedule/check.h"
#include "schedule/clash.h"
#include "schedule/cost.h"
#include "schedule/decide.h"
#include "schedule/goal.h"

#include <algorithm>
#include <cassert>
#include <utility>

namespace piewright::schedule {

namespace {

/// Of a schedule that may be anything: what has the right shape, the rest as left out. Nothing where it is of other
/// activities.
std::optional<Schedule> wellShaped(const Problem& problem, const Schedule& schedule) {
    if (schedule.placed.size() != problem.activities.size()) return std::nullopt;
    Schedule shaped = schedule;
    for (std::size_t a = 0; a < shaped.placed.size(); ++a) {
        Placed& placed = shaped.placed[a];
        const std::vector<Mode>& modes = problem.activities[a].modes;
        bool isFit = placed.mode >= 0 && static_cast<std::size_t>(placed.mode) < modes.size() && placed.start >= 0 &&
                     placed.start <= problem.horizon;
        for (const WorkerIndex worker : placed.workers) isFit = isFit && at(worker) < problem.workers.size();
        if (isFit) {
            const Mode& mode = modes[static_cast<std::size_t>(placed.mode)];
            std::size_t places = mode.team.size();
            for (const SkillNeed& need : mode.needs) places += static_cast<std::size_t>(need.count);
            isFit = placed.workers.size() == places;
        }
        if (!isFit) placed = {0, 0, kAbsent, {}};
    }
    return shaped;
}

bool isCancelled(const Options& options) {
    return options.cancelled != nullptr && options.cancelled->load(std::memory_order_relaxed);
}

} // namespace

Answer solve(const Problem& problem, const Options& options) {
    const Model model(problem);
    Standing standing;
    if (!model.hopeless) standing.bound = leastCost(model);
    std::optional<Schedule> broken = options.begin != nullptr ? wellShaped(problem, *options.begin) : std::nullopt;
    if (broken && check(problem, *broken).empty()) {
        standing.value = costOf(problem, *broken);
        standing.schedule = std::move(broken);
        broken.reset();
    }
    // A quarter of the work is kept back to tell why, in case there is no schedule.
    Options share = options;
    share.work -= options.work / 4;
    Decision decision = decide(model, share, standing, broken ? &*broken : nullptr);
    Answer answer;
    answer.status = decision.status;
    answer.bound = standing.bound;
    if (standing.schedule) {
        assert(check(problem, *standing.schedule).empty());
        assert(costOf(problem, *standing.schedule) == standing.value);
        answer.value = standing.value;
        answer.bound = std::min(answer.bound, answer.value);
        answer.schedule = std::move(standing.schedule);
    } else {
        Options rest = options;
        rest.work = isCancelled(options) ? decision.work : options.work;
        answer.clash = explain(withoutCosts(problem), decision, rest);
    }
    answer.work = decision.work;
    return answer;
}

} // namespace piewright::schedule
