// Machines that take several activities as one load, or whose setups cost something: how every two stand to each other.
#include "schedule/compiled.h"
#include "schedule/setup_cost.h"

#include <algorithm>

namespace piewright::schedule {

using learn::kTrue;
using learn::Literal;

void Compiled::addLoads(const Machine& machine, const std::vector<Occupation>& occupations, Literal active) {
    const std::size_t n = occupations.size();
    Standings standings;
    standings.before.assign(n, std::vector<Literal>(n, ~kTrue));
    standings.together = standings.before;
    for (const Occupation& one : occupations) {
        standings.present.push_back(one.present);
        standings.family.push_back(one.family);
    }
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = i + 1; j < n; ++j) {
            if (occupations[i].activity == occupations[j].activity) continue;
            standings.together[i][j] = standings.together[j][i] =
                stand(machine, occupations[i], occupations[j], active, standings.before[i][j], standings.before[j][i]);
        }
    }
    if (machine.firstCost.empty() || options_.guardLimits) return;
    const auto shared = std::make_shared<const Standings>(std::move(standings));
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t family = at(occupations[i].family);
        Cost dearest = machine.firstCost[family];
        for (const std::vector<Cost>& row : machine.setupCost) dearest = std::max(dearest, row[family]);
        if (dearest == 0) continue;
        const learn::Variable cost = solver.newVariable(0, static_cast<learn::Value>(dearest));
        SetupCost::post(solver, shared, machine, i, cost);
        weights_[cost] += 1;
    }
}

/// Literals for "one before the other" and the other way round, into the last two, and for "of one load".
Literal Compiled::stand(const Machine& machine, const Occupation& one, const Occupation& other, Literal active,
                        Literal& before, Literal& after) {
    const auto setup = [&](const Occupation& x, const Occupation& y) {
        return machine.setup.empty() ? Tick{0} : machine.setup[at(x.family)][at(y.family)];
    };
    const Tick there = distance(one.activity, other.activity);
    const Tick back = distance(other.activity, one.activity);
    const bool lasts = one.duration > 0 && other.duration > 0;
    const bool mayBeBefore = back <= -(one.duration + setup(one, other));
    const bool mayBeAfter = there <= -(other.duration + setup(other, one));
    const bool mayBeTogether = machine.together > 1 && one.family == other.family && there <= 0 && back <= 0 &&
                               (!lasts || one.amount <= machine.together - other.amount);
    const bool isMandatory = one.present == kTrue && other.present == kTrue && active == kTrue;
    const int ways = (mayBeBefore ? 1 : 0) + (mayBeAfter ? 1 : 0) + (mayBeTogether ? 1 : 0);
    const auto state = [&](bool mayBe) {
        if (!mayBe) return ~kTrue;
        if (isMandatory && ways == 1) return kTrue;
        const Literal holds = solver.newBoolean();
        for (const Occupation* x : {&one, &other}) {
            if (x->present != kTrue) clause({~holds, x->present});
        }
        return holds;
    };
    before = state(mayBeBefore);
    after = isMandatory && mayBeBefore && mayBeAfter && !mayBeTogether ? ~before : state(mayBeAfter);
    const Literal together = state(mayBeTogether);
    const auto arc = [&](Time from, Time to, Tick least, Literal when) {
        if (when != ~kTrue) {
            solver.addDifference(from.variable, to.variable, least + from.offset - to.offset, when);
        }
    };
    arc(one.end, other.start, setup(one, other), before);
    arc(other.end, one.start, setup(other, one), after);
    arc(one.start, other.start, 0, together);
    arc(other.start, one.start, 0, together);
    const auto isOpen = [](Literal literal) { return literal != kTrue && literal != ~kTrue; };
    if (isOpen(before)) orders.push_back({one.activity, other.activity, before});
    if (isOpen(after) && after != ~before) orders.push_back({other.activity, one.activity, after});
    if (isOpen(together)) togethers.push_back({one.activity, other.activity, together});
    clause({~one.present, ~other.present, ~active, before, after, together});
    if (lasts) {
        if (after != ~before) clause({~before, ~after});
        clause({~before, ~together});
        clause({~after, ~together});
    }
    return together;
}

} // namespace piewright::schedule
