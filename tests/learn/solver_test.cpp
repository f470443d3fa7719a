// The kernel against plain enumeration.
#include "learn/solver.h"

#include "learn/enumerate.h"

#include <gtest/gtest.h>

namespace piewright::learn {
namespace {

struct Difference {
    Variable from{}, to{};
    Value least = 0;
    Literal when;
};

/// A random model: a few integers and Booleans, clauses over their bounds, gated differences.
struct RandomModel {
    RandomModel(std::uint64_t seed, Solver& solver) : draw(seed) {
        const int integers = draw(1, 3);
        const int booleans = draw(2, 6);
        for (int i = 0; i < integers; ++i) {
            const Value least = draw(-3, 2);
            const Value most = least + draw(1, 4);
            domains.push_back({solver.newVariable(least, most), least, most});
        }
        for (int i = 0; i < booleans; ++i) domains.push_back({variableOf(solver.newBoolean().half), 0, 1});
        const int rules = draw(0, 6);
        for (int i = 0; i < rules; ++i) {
            Difference difference{domains[index(integers)].variable, domains[index(integers)].variable, draw(-3, 4),
                                  draw.chance(40) ? kTrue : literal()};
            if (difference.from == difference.to) continue;
            differences.push_back(difference);
            solver.addDifference(difference.from, difference.to, difference.least, difference.when);
        }
        const int count = draw(8, 45);
        for (int i = 0; i < count; ++i) {
            std::vector<Literal> clause;
            const int size = draw.chance(10) ? 2 : 3;
            clause.reserve(3);
            for (int k = 0; k < size; ++k) clause.push_back(literal());
            clauses.push_back(clause);
            solver.addClause(clause);
        }
    }

    std::size_t index(int below) { return static_cast<std::size_t>(draw(0, below - 1)); }
    Literal literal() {
        const Domain& domain = domains[index(static_cast<int>(domains.size()))];
        const Value value = draw(domain.least + 1, domain.most);
        return draw.chance(50) ? atLeast(domain.variable, value) : atMost(domain.variable, value - 1);
    }
    [[nodiscard]] bool keeps(const Assignment& values) const {
        for (const Difference& d : differences) {
            if (holds(values, d.when) && values[at(d.to)] - values[at(d.from)] < d.least) return false;
        }
        return std::all_of(clauses.begin(), clauses.end(), [&](const std::vector<Literal>& clause) {
            return std::any_of(clause.begin(), clause.end(), [&](Literal l) { return holds(values, l); });
        });
    }
    [[nodiscard]] bool isPossible(std::span<const Literal> assumed) const {
        Assignment values(domains.size() + 1, 0);
        return enumerate(domains, values, [&](const Assignment& one) {
            return keeps(one) && std::all_of(assumed.begin(), assumed.end(), [&](Literal l) { return holds(one, l); });
        });
    }

