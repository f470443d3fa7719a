// Each cumulative propagator alone against plain enumeration, and each reason it gives: two general solvers have given
// wrong optima for want of this.
#include "schedule/edge_finding.h"
#include "schedule/timetable.h"

#include "learn/enumerate.h"

#include <gtest/gtest.h>

namespace piewright::schedule {
namespace {

using learn::Assignment;
using learn::Domain;
using learn::Draw;
using learn::Literal;
using learn::Solver;

/// A few tasks on one resource with reservations; some optional, some tied by differences.
struct Shelf {
    Shelf(std::uint64_t seed, Solver& kernel, bool mayBeOptional) : draw(seed), solver(kernel) {
        capacity.capacity = draw(1, 5);
        while (draw.chance(30)) {
            const Tick from = draw(0, 8);
            capacity.reserved.push_back({{from, from + draw(1, 4)}, draw(0, 3)});
        }
        const int count = draw(3, 5);
        for (int i = 0; i < count; ++i) {
            Task task;
            task.duration = draw(1, 4);
            task.demand = draw(1, capacity.capacity);
            const Tick from = draw(0, 4);
            const Tick to = from + draw(0, 5);
            task.start = solver.newVariable(from, to);
            starts.push_back({task.start, from, to});
            if (mayBeOptional && draw.chance(40)) {
                task.present = solver.newBoolean();
                solver.makeOptional(task.start, task.present);
                booleans.push_back({learn::variableOf(task.present.half), 0, 1});
            }
            tasks.push_back(task);
        }
        for (int i = 0; i < 2; ++i) {
            const std::size_t from = index();
            const std::size_t to = index();
            const bool isFree = tasks[from].present != learn::kTrue || tasks[to].present != learn::kTrue;
            if (from == to || isFree || draw.chance(40)) continue;
            gaps.push_back({from, to, draw(-2, 3)});
            solver.addDifference(tasks[from].start, tasks[to].start, gaps.back().least);
        }
        for (int i = 0; i < 3 && !booleans.empty(); ++i) {
            std::vector<Literal> clause;
            for (int k = 0; k < 2; ++k) {
                const auto b = static_cast<std::size_t>(draw(0, static_cast<int>(booleans.size()) - 1));
                const Literal l = learn::atLeast(booleans[b].variable, 1);
                clause.push_back(draw.chance(75) ? l : ~l);
            }
            clauses.push_back(clause);
            solver.addClause(clause);
        }
        values.assign(solver.variables(), 0);
    }

    std::size_t index() { return static_cast<std::size_t>(draw(0, static_cast<int>(tasks.size()) - 1)); }

    [[nodiscard]] std::vector<Domain> domains() const {
        std::vector<Domain> all = booleans;
        all.insert(all.end(), starts.begin(), starts.end());
        return all;
    }

    [[nodiscard]] bool isThere(const Assignment& one, std::size_t i) const {
        return learn::holds(one, tasks[i].present);
    }

    /// Tick by tick.
    [[nodiscard]] bool keeps(const Assignment& one) const {
        for (Tick tick = 0; tick < 20; ++tick) {
            int used = 0;
            int reserved = 0;
            for (std::size_t i = 0; i < tasks.size(); ++i) {
                const Tick start = one[learn::at(tasks[i].start)];
                if (isThere(one, i) && start <= tick && tick < start + tasks[i].duration) used += tasks[i].demand;
            }
            for (const Cumulative::Reserved& r : capacity.reserved) {
                if (r.span.from <= tick && tick < r.span.to) reserved += r.amount;
            }
            if (used > 0 && used + reserved > capacity.capacity) return false;
        }
        for (const Gap& gap : gaps) {
            if (one[learn::at(tasks[gap.to].start)] - one[learn::at(tasks[gap.from].start)] < gap.least) return false;
        }
        return std::all_of(clauses.begin(), clauses.end(), [&](const std::vector<Literal>& clause) {
            return std::any_of(clause.begin(), clause.end(), [&](Literal l) { return learn::holds(one, l); });
        });
    }

    /// A bound of a task that is absent always holds.
    [[nodiscard]] bool holdsFor(const Assignment& one, Literal literal) const {
        for (std::size_t i = 0; i < tasks.size(); ++i) {
            if (learn::variableOf(literal.half) == tasks[i].start && !isThere(one, i)) return true;
        }
        return learn::holds(one, literal);
    }

    bool follows(std::span<const Literal> premises, Literal consequence) {
        return !learn::enumerate(domains(), values, [&](const Assignment& one) {
            return keeps(one) &&
                   std::all_of(premises.begin(), premises.end(), [&](Literal l) { return holdsFor(one, l); }) &&
                   (consequence.half < 0 || !holdsFor(one, consequence));
        });
    }
    bool isPossible() {
        return learn::enumerate(domains(), values, [&](const Assignment& one) { return keeps(one); });
    }

