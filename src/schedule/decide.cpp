#include "schedule/decide.h"

#include "schedule/builder.h"
#include "schedule/energy.h"
#include "schedule/model.h"
#include "schedule/tree.h"

#include <algorithm>

namespace piewright::schedule {

Decision decide(const Problem& problem, const Options& options) {
    Decision decision;
    const Model model(problem);
    if (model.hopeless) {
        decision.status = Status::Infeasible;
        decision.loop = model.loop;
        return decision;
    }
    Builder builder(model, options.seed);
    const auto found = [&](Schedule schedule) {
        decision.status = Status::Feasible;
        decision.schedule = std::move(schedule);
        return decision;
    };
    // A first round of building is enough for most problems.
    std::uint64_t slice = 1000 + 20 * static_cast<std::uint64_t>(model.units.size());
    if (auto schedule = builder.run(std::min(slice, options.work))) {
        decision.work = builder.work();
        return found(*std::move(schedule));
    }
    decision.work = builder.work();
    if (isOverloaded(model)) {
        decision.status = Status::Infeasible;
        return decision;
    }
    // Then complete search and building by turns, each longer than the last, so that neither keeps the other waiting.
    Tree tree(model);
    std::uint64_t searched = 0;
    while (builder.work() + searched < options.work) {
        slice *= 2;
        const std::uint64_t left = options.work - builder.work() - searched;
        const TreeAnswer answer = tree.search(std::min(slice, left));
        searched += tree.work();
        decision.work = builder.work() + searched;
        if (answer == TreeAnswer::None) {
            decision.status = Status::Infeasible;
            return decision;
        }
        if (answer == TreeAnswer::Found) {
            return found(builder.compacted(tree.schedule()));
        }
        const std::uint64_t upTo = std::min(builder.work() + slice, options.work - std::min(options.work, searched));
        if (auto schedule = builder.run(upTo)) {
            decision.work = builder.work() + searched;
            return found(*std::move(schedule));
        }
        decision.work = builder.work() + searched;
    }
    decision.failures.resize(problem.activities.size());
    for (std::size_t a = 0; a < problem.activities.size(); ++a) {
        decision.failures[a] = builder.failures()[model.unitOf[a]];
    }
    return decision;
}

} // namespace piewright::schedule