    Draw draw;
    std::vector<Domain> domains;
    std::vector<Difference> differences;
    std::vector<std::vector<Literal>> clauses;
};

Assignment valuesOf(const Solver& solver, std::span<const Domain> domains) {
    Assignment values(solver.variables(), 0);
    for (const Domain& domain : domains) values[at(domain.variable)] = solver.lower(domain.variable);
    return values;
}

TEST(Solver, AgreesWithEnumerationUnderChangingAssumptions) {
    int satisfied = 0;
    int refuted = 0;
    for (std::uint64_t seed = 1; seed <= 3000; ++seed) {
        Solver solver;
        RandomModel model(seed, solver);
        InOrder order(model.domains);
        for (int question = 0; question < 4; ++question) {
            std::vector<Literal> assumed;
            const int count = question == 0 ? 0 : model.draw(1, 3);
            assumed.reserve(3);
            for (int i = 0; i < count; ++i) assumed.push_back(model.literal());
            const Outcome outcome = solver.solve(assumed, {}, order);
            ASSERT_EQ(outcome == Outcome::Satisfied, model.isPossible(assumed)) << "seed " << seed;
            if (outcome == Outcome::Satisfied) {
                ++satisfied;
                const Assignment values = valuesOf(solver, model.domains);
                ASSERT_TRUE(model.keeps(values)) << "seed " << seed;
                for (const Literal l : assumed) ASSERT_TRUE(holds(values, l)) << "seed " << seed;
                continue;
            }
            ++refuted;
            for (const Literal l : solver.core()) {
                ASSERT_NE(std::find(assumed.begin(), assumed.end(), l), assumed.end()) << "seed " << seed;
            }
            ASSERT_FALSE(model.isPossible(solver.core())) << "seed " << seed;
        }
    }
    EXPECT_GT(satisfied, 1000); // the models are neither all easy nor all contradictory
    EXPECT_GT(refuted, 1000);
}

TEST(Solver, AgreesWithEnumerationWhileArcsComeAndGo) {
    // A counter stands for the arcs of the moment: they hold while it is no higher than their number.
    int satisfied = 0;
    int refuted = 0;
    for (std::uint64_t seed = 1; seed <= 1500; ++seed) {
        Solver solver;
        RandomModel model(seed, solver);
        InOrder order(model.domains);
        const std::vector<Difference> stated = model.differences;
        const Variable counter = solver.newVariable(0, 100);
        const std::size_t arcs = solver.arcs();
        for (int round = 1; round <= 4; ++round) {
            solver.backtrackToRoot();
            solver.dropArcs(arcs);
            solver.addClause({atLeast(counter, round)});
            model.differences = stated;
            for (int i = 0; i < 3; ++i) {
                const auto from = model.index(static_cast<int>(model.domains.size()));
                const auto to = model.index(static_cast<int>(model.domains.size()));
                if (from == to) continue;
                model.differences.push_back(
                    {model.domains[from].variable, model.domains[to].variable, model.draw(-3, 2), kTrue});
                solver.addDifference(model.domains[from].variable, model.domains[to].variable,
                                     model.differences.back().least, atMost(counter, round));
            }
            const Literal now = atMost(counter, round);
            const Outcome outcome = solver.solve({&now, 1}, {}, order);
            ASSERT_EQ(outcome == Outcome::Satisfied, model.isPossible({})) << "seed " << seed << " round " << round;
            (outcome == Outcome::Satisfied ? satisfied : refuted)++;
            if (outcome == Outcome::Satisfied) {
                ASSERT_TRUE(model.keeps(valuesOf(solver, model.domains)));
            }
        }
        model.differences = stated;
    }
    EXPECT_GT(satisfied, 500);
    EXPECT_GT(refuted, 500);
}

TEST(Solver, LearnsOnlyWhatFollows) {
    int learnt = 0;
    for (std::uint64_t seed = 1; seed <= 3000; ++seed) {
        Solver solver;
        RandomModel model(seed, solver);
        InOrder order(model.domains);
        if (solver.solve({}, {}, order) == Outcome::Refuted) continue;
        Assignment values(model.domains.size() + 1, 0);
        for (const std::vector<Literal>& clause : solver.learntClauses()) {
            ++learnt;
            std::vector<Literal> denied;
            denied.reserve(clause.size());
            for (const Literal l : clause) denied.push_back(~l);
            ASSERT_FALSE(model.isPossible(denied)) << "seed " << seed;
        }
    }
    EXPECT_GT(learnt, 200);
}

/// Every reason asked for must follow from the model alone.
TEST(Solver, GivesReasonsThatFollow) {
    struct Witnessed {
        const RandomModel* model = nullptr;
        int asked = 0;
        int broken = 0;
    } witnessed;
    for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
        Solver solver;
        RandomModel model(seed, solver);
        witnessed.model = &model;
        solver.setWitness(
            [](void* context, std::span<const Literal> premises, Literal consequence) {
                auto& seen = *static_cast<Witnessed*>(context);
                std::vector<Literal> denied(premises.begin(), premises.end());
                if (consequence.half >= 0) denied.push_back(~consequence);
                ++seen.asked;
                if (seen.model->isPossible(denied)) ++seen.broken;
            },
            &witnessed);
        InOrder order(model.domains);
        (void)solver.solve({}, {}, order);
        ASSERT_EQ(witnessed.broken, 0) << "seed " << seed;
    }
    EXPECT_GT(witnessed.asked, 2000);
}

/// Pigeons in holes: no pigeon may share, one too many. Refuted by search alone (Haken 1985, Theoretical Computer
/// Science 39, on its hardness).
TEST(Solver, RefutesPigeonholesAndStopsAtItsLimits) {
    const auto state = [](Solver& solver, int pigeons, int holes, std::vector<Domain>& domains) {
        std::vector<std::vector<Literal>> in;
        for (int p = 0; p < pigeons; ++p) {
            in.emplace_back();
            for (int h = 0; h < holes; ++h) {
                in.back().push_back(solver.newBoolean());
                domains.push_back({variableOf(in.back().back().half), 0, 1});
            }
            solver.addClause(in.back());
        }
        for (std::size_t h = 0; h < static_cast<std::size_t>(holes); ++h) {
            for (std::size_t p = 0; p < in.size(); ++p) {
                for (std::size_t q = p + 1; q < in.size(); ++q) solver.addClause({~in[p][h], ~in[q][h]});
            }
        }
    };
    {
        Solver solver;
        std::vector<Domain> domains;
        state(solver, 7, 6, domains);
        InOrder order(domains);
        EXPECT_EQ(solver.solve({}, {}, order), Outcome::Refuted);
        EXPECT_TRUE(solver.core().empty());
    }
    Solver solver;
    std::vector<Domain> domains;
    state(solver, 11, 10, domains);
    InOrder order(domains);
    Limits limits;
    limits.conflicts = 300;
    EXPECT_EQ(solver.solve({}, limits, order), Outcome::Unknown);
    EXPECT_EQ(solver.counts().conflicts, 300U);
    limits = {};
    limits.work = 20'000;
    EXPECT_EQ(solver.solve({}, limits, order), Outcome::Unknown);
    const std::atomic<bool> cancelled{true};
    limits = {};
    limits.cancelled = &cancelled;
    EXPECT_EQ(solver.solve({}, limits, order), Outcome::Unknown);
}

/// Long enough that clauses are dropped and nodes gathered up, time and again.
TEST(Solver, KeepsItsAnswersWhenItDropsClauses) {
    Solver solver;
    std::vector<Domain> domains;
    Draw draw(7);
    domains.reserve(120);
    for (int i = 0; i < 120; ++i) domains.push_back({variableOf(solver.newBoolean().half), 0, 1});
    std::vector<std::vector<Literal>> clauses;
    for (int i = 0; i < 504; ++i) { // 4.2 clauses of 3 a variable: as hard as they come
        std::vector<Literal> clause;
        for (int k = 0; k < 3; ++k) {
            const Literal l = atLeast(domains[static_cast<std::size_t>(draw(0, 119))].variable, 1);
            clause.push_back(draw.chance(50) ? l : ~l);
        }
        clauses.push_back(clause);
        solver.addClause(clause);
    }
    InOrder order(domains);
    for (int question = 0; question < 40; ++question) {
        std::vector<Literal> assumed;
        for (int k = 0; k < 3; ++k) {
            const Literal l = atLeast(domains[static_cast<std::size_t>(draw(0, 119))].variable, 1);
            assumed.push_back(draw.chance(50) ? l : ~l);
        }
        const Outcome kept = solver.solve(assumed, {}, order);
        const Assignment values = valuesOf(solver, domains);
        // A solver that has learnt nothing yet must say the same.
        Solver fresh;
        for (std::size_t i = 0; i < domains.size(); ++i) fresh.newBoolean();
        for (const std::vector<Literal>& clause : clauses) fresh.addClause(clause);
        ASSERT_EQ(kept, fresh.solve(assumed, {}, order));
        if (kept != Outcome::Satisfied) continue;
        for (const std::vector<Literal>& clause : clauses) {
            ASSERT_TRUE(std::any_of(clause.begin(), clause.end(), [&](Literal l) { return holds(values, l); }));
        }
    }
    EXPECT_GT(solver.counts().conflicts, 1000U);
}

TEST(Solver, DoesTheSameTwice) {
    const auto run = [] {
        Solver solver;
        RandomModel model(77, solver);
        InOrder order(model.domains);
        (void)solver.solve({}, {}, order);
        return std::pair{solver.counts().work, solver.learntClauses()};
    };
    EXPECT_EQ(run(), run());
}

} // namespace
} // namespace piewright::learn
