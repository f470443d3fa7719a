#include "schedule/neighbourhoods.h"

#include "schedule/cost.h"
#include "schedule/near.h"
#include "schedule/partial_order.h"
#include "schedule/prover.h"
#include "schedule/proving.h"
#include "schedule/relax.h"
#include "schedule/steps.h"

#include <algorithm>
#include <array>
#include <utility>

namespace piewright::schedule {

namespace {

constexpr std::uint64_t kPatience = 300; ///< dead ends in one neighbourhood
constexpr double kFirstSize = 12.0;
constexpr double kLeastSize = 4.0;
constexpr double kGrow = 1.08;   ///< after one that was searched through
constexpr double kShrink = 0.96; ///< after one that was not
constexpr double kForget = 0.9;  ///< of what a way of relaxing was worth
constexpr double kLeastWorth = 0.1;

} // namespace

struct Neighbourhoods::State {
    State(const Problem& stated, std::uint64_t seed) : problem(stated), relaxing(stated), dice(seed) {
        sizes.fill(kFirstSize);
        worth.fill(1.0);
    }

    [[nodiscard]] std::size_t chooseHow() {
        double sum = 0.0;
        for (const double one : worth) sum += one;
        double left = dice.share() * sum;
        for (std::size_t how = 0; how < worth.size(); ++how) {
            left -= worth[how];
            if (left < 0.0) return how;
        }
        return worth.size() - 1;
    }

    /// One neighbourhood; whether there is anything left to do.
    void visit(const Turn& turn, std::uint64_t work, Standing& standing);
    void keep(const Turn& turn, Standing& standing);

    const Problem& problem;
    Relaxing relaxing;
    Dice dice;
    std::unique_ptr<Prover> prover;
    Schedule current; ///< as good as the best known, at times another
    Cost value = std::numeric_limits<Cost>::max();
    std::array<double, kRelaxes> sizes{};
    std::array<double, kRelaxes> worth{};
    std::uint64_t sinceBetter = 0;
};

Neighbourhoods::Neighbourhoods(const Problem& problem, std::uint64_t seed)
    : state_(std::make_unique<State>(problem, seed)) {}
Neighbourhoods::~Neighbourhoods() = default;

void Neighbourhoods::State::keep(const Turn& turn, Standing& standing) {
    current = *prover->last();
    value = costOf(problem, current);
    sinceBetter = 0;
    if (value >= standing.value) return;
    standing.schedule = current;
    standing.value = value;
    if (turn.found) turn.found(current, value);
}

void Neighbourhoods::State::visit(const Turn& turn, std::uint64_t work, Standing& standing) {
    const std::size_t n = problem.activities.size();
    const std::size_t how = chooseHow();
    const auto size = static_cast<std::size_t>(sizes[how]);
    std::vector<char> isKept = relaxing.pick(static_cast<Relax>(how), std::min(size, n), current, dice);
    Kept kept;
    for (std::size_t a = 0; a < n; ++a) {
        isKept[a] = isKept[a] == 0 ? 1 : 0;
        if (isKept[a] != 0) kept.choices.push_back(a);
    }
    kept.orders = partialOrder(problem, current, isKept, dice);
    const bool isWalk = sinceBetter > 20 && dice.chance(25);
    if (isWalk) {
        // Something else of the same value: those let go are drawn to either side.
        Schedule guide = current;
        const Tick latest = latestEnd(current);
        for (std::size_t a = 0; a < n; ++a) {
            if (isKept[a] != 0) continue;
            Placed& placed = guide.placed[a];
            const Tick length = placed.end - placed.start;
            placed.start = dice.chance(50) ? 0 : latest - length;
            placed.end = placed.start + length;
        }
        prover->hint(guide, false);
    } else {
        prover->hint(current, false);
    }
    const ProverLimits limits{work, kPatience, turn.cancelled};
    bool isBetter = false;
    const Verdict verdict = prover->decideNear(current, kept, isWalk ? value : value - 1, limits);
    if (verdict == Verdict::Satisfied) {
        isBetter = costOf(problem, *prover->last()) < value;
        if (isBetter) {
            keep(turn, standing);
        } else {
            current = *prover->last();
        }
    }
    ++sinceBetter;
    if (isWalk) return;
    worth[how] = std::max(kLeastWorth, worth[how] * kForget + (isBetter ? 1.0 : 0.0) * (1.0 - kForget) * 10.0);
    if (verdict == Verdict::Refuted) sizes[how] = std::min(sizes[how] * kGrow, static_cast<double>(n));
    if (verdict == Verdict::Unknown) sizes[how] = std::max(sizes[how] * kShrink, kLeastSize);
}

std::uint64_t Neighbourhoods::run(const Turn& turn, Standing& standing) {
    State& state = *state_;
    if (standing.isSettled()) return 0;
    std::uint64_t steps = 0;
    if (!state.prover) {
        state.prover = stateFor(state.problem, turn);
        if (!state.prover) return 1;
        steps += stepsToState(state.problem);
    }
    Prover& prover = *state.prover;
    const std::uint64_t before = prover.work();
    if (standing.schedule && standing.value < state.value) {
        state.current = *standing.schedule;
        state.value = standing.value;
        state.sinceBetter = 0;
        prover.hint(state.current, true);
    }
    while (!prover.isHopeless()) {
        const std::uint64_t done = steps + stepsIn(prover.work() - before);
        if (done >= turn.work || (turn.cancelled != nullptr && *turn.cancelled)) break;
        const std::uint64_t work = workOf(turn.work - done);
        if (state.value == std::numeric_limits<Cost>::max()) {
            if (prover.decide(kMostCost, {work, std::numeric_limits<std::uint64_t>::max(), turn.cancelled}) ==
                Verdict::Satisfied) {
                state.keep(turn, standing);
            }
            continue;
        }
        standing.bound = std::max<Cost>(standing.bound, prover.bound());
        if (state.value <= standing.bound) break;
        state.visit(turn, work, standing);
        steps += 20 + state.problem.activities.size() / 4; // choosing what to let go
    }
    if (prover.isHopeless() && !standing.schedule) standing.isHopeless = true;
    return std::max<std::uint64_t>(1, steps + stepsIn(prover.work() - before));
}

} // namespace piewright::schedule
