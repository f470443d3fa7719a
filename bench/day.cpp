// How much cheaper invented days become, and how soon: for each, what the first plan costs and when it was there, then
// the cost after some seconds of the processor as a share of the first. Every figure's schedule is checked.
#include "schedule_improve/day.h"
#include "schedule/check.h"
#include "schedule/cost.h"
#include "schedule/model.h"
#include "schedule/repair.h"
#include "schedule/ruin.h"

#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <string>

namespace {

using namespace piewright::schedule;

double seconds() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

bool isRight(const Problem& problem, const Standing& standing) {
    const auto violations = check(problem, *standing.schedule);
    if (!violations.empty()) std::printf("WRONG: %s\n", violations.front().what.c_str());
    if (costOf(problem, *standing.schedule) != standing.value) std::printf("WRONG: not what it costs\n");
    return violations.empty() && costOf(problem, *standing.schedule) == standing.value;
}

/// One thing changes: what a re-plan takes, and how many activities it moves.
bool replan(const Problem& problem, const Schedule& plan, const char* what) {
    const double begun = seconds();
    const Model model(problem);
    Repair repair(model, plan, 1);
    Standing standing;
    Turn turn;
    turn.work = 2'000'000;
    repair.run(turn, standing);
    const double taken = seconds() - begun;
    if (!standing.schedule) {
        std::printf("    %-28s no plan in %.3f s\n", what, taken);
        return true;
    }
    std::size_t moved = 0;
    for (std::size_t a = 0; a < plan.placed.size(); ++a)
        moved += plan.placed[a] != standing.schedule->placed[a] ? 1U : 0U;
    std::printf("    %-28s %.3f s, %zu of %zu activities otherwise\n", what, taken, moved, plan.placed.size());
    return isRight(problem, standing);
}

} // namespace

int main(int argc, char** argv) {
    const double limit = argc > 1 ? std::atof(argv[1]) : 10;
    const int only = argc > 2 ? std::atoi(argv[2]) : 0;
    bool isFine = true;
    for (const DaySize size : {DaySize{20, 8, 3, 6}, DaySize{40, 12, 4, 6}, DaySize{84, 20, 6, 6}}) {
        if (only != 0 && size.batches != only) continue;
        for (const std::uint64_t seed : {1U, 2U}) {
            const Problem problem = inventedDay(size, seed);
            const auto faults = faultsIn(problem);
            if (!faults.empty()) {
                std::printf("fault: %s\n", faults.front().c_str());
                return 1;
            }
            const double begun = seconds();
            const Model model(problem);
            Ruin ruin(model, seed);
            Standing standing;
            Turn turn;
            turn.work = 1'000;
            double first = 0;
            Cost firstValue = 0;
            double next = 0.1;
            std::uint64_t steps = 0;
            std::printf("%zu activities, seed %llu:", problem.activities.size(), static_cast<unsigned long long>(seed));
            for (double now = 0; now < limit;) {
                steps += ruin.run(turn, standing);
                now = seconds() - begun;
                if (standing.schedule && first == 0) {
                    first = now;
                    firstValue = standing.value;
                    std::printf(" first %lld after %.3f s;", static_cast<long long>(firstValue), first);
                }
                if (now >= next) {
                    if (standing.schedule) {
                        std::printf("  %.1f s %.3f", next,
                                    static_cast<double>(standing.value) / static_cast<double>(firstValue));
                    }
                    next *= 10;
                }
            }
            if (!standing.schedule) {
                std::printf(" no plan\n");
                continue;
            }
            std::printf("; %lld, %.0f rounds/s, %.0f steps/s\n", static_cast<long long>(standing.value),
                        static_cast<double>(ruin.rounds()) / limit, static_cast<double>(steps) / limit);
            isFine = isRight(problem, standing) && isFine;
            const Schedule plan = *standing.schedule;
            Problem later = problem;
            later.activities[0].release = plan.placed[0].start + 25;
            isFine = replan(later, plan, "one begins later") && isFine;
            Problem gone = problem;
            gone.workers[4].present = {{300, 800}};
            isFine = replan(gone, plan, "one person comes later") && isFine;
            Problem longer = problem;
            longer.activities[42].modes[0].duration += 5;
            isFine = replan(longer, plan, "one takes longer") && isFine;
        }
    }
    return isFine ? 0 : 1;
}
