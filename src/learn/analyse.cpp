// From a dead end to a clause: the first unique implication point (Marques-Silva, Sakallah 1999, IEEE Trans. Computers
// 48), minimised (Sörensson, Biere 2009, SAT).
#include "learn/solver.h"

#include <algorithm>
#include <cassert>

namespace piewright::learn {

namespace {
constexpr Value kUnmarked = std::numeric_limits<Value>::min();
constexpr Value kHealthy = std::numeric_limits<Value>::max();
constexpr double kDecay = 0.95;
constexpr int kDepth = 12; ///< of the search for redundant literals
} // namespace

void Solver::explain(Literal consequence, Reason reason, std::int32_t position, std::vector<Literal>& premises) const {
    premises.clear();
    switch (reason.who) {
    case ByDecision:
        assert(false);
        break;
    case ByClause:
        for (std::int32_t i = 1; i < sizeOf(reason.data); ++i) premises.push_back(~literalOf(reason.data, i));
        break;
    case ByEager: {
        const auto from = eager_.begin() + static_cast<std::ptrdiff_t>(reason.data) + 1;
        premises.assign(from, from + eager_[reason.data].half);
        break;
    }
    case ByArc: {
        const Arc& arc = arcs_[reason.data];
        premises.push_back({arc.from, consequence.bound - arc.least});
        if (arc.when != kTrue) premises.push_back(arc.when);
        break;
    }
    case ByArcOff: {
        // from >= a and to <= a + least - 1 are not both possible, whatever a is.
        const Arc& arc = arcs_[reason.data];
        const Value most = boundAt(arc.to ^ 1, position);
        premises.push_back({arc.from, 1 - arc.least - most});
        premises.push_back({arc.to ^ 1, most});
        break;
    }
    default:
        posted_[static_cast<std::size_t>(reason.who)].propagator->explain(*this, consequence, reason.data, position,
                                                                          premises);
    }
    if (witness_ != nullptr) witness_(witnessContext_, premises, consequence);
}

std::int32_t Solver::conflictLevel() const {
    std::int32_t highest = 0;
    for (const Literal literal : conflict_) {
        const std::int32_t e = positionOf(literal);
        if (e >= 0) highest = std::max(highest, trail_[static_cast<std::size_t>(e)].level);
    }
    return highest;
}

void Solver::mark(Literal literal) {
    assert(isTrue(literal));
    const std::int32_t e = positionOf(literal);
    if (e < 0) return;
    const auto at = static_cast<std::size_t>(e);
    if (need_[at] == kUnmarked) {
        marked_.push_back(e);
        if (trail_[at].level == level()) {
            ++open_;
        } else {
            below_.push_back(e);
        }
    }
    need_[at] = std::max(need_[at], literal.bound);
}

void Solver::bump(Literal literal) {
    const std::int32_t node = nodeIfAny(literal);
    if (node < 0) return;
    heap_.bump(node, increment_);
    if (heap_.activity(node) > 1e100) {
        heap_.rescale(1e-100);
        increment_ *= 1e-100;
    }
}

/// Whether `need` of a trail entry follows from other marked ones.
bool Solver::isRedundant(std::int32_t entry, Value need, int depth) {
    const Entry& one = trail_[static_cast<std::size_t>(entry)];
    if (one.reason.who == ByDecision || depth >= kDepth) return false;
    if (static_cast<std::size_t>(depth) >= scratch_.size()) scratch_.emplace_back();
    explain({one.half, need}, one.reason, entry, scratch_[static_cast<std::size_t>(depth)]);
    for (std::size_t i = 0; i < scratch_[static_cast<std::size_t>(depth)].size(); ++i) {
        const Literal premise = scratch_[static_cast<std::size_t>(depth)][i];
        const std::int32_t e = positionOf(premise);
        if (e < 0) continue;
        const auto at = static_cast<std::size_t>(e);
        if (need_[at] != kUnmarked && need_[at] >= premise.bound) continue;
        const bool mayFollow =
            levelStamp_[static_cast<std::size_t>(trail_[at].level)] == stamp_ && premise.bound < poison_[at];
        if (!mayFollow || !isRedundant(e, premise.bound, depth + 1)) {
            if (poison_[at] == kHealthy) poisoned_.push_back(e);
            poison_[at] = std::min(poison_[at], premise.bound);
            return false;
        }
        if (need_[at] == kUnmarked) {
            marked_.push_back(e);
            need_[at] = premise.bound; // it follows, so it may be used for the others
        }
    }
    return true;
}

void Solver::analyse() {
    need_.resize(std::max(need_.size(), trail_.size()), kUnmarked);
    poison_.resize(std::max(poison_.size(), trail_.size()), kHealthy);
    open_ = 0;
    below_.clear();
    learnt_.clear();
    for (const Literal literal : conflict_) mark(literal);
    if (scratch_.empty()) scratch_.emplace_back();
    std::vector<Literal>& premises = scratch_[0];
    std::int32_t e = position() - 1;
    Literal asserting;
    for (;; --e) {
        const auto at = static_cast<std::size_t>(e);
        if (need_[at] == kUnmarked) continue;
        const Entry& entry = trail_[at];
        const Literal reached{entry.half, need_[at]};
        bump(reached);
        if (--open_ == 0) {
            asserting = reached;
            break;
        }
        explain(reached, entry.reason, e, premises);
        for (const Literal premise : premises) mark(premise);
    }
    learnt_.push_back(~asserting);
    std::sort(below_.begin(), below_.end());
    stamp_++;
    levelStamp_.resize(std::max(levelStamp_.size(), levels_.size() + 1), 0);
    for (const std::int32_t below : below_) {
        levelStamp_[static_cast<std::size_t>(trail_[static_cast<std::size_t>(below)].level)] = stamp_;
    }
    for (const std::int32_t below : below_) {
        const auto at = static_cast<std::size_t>(below);
        bump({trail_[at].half, need_[at]});
    }
    // Latest first: each is tested against earlier ones, which never lean on it. Of one half the strongest bound that
    // stays says the weaker ones too.
    strongest_[at(asserting.half)] = asserting.bound;
    for (std::size_t i = below_.size(); i-- > 0;) {
        const std::int32_t below = below_[i];
        const Entry& entry = trail_[static_cast<std::size_t>(below)];
        const Value need = need_[static_cast<std::size_t>(below)];
        if (strongest_[at(entry.half)] > need || isRedundant(below, need, 0)) continue;
        strongest_[at(entry.half)] = need;
        learnt_.push_back(~Literal{entry.half, need});
    }
    strongest_[at(asserting.half)] = kUnmarked;
    for (const std::int32_t below : below_) strongest_[at(trail_[static_cast<std::size_t>(below)].half)] = kUnmarked;
    for (const std::int32_t marked : marked_) need_[static_cast<std::size_t>(marked)] = kUnmarked;
    for (const std::int32_t poisoned : poisoned_) poison_[static_cast<std::size_t>(poisoned)] = kHealthy;
    marked_.clear();
    poisoned_.clear();
}

bool Solver::learn() {
    ++counts_.conflicts;
    const std::int32_t highest = conflictLevel();
    if (highest == 0) return possible_ = false;
    backtrack(highest);
    analyse();
    std::int32_t target = 0;
    std::int32_t blocks = 1;
    ++stamp_;
    for (std::size_t i = 1; i < learnt_.size(); ++i) {
        const std::int32_t l = trail_[static_cast<std::size_t>(positionOf(~learnt_[i]))].level;
        if (levelStamp_[static_cast<std::size_t>(l)] != stamp_) {
            levelStamp_[static_cast<std::size_t>(l)] = stamp_;
            ++blocks;
        }
        if (l > target) {
            target = l;
            std::swap(learnt_[1], learnt_[i]);
        }
    }
    backtrack(target);
    counts_.learntLiterals += learnt_.size();
    increment_ /= kDecay;
    if (learnt_.size() == 1) {
        const std::int32_t node = nodeFor(learnt_[0]);
        heap_.bump(node, increment_);
        return set(learnt_[0], {ByEager, 0}) || (possible_ = false);
    }
    const ClauseRef clause = store(learnt_, blocks);
    learnts_.push_back(clause);
    attach(clause);
    push(learnt_[0], {ByClause, clause});
    return true;
}

/// The assumptions that `failed`, false, follows the negation of.
void Solver::findCore(Literal failed) {
    core_.assign(1, failed);
    need_.resize(std::max(need_.size(), trail_.size()), kUnmarked);
    std::vector<std::pair<std::int32_t, Value>> todo; // a heap by position
    const auto add = [&](Literal literal) {
        const std::int32_t e = positionOf(literal);
        if (e < 0) return;
        Value& need = need_[static_cast<std::size_t>(e)];
        if (need == kUnmarked) todo.emplace_back(e, 0), std::push_heap(todo.begin(), todo.end());
        need = std::max(need, literal.bound);
    };
    add(~failed);
    std::vector<Literal> premises;
    while (!todo.empty()) {
        std::pop_heap(todo.begin(), todo.end());
        const std::int32_t e = todo.back().first;
        todo.pop_back();
        const Entry& entry = trail_[static_cast<std::size_t>(e)];
        const Value need = need_[static_cast<std::size_t>(e)];
        need_[static_cast<std::size_t>(e)] = kUnmarked;
        if (entry.reason.who == ByDecision) {
            core_.push_back({entry.half, entry.to});
            continue;
        }
        explain({entry.half, need}, entry.reason, e, premises);
        for (const Literal premise : premises) add(premise);
    }
}

} // namespace piewright::learn
