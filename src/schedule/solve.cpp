#include "schedule/solve.h"

#include "schedule/builder.h"
#include "schedule/check.h"
#include "schedule/model.h"
#include "schedule/network.h"

#include <cassert>

namespace piewright::schedule {

Answer solve(const Problem& problem, const Options& options) {
    Answer answer;
    const Model model(problem);
    if (model.hopeless) {
        answer.status = Status::Infeasible;
        answer.clash = {model.why, true};
        return answer;
    }
    Builder builder(model, options.seed);
    answer.schedule = builder.run(options.work);
    answer.work = builder.work();
    if (answer.schedule) {
        answer.status = Status::Feasible;
        assert(check(problem, *answer.schedule).empty());
    }
    return answer;
}

} // namespace piewright::schedule
