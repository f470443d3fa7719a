// Each new propagator alone against plain enumeration, and each reason it gives.
#include "schedule/cost.h"
#include "schedule/curve_cost.h"
#include "schedule/linear.h"
#include "schedule/load_cost.h"
#include "schedule/pausing.h"
#include "schedule/reservoir_level.h"
#include "schedule/setup_cost.h"
#include "schedule/span_table.h"

#include "schedule_prover/world.h"

namespace piewright::schedule {
namespace {

using learn::Assignment;
using learn::kTrue;
using learn::Literal;

TEST(WorkingTime, SaysWhatCountingTickByTickSays) {
    for (std::uint64_t seed = 1; seed <= 500; ++seed) {
        learn::Draw draw(seed);
        std::vector<Span> pauses;
        Tick from = draw(-3, 4);
        for (int i = draw(0, 3); i > 0; --i) {
            pauses.push_back({from, from + draw(1, 4)});
            from = pauses.back().to + draw(1, 4);
        }
        const Tick duration = draw(1, 6);
        const WorkingTime time(duration, pauses);
        const auto isPause = [&](Tick t) {
            return std::any_of(pauses.begin(), pauses.end(),
                               [&](const Span& pause) { return pause.from <= t && t < pause.to; });
        };
        const auto endOf = [&](Tick start) {
            Tick end = start;
            for (Tick done = 0; done < duration; ++end) done += isPause(end) ? 0 : 1;
            return end;
        };
        for (Tick t = 0; t <= 30; ++t) {
            Tick next = t;
            while (isPause(next)) ++next;
            ASSERT_EQ(time.next(t), next) << seed;
            Tick previous = t;
            while (previous >= 0 && isPause(previous)) --previous;
            ASSERT_EQ(time.previous(t), previous) << seed;
            if (!isPause(t)) {
                ASSERT_EQ(time.endOf(t), endOf(t)) << seed;
            }
            Tick latest = -1;
            Tick earliest = -1;
            for (Tick start = 0; start <= 60; ++start) {
                if (isPause(start)) continue;
                if (endOf(start) <= t) latest = start;
                if (endOf(start) >= t && earliest < 0) earliest = start;
            }
            ASSERT_EQ(time.latestStart(t), latest) << seed << " " << t;
            ASSERT_EQ(time.earliestStart(t), earliest) << seed << " " << t;
        }
    }
}

TEST(Pausing, AgreesWithEnumerationAndGivesReasonsThatFollow) {
    compareMany(1500, 20, [](World& world, std::uint64_t seed) {
        struct One {
            Time start, end;
            Literal present;
            Tick duration;
            std::vector<Span> pauses;
        };
        std::vector<One> all;
        for (int i = 0; i < 2; ++i) {
            One one;
            one.present = world.perhaps(50);
            one.start = {world.variable(0, world.draw(3, 7), one.present), 0};
            one.end = {world.variable(world.draw(0, 4), world.draw(5, 10), one.present), 0};
            one.duration = world.draw(1, 3);
            const Tick from = world.draw(-1, 4);
            one.pauses.push_back({from, from + world.draw(1, 3)});
            if (world.draw.chance(50)) one.pauses.push_back({from + 5, from + 6});
            Pausing::post(world.solver, one.start.variable, one.end.variable, WorkingTime(one.duration, one.pauses));
            all.push_back(one);
        }
        world.clauses(4);
        world.compare(
            [all](const Assignment& values) {
                return std::all_of(all.begin(), all.end(), [&](const One& one) {
                    if (!learn::holds(values, one.present)) return true;
                    const auto isPause = [&](Tick t) {
                        return std::any_of(one.pauses.begin(), one.pauses.end(),
                                           [&](const Span& pause) { return pause.from <= t && t < pause.to; });
                    };
                    Tick end = World::at(values, one.start);
                    if (isPause(end)) return false;
                    for (Tick done = 0; done < one.duration; ++end) done += isPause(end) ? 0 : 1;
                    return end == World::at(values, one.end);
                });
            },
            seed);
    });
}

TEST(SpanTable, AgreesWithEnumerationAndGivesReasonsThatFollow) {
    compareMany(600, 20, [](World& world, std::uint64_t seed) {
        const int capacity = world.draw(1, 4);
        const Tick from = world.draw(0, 5);
        const int reserved = world.draw(0, 2);
        const std::vector<Step> steps = stepsOf({capacity, {{{from, from + 2}, reserved}}});
        std::vector<SpanTask> tasks;
        const Literal active = world.perhaps(20);
        for (int i = 0; i < 3; ++i) {
            SpanTask task;
            task.present = world.perhaps(40);
            task.start = {world.variable(world.draw(0, 2), world.draw(2, 5), task.present), 0};
            task.end = {task.start.variable, world.draw(1, 3)};
            task.demand = world.draw(1, capacity);
            if (world.draw.chance(60)) {
                task.end = {world.variable(world.draw(1, 4), world.draw(4, 7), task.present), 0};
                world.solver.addDifference(task.start.variable, task.end.variable, 1);
            }
            tasks.push_back(task);
        }
        SpanTable::post(world.solver, tasks, steps, active);
        world.clauses(3);
        world.compare(
            [tasks, steps, active](const Assignment& values) {
                for (const SpanTask& task : tasks) {
                    if (learn::holds(values, task.present) &&
                        World::at(values, task.end) <= World::at(values, task.start)) {
                        return false;
                    }
                }
                if (!learn::holds(values, active)) return true;
                for (Tick tick = 0; tick < 12; ++tick) {
                    int used = 0;
                    for (const SpanTask& task : tasks) {
                        const bool runs = learn::holds(values, task.present) && World::at(values, task.start) <= tick &&
                                          tick < World::at(values, task.end);
                        used += runs ? task.demand : 0;
                    }
                    if (used > capacityAt(steps, tick)) return false;
                }
                return true;
            },
            seed);
    });
}

TEST(ReservoirLevel, AgreesWithEnumerationAndGivesReasonsThatFollow) {
    compareMany(1200, 50, [](World& world, std::uint64_t seed) {
        std::vector<Flowing> flows;
        const Literal active = world.perhaps(20);
        const int initial = world.draw(0, 3);
        const int least = world.draw(0, initial);
        for (int i = 0; i < 3; ++i) {
            const Literal present = world.perhaps(50);
            const Tick from = world.draw(0, 3);
            const learn::Variable start = world.variable(from, from + world.draw(0, 4), present);
            for (const Tick offset : {0, world.draw(1, 3)}) {
                const int amount = world.draw(-3, 3);
                if (amount != 0) flows.push_back({{start, offset}, amount, present});
            }
        }
        ReservoirLevel::post(world.solver, flows, initial, least, active);
        world.clauses(3);
        world.compare(
            [flows, initial, least, active](const Assignment& values) {
                if (!learn::holds(values, active)) return true;
                for (Tick tick = 0; tick < 14; ++tick) {
                    std::int64_t level = initial;
                    for (const Flowing& flow : flows) {
                        const bool isBy = learn::holds(values, flow.present) && World::at(values, flow.time) <= tick;
                        level += isBy ? flow.amount : 0;
                    }
                    if (level < least) return false;
                }
                return true;
            },
            seed);
    });
}

TEST(Linear, AgreesWithEnumerationAndGivesReasonsThatFollow) {
    compareMany(1500, 50, [](World& world, std::uint64_t seed) {
        std::vector<Linear::Term> terms;
        std::int64_t most = 0;
        for (int i = 0; i < 4; ++i) {
            const learn::Variable x =
                i < 2 ? learn::variableOf(world.boolean().half) : world.variable(world.draw(-2, 1), world.draw(2, 4));
            const learn::Half half = world.draw.chance(50) ? learn::plus(x) : learn::minus(x);
            terms.push_back({half, world.draw(1, 4)});
            most -= terms.back().weight * world.solver.bound(half ^ 1);
        }
        const std::int64_t least = most - world.draw(-1, 8);
        const std::vector<Linear::Term> posted = terms;
        Linear::post(world.solver, std::move(terms), least);
        world.clauses(4);
        world.compare(
            [posted, least](const Assignment& values) {
                std::int64_t sum = 0;
                for (const Linear::Term& term : posted) {
                    const learn::Value value = values[learn::at(learn::variableOf(term.half))];
                    sum += term.weight * ((term.half & 1) == 0 ? value : -value);
                }
                return sum >= least;
            },
            seed);
    });
}

Curve drawCurve(learn::Draw& draw) {
    Curve curve;
    Tick from = draw(-2, 4);
    do {
        curve.pieces.push_back({from, draw(-4, 8), draw(-3, 3)});
        from += draw(1, 4);
    } while (draw.chance(60));
    return curve;
}

TEST(CurveCost, AgreesWithEnumerationAndGivesReasonsThatFollow) {
    compareMany(1500, 50, [](World& world, std::uint64_t seed) {
        struct One {
            learn::Variable x, cost;
            Curve curve;
            Literal present;
        };
        std::vector<One> all;
        for (int i = 0; i < 2; ++i) {
            One one;
            one.present = world.perhaps(50);
            one.x = world.variable(0, world.draw(2, 8), one.present);
            one.cost = world.variable(-5, world.draw(-2, 6));
            one.curve = drawCurve(world.draw);
            CurveCost::post(world.solver, one.x, one.cost, one.curve, one.present);
            all.push_back(one);
        }
        world.clauses(4);
        world.compare(
            [all](const Assignment& values) {
                return std::all_of(all.begin(), all.end(), [&](const One& one) {
                    return !learn::holds(values, one.present) ||
                           values[learn::at(one.cost)] >= valueOf(one.curve, values[learn::at(one.x)]);
                });
            },
            seed);
    });
}

TEST(CurveCost, FindsTheLeastAndTheEndsOfWhatIsCheapEnough) {
    for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
        learn::Draw draw(seed);
        const Curve curve = drawCurve(draw);
        const Tick from = draw(-3, 6);
        const Tick to = from + draw(0, 8);
        const Cost by = draw(-8, 12);
        std::optional<Tick> first, last;
        Cost least = valueOf(curve, from);
        Cost most = least;
        bool rises = true;
        for (Tick t = from; t <= to; ++t) {
            const Cost value = valueOf(curve, t);
            rises = rises && (t == from || valueOf(curve, t - 1) <= value);
            least = std::min(least, value);
            most = std::max(most, value);
            if (value > by) continue;
            if (!first) first = t;
            last = t;
        }
        ASSERT_EQ(firstAtMost(curve, from, to, by), first) << seed;
        ASSERT_EQ(lastAtMost(curve, from, to, by), last) << seed;
        ASSERT_EQ(leastOf(curve, from, to), least) << seed;
        ASSERT_EQ(mostOf(curve, from, to), most) << seed;
        ASSERT_EQ(neverFalls(curve, from, to), rises) << seed;
    }
}

TEST(OverCost, AgreesWithEnumerationAndGivesReasonsThatFollow) {
    compareMany(500, 20, [](World& world, std::uint64_t seed) {
        std::vector<SpanTask> tasks;
        for (int i = 0; i < 3; ++i) {
            SpanTask task;
            task.present = world.perhaps(40);
            task.start = {world.variable(world.draw(0, 2), world.draw(2, 4), task.present), 0};
            task.end = {task.start.variable, world.draw(1, 3)};
            task.demand = world.draw(1, 3);
            if (world.draw.chance(40)) {
                task.end = {world.variable(world.draw(1, 4), world.draw(4, 7), task.present), 0};
                world.solver.addDifference(task.start.variable, task.end.variable, 1);
            }
            tasks.push_back(task);
        }
        const Tick from = world.draw(0, 4);
        const OverCost::Over over{{from, from + world.draw(1, 4)}, world.draw(0, 2), world.draw(1, 3)};
        const learn::Variable cost = world.variable(0, world.draw(0, 5));
        OverCost::post(world.solver, tasks, over, cost);
        world.clauses(3);
        world.compare(
            [tasks, over, cost](const Assignment& values) {
                for (const SpanTask& task : tasks) {
                    if (learn::holds(values, task.present) &&
                        World::at(values, task.end) <= World::at(values, task.start)) {
                        return false;
                    }
                }
                Cost sum = 0;
                for (Tick tick = over.span.from; tick < over.span.to; ++tick) {
                    int used = 0;
                    for (const SpanTask& task : tasks) {
                        const bool runs = learn::holds(values, task.present) && World::at(values, task.start) <= tick &&
                                          tick < World::at(values, task.end);
                        used += runs ? task.demand : 0;
                    }
                    sum += over.perTick * std::max<Cost>(0, used - over.above);
                }
                return values[learn::at(cost)] >= sum;
            },
            seed);
    });
}

/// The literals are what they stand for by clauses alone here: of every two present ones just one of three holds, and
/// all together are a row of loads.
TEST(SetupCost, AgreesWithEnumerationAndGivesReasonsThatFollow) {
    compareMany(300, 20, [](World& world, std::uint64_t seed) {
        constexpr std::size_t kMany = 3;
        Machine machine;
        for (int f = 0; f < 2; ++f) {
            machine.firstCost.push_back(world.draw(0, 4));
            machine.setupCost.push_back({world.draw(0, 4), world.draw(0, 4)});
        }
        Standings all;
        all.before.assign(kMany, std::vector<Literal>(kMany, ~kTrue));
        all.together = all.before;
        for (std::size_t i = 0; i < kMany; ++i) {
            all.present.push_back(world.perhaps(50));
            all.family.push_back(static_cast<FamilyIndex>(world.draw(0, 1)));
        }
        for (std::size_t i = 0; i < kMany; ++i) {
            for (std::size_t j = i + 1; j < kMany; ++j) {
                all.before[i][j] = world.boolean();
                all.before[j][i] = world.boolean();
                if (all.family[i] == all.family[j]) all.together[i][j] = all.together[j][i] = world.boolean();
            }
        }
        const auto shared = std::make_shared<const Standings>(all);
        std::vector<learn::Variable> costs;
        for (std::size_t i = 0; i < kMany; ++i) {
            costs.push_back(world.variable(0, world.draw(0, 3)));
            SetupCost::post(world.solver, shared, machine, i, costs.back());
        }
        for (std::size_t i = 0; i < kMany; ++i) {
            for (std::size_t j = 0; j < kMany; ++j) {
                if (i == j) continue;
                const std::vector<Literal> states{all.before[i][j], all.before[j][i], all.together[i][j]};
                (void)world.solver.addClause({~all.present[i], ~all.present[j], states[0], states[1], states[2]});
                for (std::size_t s = 0; s < 3; ++s) {
                    (void)world.solver.addClause({~states[s], all.present[i]});
                    for (std::size_t t = 0; t < s; ++t) (void)world.solver.addClause({~states[s], ~states[t]});
                }
                for (std::size_t k = 0; k < kMany; ++k) {
                    if (k == i || k == j) continue;
                    (void)world.solver.addClause({~all.before[i][j], ~all.before[j][k], all.before[i][k]});
                    (void)world.solver.addClause({~all.together[i][j], ~all.together[j][k], all.together[i][k]});
                    (void)world.solver.addClause({~all.together[i][j], ~all.before[j][k], all.before[i][k]});
                    (void)world.solver.addClause({~all.before[i][j], ~all.together[j][k], all.before[i][k]});
                }
            }
        }
        world.compare(
            [all, machine, costs](const Assignment& values) {
                const auto holds = [&](Literal literal) { return learn::holds(values, literal); };
                // Ranks: how many come before.
                std::vector<int> rank(kMany, 0);
                for (std::size_t i = 0; i < kMany; ++i) {
                    for (std::size_t j = 0; j < kMany; ++j) {
                        if (i == j) continue;
                        const bool both = holds(all.present[i]) && holds(all.present[j]);
                        const int states = (holds(all.before[i][j]) ? 1 : 0) + (holds(all.before[j][i]) ? 1 : 0) +
                                           (holds(all.together[i][j]) ? 1 : 0);
                        if (states != (both ? 1 : 0)) return false;
                        rank[j] += holds(all.before[i][j]) ? 1 : 0;
                    }
                }
                for (std::size_t i = 0; i < kMany; ++i) {
                    for (std::size_t j = 0; j < kMany; ++j) {
                        if (i == j || !holds(all.present[i]) || !holds(all.present[j])) continue;
                        if (holds(all.before[i][j]) != (rank[i] < rank[j])) return false;
                        if (holds(all.together[i][j]) != (rank[i] == rank[j])) return false;
                    }
                }
                for (std::size_t i = 0; i < kMany; ++i) {
                    if (!holds(all.present[i])) continue;
                    bool leads = true;
                    int last = -1;
                    std::size_t lastOne = kMany;
                    for (std::size_t j = 0; j < kMany; ++j) {
                        if (j == i || !holds(all.present[j])) continue;
                        if (rank[j] == rank[i] && j < i) leads = false;
                        if (rank[j] < rank[i] && rank[j] > last) {
                            last = rank[j];
                            lastOne = j;
                        }
                    }
                    if (!leads) continue;
                    const std::size_t family = at(all.family[i]);
                    const Cost cost = lastOne == kMany ? machine.firstCost[family]
                                                       : machine.setupCost[at(all.family[lastOne])][family];
                    if (values[learn::at(costs[i])] < cost) return false;
                }
                return true;
            },
            seed);
    });
}

} // namespace
} // namespace piewright::schedule
