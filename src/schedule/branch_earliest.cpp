#include "schedule/branch_earliest.h"

#include <algorithm>
#include <utility>

namespace piewright::schedule {

namespace {
Tick earliestEnd(const learn::Solver& solver, const Way& way) {
    return solver.lower(way.end.variable) + way.end.offset;
}
} // namespace

std::optional<learn::Literal> BranchEarliest::first(const learn::Solver& solver) {
    return isEarliestTurn_ ? last(solver) : std::nullopt;
}

std::optional<learn::Literal> BranchEarliest::last(const learn::Solver& solver) {
    const Doing* best = nullptr;
    std::pair<Tick, Tick> bestKey;
    for (const Doing& doing : compiled_.doings) {
        if (doing.ways.empty() || solver.isFalse(doing.present)) continue;
        if (solver.isFixed(doing.start.variable) && isChosen(solver, doing)) continue;
        const std::pair key{solver.lower(doing.start.variable), solver.upper(doing.start.variable)};
        if (best == nullptr || key < bestKey) {
            best = &doing;
            bestKey = key;
        }
    }
    if (best == nullptr) return undecided(solver);
    if (!solver.isTrue(best->present)) return best->present;
    // The way that can start earliest, the preferred one of equals.
    const Way* way = nullptr;
    for (const Way& one : best->ways) {
        if (solver.isTrue(one.present)) {
            way = nullptr;
            break;
        }
        if (!solver.isFalse(one.present) && (way == nullptr || earliestEnd(solver, one) < earliestEnd(solver, *way))) {
            way = &one;
        }
    }
    if (way != nullptr) return way->present;
    return learn::atMost(best->start.variable, solver.lower(best->start.variable));
}

bool BranchEarliest::isChosen(const learn::Solver& solver, const Doing& doing) {
    return (doing.ways.size() == 1 && solver.isTrue(doing.present)) ||
           std::any_of(doing.ways.begin(), doing.ways.end(),
                       [&](const Way& way) { return solver.isTrue(way.present); });
}

std::optional<learn::Literal> BranchEarliest::undecided(const learn::Solver& solver) {
    for (const learn::Literal filled : compiled_.fills) {
        if (!solver.isTrue(filled) && !solver.isFalse(filled)) return filled;
    }
    return std::nullopt;
}

} // namespace piewright::schedule
