// The search: decisions, restarts, assumptions.
#include "learn/solver.h"

#include <algorithm>
#include <cassert>

namespace piewright::learn {

namespace {

/// 1 1 2 1 1 2 4 … (Luby, Sinclair, Zuckerman 1993, Information Processing Letters 47); `i` from 0.
std::uint64_t luby(std::uint64_t i) {
    std::uint64_t power = 1;
    for (++i; i != 2 * power - 1;) { // the last of a run of 2^k - 1 is 2^(k - 1); before it comes the same run twice
        power = 1;
        while (2 * power - 1 < i) power *= 2;
        if (2 * power - 1 != i) {
            i -= power - 1;
            power = 1;
        }
    }
    return power;
}

constexpr std::uint64_t kRestart = 128;              ///< conflicts, times Luby's number
constexpr std::size_t kArena = std::size_t{1} << 26; ///< words of clauses at which half of them go: 256 MB

} // namespace

Outcome Solver::solve(std::span<const Literal> assumptions, const Limits& limits, Brancher& brancher) {
    core_.clear();
    backtrack(0);
    const Counts before = counts_;
    if (learntsAllowed_ == 0) learntsAllowed_ = 4000;
    const auto spent = [&] {
        return counts_.work - before.work >= limits.work || counts_.conflicts - before.conflicts >= limits.conflicts ||
               (limits.cancelled != nullptr && limits.cancelled->load(std::memory_order_relaxed));
    };
    std::int64_t restarts = 0;
    std::uint64_t untilRestart = kRestart;
    brancher.restarted(0);
    if (!settle()) return Outcome::Refuted;
    if (rooted_ - rootWhenTidied_ > variables() / 8) tidyArcs();
    for (;;) {
        if (!propagate()) {
            if (atRoot() || !learn()) {
                possible_ = false;
                return Outcome::Refuted;
            }
            if (untilRestart > 0) --untilRestart;
            if (spent()) break;
            continue;
        }
        if (atRoot()) {
            commitRoot();
            if (learnts_.size() > learntsAllowed_ || arena_.size() > kArena) {
                collect();
                learntsAllowed_ += 300;
            }
        }
        if (spent()) break;
        if (untilRestart == 0) {
            ++counts_.restarts;
            untilRestart = kRestart * luby(static_cast<std::uint64_t>(++restarts));
            brancher.restarted(restarts);
            // The assumptions stay, unless the clauses are to be looked through, which is done at the root.
            const bool isFull = learnts_.size() > learntsAllowed_ || arena_.size() > kArena;
            backtrack(isFull ? 0 : std::min(level(), static_cast<std::int32_t>(assumptions.size())));
            continue;
        }
        if (levels_.size() < assumptions.size()) {
            // All of them before any is propagated: one round, not one for each.
            while (levels_.size() < assumptions.size()) {
                const Literal assumed = assumptions[levels_.size()];
                if (isFalse(assumed)) {
                    findCore(assumed);
                    return Outcome::Refuted;
                }
                if (isTrue(assumed)) {
                    openLevel(); // an empty level, so that levels and assumptions keep step
                } else {
                    decide(assumed);
                }
            }
            continue;
        }
        std::optional<Literal> choice = brancher.first(*this);
        while (!choice && !heap_.empty()) {
            const std::int32_t n = heap_.pop();
            popped_.emplace_back(level(), n);
            const Node& node = nodes_[static_cast<std::size_t>(n)];
            const Literal literal = atLeast(node.variable, node.value);
            const Literal present = present_[at(node.variable)];
            if (isTrue(literal) || isFalse(literal) || isFalse(present)) continue;
            choice = hint_[at(node.variable)] >= node.value ? literal : ~literal;
        }
        if (!choice) choice = brancher.last(*this);
        if (!choice) return Outcome::Satisfied;
        decide(*choice);
    }
    backtrack(0);
    return Outcome::Unknown;
}

} // namespace piewright::learn
