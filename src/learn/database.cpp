// Clauses and the nodes of their bounds.
#include "learn/solver.h"

#include <algorithm>
#include <cassert>
#include <tuple>

namespace piewright::learn {

std::int32_t Solver::nodeIfAny(Literal literal) const {
    const std::pmr::vector<Key>& keys = keys_[at(variableOf(literal.half))];
    const Value value = keyOf(literal);
    if (keys.size() == 1) return keys.front().value == value ? keys.front().node : -1;
    const auto key = std::lower_bound(keys.begin(), keys.end(), value,
                                      [](const Key& one, Value wanted) { return one.value < wanted; });
    return key != keys.end() && key->value == value ? key->node : -1;
}

std::int32_t Solver::nodeFor(Literal literal) {
    const std::int32_t known = nodeIfAny(literal);
    if (known >= 0) return known;
    std::pmr::vector<Key>& keys = keys_[at(variableOf(literal.half))];
    const Value value = keyOf(literal);
    const auto node = static_cast<std::int32_t>(nodes_.size());
    nodes_.emplace_back();
    nodes_.back().variable = variableOf(literal.half);
    nodes_.back().value = value;
    heap_.add(0.0);
    keys.insert(std::lower_bound(keys.begin(), keys.end(), value,
                                 [](const Key& one, Value wanted) { return one.value < wanted; }),
                {value, node});
    return node;
}

Solver::ClauseRef Solver::store(std::span<const Literal> literals, std::int32_t lbd) {
    const auto clause = static_cast<ClauseRef>(arena_.size());
    arena_.push_back(static_cast<std::int32_t>(literals.size()));
    arena_.push_back(lbd);
    arena_.push_back(1);
    for (const Literal literal : literals) {
        arena_.push_back(literal.half);
        arena_.push_back(literal.bound);
        arena_.push_back(-1); // its node, once it is attached
    }
    return clause;
}

void Solver::attach(ClauseRef clause) {
    for (std::int32_t i = 0; i < sizeOf(clause); ++i) {
        const Literal literal = literalOf(clause, i);
        const std::int32_t index = nodeFor(literal);
        arena_[placeOf(clause, i) + 2] = index;
        Node& node = nodes_[static_cast<std::size_t>(index)];
        ++node.uses;
        if (i < 2) node.watchers[sideOf(literal)].push_back({clause, literalOf(clause, 1 - i)});
    }
}

void Solver::collect() {
    assert(atRoot() && head_ == trail_.size());
    commitRoot();
    ++counts_.collections;
    // The better half of what has not just been of use, all of what has and what joins few levels.
    std::vector<ClauseRef> keep, doubtful;
    for (const ClauseRef clause : learnts_) (arena_[clause + 1] <= 2 ? keep : doubtful).push_back(clause);
    std::sort(doubtful.begin(), doubtful.end(), [&](ClauseRef x, ClauseRef y) {
        const auto key = [&](ClauseRef c) { return std::tuple{arena_[c + 2] == 0 ? 1 : 0, arena_[c + 1], c}; };
        return key(x) < key(y);
    });
    doubtful.resize(doubtful.size() / 2);
    keep.insert(keep.end(), doubtful.begin(), doubtful.end());
    std::sort(keep.begin(), keep.end());

    std::vector<std::int32_t> before;
    before.swap(arena_);
    std::vector<Node> nodes;
    nodes.swap(nodes_);
    std::vector<double> activities;
    activities.reserve(nodes.size());
    for (std::size_t n = 0; n < nodes.size(); ++n) activities.push_back(heap_.activity(static_cast<std::int32_t>(n)));
    popped_.clear();
    heap_.clear();
    for (std::pmr::vector<Key>& keys : keys_) keys.clear();

    std::vector<Literal> literals;
    const auto move = [&](std::vector<ClauseRef>& clauses) {
        std::vector<ClauseRef> moved;
        for (const ClauseRef clause : clauses) {
            literals.clear();
            bool isTrueNow = false;
            for (std::int32_t i = 0; i < before[clause]; ++i) {
                const std::size_t at = placeOf(clause, i);
                const Literal literal{before[at], before[at + 1]};
                isTrueNow = isTrueNow || isTrue(literal);
                if (!isFalse(literal)) literals.push_back(literal);
            }
            if (isTrueNow) continue;
            assert(literals.size() >= 2);
            moved.push_back(store(literals, before[clause + 1]));
            arena_[moved.back() + 2] = 0;
            attach(moved.back());
        }
        clauses = std::move(moved);
    };
    move(stated_);
    move(keep);
    learnts_ = std::move(keep);
    for (std::size_t n = 0; n < nodes.size(); ++n) {
        const Literal literal = atLeast(nodes[n].variable, nodes[n].value);
        std::int32_t node = nodeIfAny(literal);
        const bool isBoolean = root_[at(plus(nodes[n].variable))] == 0 && root_[at(minus(nodes[n].variable))] == -1;
        if (node < 0 && isBoolean) node = nodeFor(literal);
        if (node >= 0) heap_.bump(node, activities[n]);
    }
}

std::vector<std::vector<Literal>> Solver::learntClauses() const {
    std::vector<std::vector<Literal>> clauses;
    for (const ClauseRef clause : learnts_) {
        clauses.emplace_back();
        for (std::int32_t i = 0; i < sizeOf(clause); ++i) clauses.back().push_back(literalOf(clause, i));
    }
    return clauses;
}

} // namespace piewright::learn
