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

Standing startFrom(const Problem& problem, const Schedule* begin) {
    Standing standing;
    if (isWithoutCosts(problem)) standing.bound = 0;
    if (begin != nullptr && check(problem, *begin).empty()) {
        standing.schedule = *begin;
        standing.value = costOf(problem, *begin);
    }
    return standing;
}

bool isCancelled(const Options& options) {
    return options.cancelled != nullptr && options.cancelled->load(std::memory_order_relaxed);
}

} // namespace

Answer solve(const Problem& problem, const Options& options) {
    const Model model(problem);
    Standing standing = startFrom(problem, options.begin);
    // A quarter of the work is kept back to tell why, in case there is no schedule.
    Options share = options;
    share.work -= options.work / 4;
    Decision decision = decide(model, share, standing);
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
