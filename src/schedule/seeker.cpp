#include "schedule/seeker.h"

#include "schedule/cost.h"
#include "schedule/energy.h"
#include "schedule/tree.h"

#include <algorithm>
#include <utility>

namespace piewright::schedule {

namespace {
constexpr std::uint64_t kChunk = 4'000; ///< between two looks at whether it is cancelled
constexpr std::uint64_t kProof = 2'000; ///< steps of the first tree, eight times as many of the next
constexpr int kProofs = 3;              ///< of a tree; what it cannot refute then is the learning search's matter
} // namespace

Seeker::Seeker(const Model& model, std::uint64_t seed)
    : model_(model), builder_(model, seed), nextProof_(1000 + 20 * static_cast<std::uint64_t>(model.units.size())) {}

void Seeker::keep(Schedule schedule, const Turn& turn, Standing& standing) const {
    standing.value = costOf(model_.problem, schedule);
    standing.schedule = std::move(schedule);
    if (turn.found) turn.found(*standing.schedule, standing.value);
}

/// What is cheap to refute, and what only a tight search finds.
std::uint64_t Seeker::prove(std::uint64_t work, const Turn& turn, Standing& standing) {
    if (proofs_ == 0 && isOverloaded(model_)) {
        standing.isHopeless = true;
        return 1;
    }
    Tree tree(model_);
    switch (tree.search(work)) {
    case TreeAnswer::None:
        standing.isHopeless = true;
        break;
    case TreeAnswer::Found:
        keep(builder_.compacted(tree.schedule()), turn, standing);
        break;
    case TreeAnswer::OutOfTime:
        break;
    }
    return tree.work();
}

std::uint64_t Seeker::run(const Turn& turn, Standing& standing) {
    std::uint64_t steps = 0;
    while (!standing.schedule && !standing.isHopeless && steps < turn.work) {
        if (turn.cancelled != nullptr && turn.cancelled->load(std::memory_order_relaxed)) break;
        if (proofs_ < kProofs && builder_.work() >= nextProof_) {
            steps += 1 + prove(kProof << (3 * proofs_), turn, standing);
            ++proofs_;
            nextProof_ *= 8;
            continue;
        }
        const std::uint64_t before = builder_.work();
        const std::uint64_t upTo = before + std::min(kChunk, turn.work - steps);
        if (auto schedule = builder_.run(upTo)) keep(*std::move(schedule), turn, standing);
        steps += std::max<std::uint64_t>(1, builder_.work() - before);
    }
    return steps;
}

std::vector<std::uint64_t> Seeker::failures() const {
    std::vector<std::uint64_t> failures(model_.problem.activities.size());
    for (std::size_t a = 0; a < failures.size(); ++a) failures[a] = builder_.failures()[model_.unitOf[a]];
    return failures;
}

} // namespace piewright::schedule
