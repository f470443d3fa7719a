// A few small variables, some optional, with random clauses on top: one propagator in it is held against plain
// enumeration, and so is each reason it gives.
#pragma once

#include "schedule/compiled_time.h"

#include "learn/enumerate.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <map>
#include <vector>

namespace piewright::schedule {

class World {
  public:
    World(std::uint64_t seed, learn::Solver& kernel) : draw(seed), solver(kernel) { kernel.setWitness(witness, this); }

    learn::Literal boolean() {
        const learn::Literal literal = solver.newBoolean();
        booleans_.push_back({learn::variableOf(literal.half), 0, 1});
        return literal;
    }
    /// Optional by `present`, where that is not kTrue.
    learn::Variable variable(int least, int most, learn::Literal present = learn::kTrue) {
        const learn::Variable x = solver.newVariable(least, most);
        numbers_.push_back({x, least, most});
        if (present != learn::kTrue) {
            solver.makeOptional(x, present);
            presents_.emplace(x, present);
        }
        return x;
    }
    learn::Literal perhaps(int percent) { return draw.chance(percent) ? boolean() : learn::kTrue; }

    /// Clauses over Booleans and bounds of what is always there.
    void clauses(int most) {
        const int count = draw(0, most);
        for (int c = 0; c < count; ++c) {
            std::vector<learn::Literal> clause;
            for (int k = draw(1, 3); k > 0; --k) {
                clause.push_back(bound());
            }
            clauses_.push_back(clause);
            (void)solver.addClause(clause);
        }
    }

    [[nodiscard]] bool isThere(const learn::Assignment& one, learn::Literal present) const {
        return learn::holds(one, present);
    }
    static Tick at(const learn::Assignment& one, Time time) { return one[learn::at(time.variable)] + time.offset; }

    /// The propagator is posted; `rule` says the same literally.
    void compare(const std::function<bool(const learn::Assignment&)>& rule, std::uint64_t seed) {
        rule_ = rule;
        values_.assign(solver.variables(), 0);
        learn::InOrder order(domains());
        for (int round = 0; round < 12; ++round) {
            // First without assumptions; these make it give more reasons.
            std::vector<learn::Literal> assumed;
            while (round > 0 && assumed.size() < 3) assumed.push_back(bound());
            const bool isPossible = learn::enumerate(domains(), values_, [&](const auto& one) {
                return keeps(one) &&
                       std::all_of(assumed.begin(), assumed.end(), [&](auto l) { return learn::holds(one, l); });
            });
            const learn::Outcome outcome = solver.solve(assumed, {}, order);
            ASSERT_EQ(broken_, 0) << "seed " << seed;
            ASSERT_EQ(outcome == learn::Outcome::Satisfied, isPossible) << "seed " << seed << " round " << round;
            if (isPossible) {
                for (const learn::Domain& domain : domains()) {
                    values_[learn::at(domain.variable)] = solver.lower(domain.variable);
                }
                ASSERT_TRUE(keeps(values_)) << "seed " << seed;
                solver.backtrackToRoot();
            } else if (round == 0) {
                isRefuted = true;
                break;
            }
        }
    }

    learn::Draw draw;
    learn::Solver& solver;
    int asked = 0;
    bool isRefuted = false;

  private:
    /// Of what is always there.
    learn::Literal bound() {
        const std::vector<learn::Domain> all = domains();
        const learn::Domain& one = all[static_cast<std::size_t>(draw(0, static_cast<int>(all.size()) - 1))];
        const auto present = presents_.find(one.variable);
        const learn::Literal literal =
            present != presents_.end() ? present->second : learn::atLeast(one.variable, draw(one.least, one.most));
        return draw.chance(50) ? literal : ~literal;
    }
    [[nodiscard]] std::vector<learn::Domain> domains() const {
        std::vector<learn::Domain> all = booleans_;
        all.insert(all.end(), numbers_.begin(), numbers_.end());
        return all;
    }
    [[nodiscard]] bool keeps(const learn::Assignment& one) const {
        return rule_(one) && std::all_of(clauses_.begin(), clauses_.end(), [&](const auto& clause) {
                   return std::any_of(clause.begin(), clause.end(), [&](auto l) { return learn::holds(one, l); });
               });
    }
    /// A bound of what is absent always holds.
    [[nodiscard]] bool holdsFor(const learn::Assignment& one, learn::Literal literal) const {
        const auto present = presents_.find(learn::variableOf(literal.half));
        if (present != presents_.end() && !learn::holds(one, present->second)) return true;
        return learn::holds(one, literal);
    }
    bool follows(std::span<const learn::Literal> premises, learn::Literal consequence) {
        learn::Assignment values(solver.variables(), 0);
        return !learn::enumerate(domains(), values, [&](const learn::Assignment& one) {
            return keeps(one) &&
                   std::all_of(premises.begin(), premises.end(), [&](auto l) { return holdsFor(one, l); }) &&
                   (consequence.half < 0 || !holdsFor(one, consequence));
        });
    }
    static void witness(void* context, std::span<const learn::Literal> premises, learn::Literal consequence) {
        World& world = *static_cast<World*>(context);
        if (!world.rule_) return;
        ++world.asked;
        if (!world.follows(premises, consequence)) ++world.broken_;
    }

    std::vector<learn::Domain> booleans_, numbers_;
    std::map<learn::Variable, learn::Literal> presents_;
    std::vector<std::vector<learn::Literal>> clauses_;
    std::function<bool(const learn::Assignment&)> rule_;
    learn::Assignment values_;
    int broken_ = 0;
};

/// `make` posts a propagator into a world and compares.
inline void compareMany(std::uint64_t seeds, int leastRefuted,
                        const std::function<void(World& world, std::uint64_t seed)>& make) {
    int refuted = 0;
    int asked = 0;
    for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
        learn::Solver solver;
        World world(seed, solver);
        make(world, seed);
        if (testing::Test::HasFatalFailure()) return;
        refuted += world.isRefuted ? 1 : 0;
        asked += world.asked;
    }
    EXPECT_GE(refuted, leastRefuted);
    EXPECT_GE(static_cast<int>(seeds) - refuted, 50);
    EXPECT_GE(asked, 200);
}

} // namespace piewright::schedule
