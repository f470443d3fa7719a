#include "schedule/solve.h"

#include "schedule/check.h"
#include "schedule/clash.h"
#include "schedule/decide.h"

#include <cassert>
#include <utility>

namespace piewright::schedule {

Answer solve(const Problem& problem, const Options& options) {
    // A quarter of the work is kept back to tell why, in case there is none.
    Decision decision = decide(problem, {options.seed, options.work - options.work / 4});
    Answer answer;
    answer.status = decision.status;
    if (decision.schedule) {
        assert(check(problem, *decision.schedule).empty());
        answer.schedule = std::move(decision.schedule);
    } else {
        answer.clash = explain(problem, decision, options);
    }
    answer.work = decision.work;
    return answer;
}

} // namespace piewright::schedule
