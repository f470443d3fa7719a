// Statement and propagation; see analyse.cpp, search.cpp and database.cpp for the rest of the class.
#include "learn/solver.h"

#include <algorithm>
#include <cassert>

namespace piewright::learn {

bool Propagator::woken(std::int32_t /*tag*/) { return true; }

void Propagator::explain(const Solver& /*solver*/, Literal /*consequence*/, std::uint32_t /*data*/,
                         std::int32_t /*position*/, std::vector<Literal>& /*premises*/) {}

Solver::Solver() { newVariable(0, 0); }
Solver::~Solver() = default;

Variable Solver::newVariable(Value least, Value most) {
    assert(atRoot() && least <= most);
    const auto x = static_cast<Variable>(hint_.size());
    for (const Value value : {least, -most}) {
        bound_.push_back(value);
        root_.push_back(value);
        latest_.push_back(-1);
        out_.emplace_back(&lasting_);
        switched_.emplace_back(&lasting_);
        isToSwitch_.push_back(0);
        live_.push_back(0);
        gated_.emplace_back(&lasting_);
        wakes_.emplace_back(&lasting_);
        strongest_.push_back(std::numeric_limits<Value>::min());
    }
    present_.push_back(kTrue);
    hint_.push_back(least);
    keys_.emplace_back(&lasting_);
    return x;
}

Literal Solver::newBoolean() {
    const Literal literal = atLeast(newVariable(0, 1), 1);
    nodeFor(literal);
    return literal;
}

void Solver::makeOptional(Variable x, Literal present) { present_[at(x)] = present; }

bool Solver::addClause(std::vector<Literal> literals) {
    backtrack(0);
    // The weakest of each half, nothing that is false for good.
    std::sort(literals.begin(), literals.end());
    std::vector<Literal> kept;
    for (const Literal literal : literals) {
        if (isTrueAtRoot(literal)) return possible_;
        if (isTrueAtRoot(~literal)) continue;
        if (!kept.empty() && kept.back().half == literal.half) continue; // sorted: the one kept is weaker
        kept.push_back(literal);
    }
    for (std::size_t i = 0; i + 1 < kept.size(); ++i) {
        // x >= a or x <= b with b >= a - 1 always holds.
        if (kept[i].half / 2 == kept[i + 1].half / 2 && kept[i].bound + kept[i + 1].bound <= 1) {
            return possible_;
        }
    }
    if (kept.empty()) return possible_ = false;
    if (kept.size() == 1) {
        possible_ = possible_ && set(kept[0], {ByEager, 0});
        return possible_;
    }
    const ClauseRef clause = store(kept, 0);
    stated_.push_back(clause);
    attach(clause);
    return possible_;
}

void Solver::addArc(Half from, Half to, Value least, Literal when) {
    backtrack(0);
    if (isTrueAtRoot(~when)) return;
    const auto arc = static_cast<std::uint32_t>(arcs_.size());
    arcs_.push_back({from, to, least, isTrueAtRoot(when) ? kTrue : when});
    const Out out{to, least, arcs_.back().when, arc};
    if (out.when == kTrue) {
        out_[at(from)].push_back(out);
    } else {
        std::pmr::vector<Out>& outs = switched_[at(from)];
        outs.push_back(out);
        std::swap(outs.back(), outs[live_[at(from)]++]);
        gated_[at(when.half)].push_back(arc);
    }
    if (possible_) possible_ = runArc(out, bound_[at(from)]);
}

void Solver::dropArcs(std::size_t count) {
    backtrack(0);
    std::vector<Half> halves, gates;
    for (std::size_t arc = count; arc < arcs_.size(); ++arc) {
        halves.push_back(arcs_[arc].from);
        gates.push_back(arcs_[arc].when.half);
    }
    for (std::vector<Half>* all : {&halves, &gates}) {
        std::sort(all->begin(), all->end());
        all->erase(std::unique(all->begin(), all->end()), all->end());
    }
    for (const Half half : halves) {
        std::pmr::vector<Out>& outs = switched_[at(half)];
        const auto live = outs.begin() + static_cast<std::ptrdiff_t>(live_[at(half)]);
        live_[at(half)] -= static_cast<std::uint32_t>(
            std::count_if(outs.begin(), live, [&](const Out& out) { return out.arc >= count; }));
        for (std::pmr::vector<Out>* all : {&out_[at(half)], &outs}) {
            std::erase_if(*all, [&](const Out& out) { return out.arc >= count; });
        }
    }
    for (const Half half : gates) std::erase_if(gated_[at(half)], [&](std::uint32_t arc) { return arc >= count; });
    arcs_.resize(count);
}

void Solver::addDifference(Variable from, Variable to, Value least, Literal when) {
    addArc(plus(from), plus(to), least, when);
    addArc(minus(to), minus(from), least, when);
}

std::int32_t Solver::addPropagator(std::unique_ptr<Propagator> propagator, int priority) {
    posted_.push_back({std::move(propagator), priority, true});
    const auto id = static_cast<std::int32_t>(posted_.size()) - 1;
    queue_[priority].push_back(id);
    return id;
}

void Solver::watch(Half half, std::int32_t propagator, std::int32_t tag) {
    wakes_[at(half)].push_back({propagator, tag});
}

Value Solver::boundAt(Half half, std::int32_t position) const {
    Value value = bound_[at(half)];
    for (std::int32_t e = latest_[at(half)]; e >= position;) {
        const Entry& entry = trail_[static_cast<std::size_t>(e)];
        value = entry.from;
        e = entry.previous;
    }
    return value;
}

std::int32_t Solver::positionOf(Literal literal) const {
    if (isTrueAtRoot(literal)) return -1;
    std::int32_t e = latest_[at(literal.half)];
    while (trail_[static_cast<std::size_t>(e)].from >= literal.bound) e = trail_[static_cast<std::size_t>(e)].previous;
    return e;
}

bool Solver::infer(Literal literal, std::int32_t propagator, std::uint32_t data) {
    return set(literal, {propagator, data});
}

bool Solver::infer(Literal literal, std::span<const Literal> premises) {
    if (isTrue(literal)) return true;
    const auto start = static_cast<std::uint32_t>(eager_.size());
    eager_.push_back({static_cast<Half>(premises.size()), 0});
    eager_.insert(eager_.end(), premises.begin(), premises.end());
    return set(literal, {ByEager, start});
}

bool Solver::fail(std::span<const Literal> premises) {
    conflict_.assign(premises.begin(), premises.end());
    if (witness_ != nullptr) witness_(witnessContext_, conflict_, {-1, 0});
    return false;
}

bool Solver::set(Literal literal, Reason reason) {
    if (isTrue(literal)) return true;
    if (isFalse(literal)) return clash(literal, reason);
    push(literal, reason);
    return true;
}

void Solver::push(Literal literal, Reason reason) {
    Value& bound = bound_[at(literal.half)];
    std::int32_t& latest = latest_[at(literal.half)];
    trail_.push_back({literal.half, bound, literal.bound, latest, reason, level()});
    bound = literal.bound;
    latest = static_cast<std::int32_t>(trail_.size()) - 1;
}

/// The bounds of a variable cross. Only as much is asked of the reason as crossing takes.
bool Solver::clash(Literal literal, Reason reason) {
    const Literal opposite{literal.half ^ 1, bound_[at(literal.half ^ 1)]};
    const Literal needed = ~opposite;
    const Literal present = present_[at(variableOf(literal.half))];
    if (present != kTrue && reason.who != ByClause && isFalse(present)) return true; // what is absent has no bounds
    if (atRoot()) {
        if (present != kTrue && reason.who != ByClause && !isTrue(present)) {
            push(~present, {ByEager, 0});
            return true;
        }
        conflict_.clear();
        return false;
    }
    std::vector<Literal> premises;
    explain(needed, reason, position(), premises);
    premises.push_back(opposite);
    if (present == kTrue || reason.who == ByClause) return fail(premises);
    if (isTrue(present)) {
        premises.push_back(present);
        return fail(premises);
    }
    return infer(~present, premises);
}

void Solver::clearQueue() {
    for (int priority = 0; priority < 4; ++priority) {
        for (std::size_t i = queueHead_[priority]; i < queue_[priority].size(); ++i) {
            posted_[static_cast<std::size_t>(queue_[priority][i])].isQueued = false;
        }
        queue_[priority].clear();
        queueHead_[priority] = 0;
    }
    for (const Half half : toSwitch_) isToSwitch_[at(half)] = 0;
    toSwitch_.clear();
}

bool Solver::propagate() {
    for (;;) {
        while (head_ < trail_.size()) {
            const Entry entry = trail_[head_++];
            ++counts_.work;
            if (!propagateClauses(entry) || !propagateArcs(entry.half)) {
                clearQueue();
                return false;
            }
            for (const Wake& wake : wakes_[at(entry.half)]) {
                Posted& posted = posted_[static_cast<std::size_t>(wake.propagator)];
                if (posted.propagator->woken(wake.tag) && !posted.isQueued) {
                    posted.isQueued = true;
                    queue_[posted.priority].push_back(wake.propagator);
                }
            }
        }
        if (!toSwitch_.empty()) {
            if (!propagateSwitched()) {
                clearQueue();
                return false;
            }
            continue;
        }
        int priority = 0;
        while (priority < 4 && queueHead_[priority] == queue_[priority].size()) {
            queue_[priority].clear();
            queueHead_[priority] = 0;
            ++priority;
        }
        if (priority == 4) return true;
        Posted& posted = posted_[static_cast<std::size_t>(queue_[priority][queueHead_[priority]++])];
        posted.isQueued = false;
        if (!posted.propagator->propagate(*this)) {
            clearQueue();
            return false;
        }
    }
}

bool Solver::propagateClauses(const Entry& entry) {
    // Nodes whose truth this step decides: values in (low, high].
    const bool isLower = (entry.half & 1) == 0;
    const Value low = isLower ? entry.from : -entry.to;
    const Value high = isLower ? entry.to : -entry.from;
    const std::pmr::vector<Key>& keys = keys_[at(variableOf(entry.half))];
    auto key = keys.begin();
    if (keys.size() > 1) {
        key = std::upper_bound(keys.begin(), keys.end(), low,
                               [](Value value, const Key& one) { return value < one.value; });
    }
    for (; key != keys.end() && key->value <= high; ++key) {
        if (key->value > low && !visit(key->node, isLower ? 1 : 0)) return false;
    }
    return true;
}

bool Solver::visit(std::int32_t index, std::size_t side) {
    Node& node = nodes_[static_cast<std::size_t>(index)];
    std::vector<Watcher>& watchers = node.watchers[side];
    const Literal bound = atLeast(node.variable, node.value);
    const Literal fallen = side == 0 ? bound : ~bound;
    std::size_t kept = 0;
    for (std::size_t i = 0; i < watchers.size(); ++i) {
        const Watcher watcher = watchers[i];
        if (isTrue(watcher.blocker)) {
            watchers[kept++] = watcher;
            continue;
        }
        ++counts_.work;
        const ClauseRef clause = watcher.clause;
        if (literalOf(clause, 0) == fallen) {
            swapLiterals(clause, 0, 1);
        }
        const Literal first = literalOf(clause, 0);
        if (isTrue(first)) {
            watchers[kept++] = {clause, first};
            continue;
        }
        const std::int32_t size = sizeOf(clause);
        std::int32_t k = 2;
        while (k < size && isFalse(literalOf(clause, k))) ++k;
        if (k < size) {
            const Literal other = literalOf(clause, k);
            swapLiterals(clause, 1, k);
            nodes_[static_cast<std::size_t>(nodeOf(clause, 1))].watchers[sideOf(other)].push_back({clause, first});
            continue;
        }
        watchers[kept++] = {clause, first};
        if (isFalse(first)) {
            conflict_.clear();
            for (k = 0; k < size; ++k) conflict_.push_back(~literalOf(clause, k));
            while (++i < watchers.size()) watchers[kept++] = watchers[i];
            watchers.resize(kept);
            return false;
        }
        arena_[clause + 2] = 1; // of use
        push(first, {ByClause, clause});
    }
    watchers.resize(kept);
    return true;
}

bool Solver::propagateArcs(Half half) {
    const Value from = bound_[at(half)];
    for (const Out& out : out_[at(half)]) {
        if (!runArc(out, from)) return false;
    }
    for (const std::uint32_t arc : gated_[at(half)]) {
        if (isTrue(arcs_[arc].when) &&
            !set({arcs_[arc].to, bound_[at(arcs_[arc].from)] + arcs_[arc].least}, {ByArc, arc})) {
            return false;
        }
    }
    if (isToSwitch_[at(half)] == 0 && !switched_[at(half)].empty()) {
        isToSwitch_[at(half)] = 1;
        toSwitch_.push_back(half);
    }
    return true;
}

bool Solver::propagateSwitched() {
    // What has grown meanwhile waits for the next round.
    switching_.swap(toSwitch_);
    for (const Half half : switching_) isToSwitch_[at(half)] = 0;
    bool isKept = true;
    for (std::size_t h = 0; h < switching_.size() && isKept; ++h) {
        const Half half = switching_[h];
        const Value from = bound_[at(half)];
        const Value most = -bound_[at(half ^ 1)];
        std::pmr::vector<Out>& outs = switched_[at(half)];
        std::uint32_t& live = live_[at(half)];
        counts_.work += live / 16;
        for (std::uint32_t i = 0; i < live && isKept;) {
            const Out& out = outs[i];
            const Value reached = bound_[at(out.to)];
            // Put aside, until something is undone, what is kept whatever happens or does not count.
            if (reached >= most + out.least || isFalse(out.when)) {
                std::swap(outs[i], outs[--live]);
                idled_.push_back(half);
                continue;
            }
            if (reached < from + out.least) isKept = runArc(out, from);
            ++i;
        }
    }
    switching_.clear();
    return isKept;
}

void Solver::tidyArcs() {
    const auto isIdle = [&](Half from, const Out& out) {
        return isTrueAtRoot(~out.when) || root_[at(out.to)] >= -root_[at(from ^ 1)] + out.least;
    };
    for (std::size_t half = 0; half < switched_.size(); ++half) {
        const auto from = static_cast<Half>(half);
        std::erase_if(gated_[half], [&](std::uint32_t arc) {
            return isTrueAtRoot(arcs_[arc].when) ||
                   isIdle(arcs_[arc].from, {arcs_[arc].to, arcs_[arc].least, arcs_[arc].when, arc});
        });
        std::erase_if(switched_[half], [&](const Out& out) {
            const bool isOn = isTrueAtRoot(out.when);
            if (isOn && !isIdle(from, out)) out_[half].push_back({out.to, out.least, kTrue, out.arc});
            return isOn || isIdle(from, out);
        });
        live_[half] = static_cast<std::uint32_t>(switched_[half].size());
    }
    rootWhenTidied_ = rooted_;
}

bool Solver::runArc(const Out& out, Value from) {
    const Literal consequence{out.to, from + out.least};
    if (isTrue(consequence)) return true;
    if (isTrue(out.when)) return set(consequence, {ByArc, out.arc});
    return !isFalse(consequence) || set(~out.when, {ByArcOff, out.arc});
}

void Solver::openLevel() {
    levels_.push_back(position());
    eagerLevels_.push_back(eager_.size());
    heads_.push_back(head_);
    idledLevels_.push_back(idled_.size());
}

void Solver::decide(Literal literal) {
    openLevel();
    ++counts_.decisions;
    push(literal, {ByDecision, 0});
}

void Solver::backtrack(std::int32_t target) {
    if (level() <= target) return;
    ++epoch_;
    const std::int32_t keep = levels_[static_cast<std::size_t>(target)];
    for (std::size_t i = trail_.size(); i > static_cast<std::size_t>(keep); --i) {
        const Entry& entry = trail_[i - 1];
        bound_[at(entry.half)] = entry.from;
        latest_[at(entry.half)] = entry.previous;
    }
    trail_.resize(static_cast<std::size_t>(keep));
    head_ = heads_[static_cast<std::size_t>(target)];
    eager_.resize(eagerLevels_[static_cast<std::size_t>(target)]);
    levels_.resize(static_cast<std::size_t>(target));
    eagerLevels_.resize(static_cast<std::size_t>(target));
    heads_.resize(static_cast<std::size_t>(target));
    while (idled_.size() > idledLevels_[static_cast<std::size_t>(target)]) {
        ++live_[at(idled_.back())];
        idled_.pop_back();
    }
    idledLevels_.resize(static_cast<std::size_t>(target));
    while (!popped_.empty() && popped_.back().first > target) {
        heap_.insert(popped_.back().second);
        popped_.pop_back();
    }
}

bool Solver::settle() {
    backtrack(0);
    possible_ = possible_ && propagate();
    if (possible_) commitRoot();
    return possible_;
}

/// What holds at the root needs no reasons any more.
void Solver::commitRoot() {
    rooted_ += trail_.size();
    idled_.clear(); // put aside for good
    for (const Entry& entry : trail_) {
        root_[at(entry.half)] = bound_[at(entry.half)];
        latest_[at(entry.half)] = -1;
    }
    trail_.clear();
    head_ = 0;
    eager_.clear();
}

} // namespace piewright::learn