    struct Gap {
        std::size_t from, to;
        Tick least;
    };
    Draw draw;
    Solver& solver;
    Cumulative capacity;
    std::vector<Task> tasks;
    std::vector<Domain> starts, booleans;
    std::vector<Gap> gaps;
    std::vector<std::vector<Literal>> clauses;
    Assignment values;
};

struct Witnessed {
    Shelf* shelf = nullptr;
    int asked = 0;
    int broken = 0;
};

void witness(void* context, std::span<const Literal> premises, Literal consequence) {
    auto& seen = *static_cast<Witnessed*>(context);
    ++seen.asked;
    if (!seen.shelf->follows(premises, consequence)) ++seen.broken;
}

enum class Use { Timetable, EdgeFinding, Both };

void compare(Use use, bool mayBeOptional, int leastRefuted) {
    int refuted = 0;
    int possible = 0;
    Witnessed seen;
    for (std::uint64_t seed = 1; seed <= 600; ++seed) {
        Solver solver;
        Shelf shelf(seed, solver, mayBeOptional);
        seen.shelf = &shelf;
        solver.setWitness(witness, &seen);
        const std::vector<Step> steps = stepsOf(shelf.capacity);
        if (use != Use::EdgeFinding) Timetable::post(solver, shelf.tasks, steps, learn::kTrue);
        if (use != Use::Timetable) EdgeFinding::post(solver, shelf.tasks, steps, learn::kTrue);
        learn::InOrder order(shelf.domains());
        const bool isPossible = shelf.isPossible();
        const learn::Outcome outcome = solver.solve({}, {}, order);
        ASSERT_EQ(seen.broken, 0) << "seed " << seed;
        // Edge finding alone may miss a clash of what is fixed; it may never see one that is not there.
        if (use != Use::EdgeFinding || outcome == learn::Outcome::Refuted) {
            ASSERT_EQ(outcome == learn::Outcome::Satisfied, isPossible) << "seed " << seed;
        }
        if (outcome == learn::Outcome::Satisfied && use != Use::EdgeFinding) {
            for (const Domain& domain : shelf.domains()) {
                shelf.values[learn::at(domain.variable)] = solver.lower(domain.variable);
            }
            ASSERT_TRUE(shelf.keeps(shelf.values)) << "seed " << seed;
        }
        (outcome == learn::Outcome::Refuted ? refuted : possible)++;
    }
    EXPECT_GE(refuted, leastRefuted);
    EXPECT_GE(possible, 100);
    EXPECT_GE(seen.asked, 100);
}

TEST(Timetable, AgreesWithEnumerationAndGivesReasonsThatFollow) { compare(Use::Timetable, false, 50); }
TEST(Timetable, AgreesWithEnumerationWhereTasksAreOptional) { compare(Use::Timetable, true, 10); }
TEST(EdgeFinding, SeesNoClashThatIsNotThereAndGivesReasonsThatFollow) { compare(Use::EdgeFinding, false, 30); }
TEST(EdgeFinding, SeesNoClashThatIsNotThereWhereTasksAreOptional) { compare(Use::EdgeFinding, true, 5); }
TEST(EdgeFinding, AgreesWithEnumerationTogetherWithTheTimetable) { compare(Use::Both, true, 10); }

TEST(EdgeFinding, SeesAtTheRootWhatATimetableCannot) {
    // Three tasks of 3 ticks, one at a time, all between 0 and 8: 9 ticks of work in 8.
    Solver solver;
    std::vector<Task> tasks;
    tasks.reserve(3);
    for (int i = 0; i < 3; ++i) tasks.push_back({solver.newVariable(0, 5), 3, 1, learn::kTrue});
    Solver other;
    std::vector<Task> same;
    same.reserve(3);
    for (int i = 0; i < 3; ++i) same.push_back({other.newVariable(0, 5), 3, 1, learn::kTrue});
    Timetable::post(other, same, {{-kNever, 1}}, learn::kTrue);
    EXPECT_TRUE(other.settle());
    EdgeFinding::post(solver, tasks, {{-kNever, 1}}, learn::kTrue);
    EXPECT_FALSE(solver.settle());
}

TEST(Steps, AddUpReservationsAndNeverFallBelowNothing) {
    const Cumulative cumulative{3, {{{2, 6}, 2}, {{4, 8}, 2}}};
    const std::vector<Step> steps = stepsOf(cumulative);
    // 3 | from 2: 3 - 2 = 1 | from 4: 3 - 4, so 0 | from 6: 3 - 2 = 1 | from 8: 3
    const std::vector<int> expected{3, 3, 1, 1, 0, 0, 1, 1, 3, 3};
    for (std::size_t tick = 0; tick < expected.size(); ++tick) {
        EXPECT_EQ(capacityAt(steps, static_cast<Tick>(tick)), expected[tick]) << tick;
    }
}

} // namespace
} // namespace piewright::schedule
