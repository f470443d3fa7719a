#include "schedule/near.h"

#include <algorithm>

namespace piewright::schedule {

using learn::Literal;

std::vector<Literal> Near::assumptions(Compiled& compiled, const Schedule& schedule, const Kept& kept) {
    std::vector<Literal> assumed;
    learn::Solver& solver = compiled.solver;
    for (const std::size_t a : kept.choices) {
        const Placed& placed = schedule.placed[a];
        for (const Way& way : compiled.doings[a].ways) {
            if (way.mode != placed.mode) continue;
            if (!solver.isTrueAtRoot(way.present)) assumed.push_back(way.present);
            for (const std::vector<Way::Place>& places : way.places) {
                for (const Way::Place& place : places) {
                    const bool fills =
                        std::find(placed.workers.begin(), placed.workers.end(), place.worker) != placed.workers.end();
                    if (fills && !solver.isTrueAtRoot(place.fills)) assumed.push_back(place.fills);
                }
            }
        }
    }
    if (orders_.empty()) {
        for (const Compiled::Order& order : compiled.orders) {
            if (compiled.doings[order.before].ways.size() == 1 && compiled.doings[order.after].ways.size() == 1) {
                orders_.emplace(std::pair{order.before, order.after}, order.holds);
            }
        }
    }
    for (const auto& [before, after] : kept.orders) {
        const auto [known, isNew] = orders_.emplace(std::pair{before, after}, learn::kTrue);
        if (isNew) {
            const Time from = compiled.doings[before].end;
            const Time to = compiled.doings[after].start;
            known->second = solver.newBoolean();
            solver.addDifference(from.variable, to.variable, from.offset - to.offset, known->second);
        }
        if (!solver.isTrueAtRoot(known->second)) assumed.push_back(known->second);
    }
    return assumed;
}

} // namespace piewright::schedule
