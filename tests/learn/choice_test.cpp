// Alternatives and counts against plain enumeration.
#include "learn/cardinality.h"
#include "learn/choice.h"

#include "learn/enumerate.h"

#include <gtest/gtest.h>

namespace piewright::learn {
namespace {

/// x is that one of two or three optional variables which is present; random clauses on top.
TEST(Choice, AgreesWithEnumeration) {
    int refuted = 0;
    for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
        Draw draw(seed);
        Solver solver;
        const Variable x = solver.newVariable(0, 6);
        struct Option {
            Variable variable{};
            Literal present;
            Value least = 0, most = 0, offset = 0;
        };
        std::vector<Option> options;
        std::vector<Domain> searched{{x, 0, 6}};
        std::vector<Literal> any;
        std::vector<Choice::Candidate> lower, upper;
        const int count = draw(2, 3);
        for (int i = 0; i < count; ++i) {
            Option option;
            option.least = draw(0, 4);
            option.most = option.least + draw(0, 3);
            option.offset = draw(-2, 2);
            option.variable = solver.newVariable(option.least, option.most);
            option.present = solver.newBoolean();
            solver.makeOptional(option.variable, option.present);
            solver.addArc(plus(x), plus(option.variable), -option.offset);
            solver.addArc(minus(x), minus(option.variable), option.offset);
            solver.addArc(plus(option.variable), plus(x), option.offset, option.present);
            solver.addArc(minus(option.variable), minus(x), -option.offset, option.present);
            lower.push_back({plus(option.variable), option.offset, option.present});
            upper.push_back({minus(option.variable), -option.offset, option.present});
            searched.push_back({variableOf(option.present.half), 0, 1});
            any.push_back(option.present);
            options.push_back(option);
        }
        Choice::post(solver, plus(x), lower);
        Choice::post(solver, minus(x), upper);
        solver.addClause(any);
        for (std::size_t i = 0; i < any.size(); ++i) {
            for (std::size_t j = i + 1; j < any.size(); ++j) solver.addClause({~any[i], ~any[j]});
        }
        std::vector<std::vector<Literal>> clauses;
        const int rules = draw(0, 5);
        for (int r = 0; r < rules; ++r) {
            std::vector<Literal> clause;
            const int size = draw(1, 3);
            for (int k = 0; k < size; ++k) {
                const Literal bound = atLeast(x, draw(1, 6));
                const Literal one = draw.chance(50) ? bound : any[static_cast<std::size_t>(draw(0, count - 1))];
                clause.push_back(draw.chance(50) ? one : ~one);
            }
            clauses.push_back(clause);
            solver.addClause(clause);
        }
        const auto keeps = [&](const Assignment& values) {
            int present = 0;
            for (const Option& option : options) {
                if (!holds(values, option.present)) continue;
                ++present;
                const Value own = values[at(x)] - option.offset;
                if (own < option.least || own > option.most) return false;
            }
            return present == 1 && std::all_of(clauses.begin(), clauses.end(), [&](const std::vector<Literal>& clause) {
                       return std::any_of(clause.begin(), clause.end(), [&](Literal l) { return holds(values, l); });
                   });
        };
        Assignment values(solver.variables(), 0);
        const bool isPossible = enumerate(searched, values, keeps);
        InOrder order(searched);
        const Outcome outcome = solver.solve({}, {}, order);
        ASSERT_EQ(outcome == Outcome::Satisfied, isPossible) << "seed " << seed;
        if (outcome == Outcome::Satisfied) {
            for (const Domain& domain : searched) values[at(domain.variable)] = solver.lower(domain.variable);
            ASSERT_TRUE(keeps(values)) << "seed " << seed;
        } else {
            ++refuted;
        }
    }
    EXPECT_GT(refuted, 50);
    EXPECT_LT(refuted, 1900);
}

TEST(Cardinality, AgreesWithEnumeration) {
    int refuted = 0;
    for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
        Draw draw(seed);
        Solver solver;
        std::vector<Domain> domains;
        domains.reserve(7);
        for (int i = 0; i < 7; ++i) domains.push_back({variableOf(solver.newBoolean().half), 0, 1});
        const auto literal = [&] {
            const Literal l = atLeast(domains[static_cast<std::size_t>(draw(0, 6))].variable, 1);
            return draw.chance(50) ? l : ~l;
        };
        struct Rule {
            std::vector<Literal> literals;
            int least;
            Literal when;
        };
        std::vector<Rule> rules;
        const int count = draw(1, 6);
        for (int r = 0; r < count; ++r) {
            Rule rule;
            for (const Domain& domain : domains) {
                const Literal l = atLeast(domain.variable, 1);
                if (draw.chance(60)) rule.literals.push_back(draw.chance(50) ? l : ~l);
            }
            rule.least = draw(0, static_cast<int>(rule.literals.size()) + 1);
            rule.when = draw.chance(40) ? kTrue : literal();
            Cardinality::post(solver, rule.literals, rule.least, rule.when);
            rules.push_back(rule);
        }
        const auto keeps = [&](const Assignment& values) {
            return std::all_of(rules.begin(), rules.end(), [&](const Rule& rule) {
                int have = 0;
                for (const Literal l : rule.literals) have += holds(values, l) ? 1 : 0;
                return !holds(values, rule.when) || have >= rule.least;
            });
        };
        Assignment values(solver.variables(), 0);
        const bool isPossible = enumerate(domains, values, keeps);
        InOrder order(domains);
        const Outcome outcome = solver.solve({}, {}, order);
        ASSERT_EQ(outcome == Outcome::Satisfied, isPossible) << "seed " << seed;
        refuted += isPossible ? 0 : 1;
    }
    EXPECT_GT(refuted, 100);
    EXPECT_LT(refuted, 1900);
}

} // namespace
} // namespace piewright::learn
