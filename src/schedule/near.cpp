#include "schedule/near.h"

#include <algorithm>

namespace piewright::schedule {

using learn::Literal;

namespace {
constexpr learn::Value kCalls = std::numeric_limits<learn::Value>::max() / 8;
} // namespace

Near::Near(Compiled& compiled) : compiled_(compiled), call_(compiled.solver.newVariable(0, kCalls)) {}

std::vector<Literal> Near::assume(const Schedule& schedule, const Kept& kept) {
    learn::Solver& solver = compiled_.solver;
    solver.backtrackToRoot();
    if (arcs_ > solver.arcs()) arcs_ = solver.arcs();
    solver.dropArcs(arcs_);
    ++calls_;
    solver.addClause({learn::atLeast(call_, calls_)});
    const Literal now = learn::atMost(call_, calls_);
    for (const auto& [before, after] : kept.orders) {
        const Time from = compiled_.doings[before].end;
        const Time to = compiled_.doings[after].start;
        solver.addDifference(from.variable, to.variable, from.offset - to.offset, now);
    }
    std::vector<Literal> assumed{now};
    for (const std::size_t a : kept.choices) {
        const Placed& placed = schedule.placed[a];
        for (const Way& way : compiled_.doings[a].ways) {
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
    return assumed;
}

} // namespace piewright::schedule
