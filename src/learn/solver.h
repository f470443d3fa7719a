// Lazy clause generation: propagation over integer bounds, each step with a reason, so that every dead end yields a
// clause that keeps the search from meeting it again (Ohrimenko, Stuckey, Codish 2009, Constraints 14; Feydy, Stuckey
// 2009, CP). The clauses speak of bounds directly; a bound gets a node (watch lists, activity) only once a clause names
// it. Knows nothing of what the variables mean. Same calls, same answers: no clock and no random draw.
#pragma once

#include "learn/brancher.h"
#include "learn/heap.h"
#include "learn/literal.h"
#include "learn/propagator.h"

#include <atomic>
#include <cstdint>
#include <limits>
#include <memory>
#include <memory_resource>
#include <span>
#include <utility>
#include <vector>

namespace piewright::learn {

enum class Outcome {
    Satisfied, ///< the bounds are a solution (until the next call)
    Refuted,   ///< no solution under the assumptions; core() says which of them
    Unknown    ///< work spent, or cancelled
};

struct Limits {
    std::uint64_t work = std::numeric_limits<std::uint64_t>::max();      ///< on top of what was done before
    std::uint64_t conflicts = std::numeric_limits<std::uint64_t>::max(); ///< likewise
    const std::atomic<bool>* cancelled = nullptr; ///< looked at before each decision and conflict
};

struct Counts {
    std::uint64_t work = 0; ///< bounds tightened, clauses visited and what propagators add: the measure of Limits
    std::uint64_t conflicts = 0;
    std::uint64_t decisions = 0;
    std::uint64_t restarts = 0;
    std::uint64_t learntLiterals = 0;
    std::uint64_t collections = 0;
};

class Solver {
  public:
    Solver();
    ~Solver();
    Solver(const Solver&) = delete;
    Solver& operator=(const Solver&) = delete;
    Solver(Solver&&) = delete;
    Solver& operator=(Solver&&) = delete;

    // --- stating; only between calls of solve() ---

    /// least <= most, both within a quarter of the range of Value, so that sums of two never overflow.
    Variable newVariable(Value least, Value most);
    Literal newBoolean();
    /// From now on a bound of `x` only counts where `present` holds: when its bounds cross, `present` becomes false
    /// instead of a dead end. Whoever infers something else from its bounds must name `present` as a premise.
    void makeOptional(Variable x, Literal present);
    /// False when the clause leaves no solution at all.
    bool addClause(std::vector<Literal> literals);
    /// to >= from + least where `when` holds; one side of the difference only.
    void addArc(Half from, Half to, Value least, Literal when = kTrue);
    /// Arcs so far, for dropArcs.
    [[nodiscard]] std::size_t arcs() const { return arcs_.size(); }
    /// Forgets all arcs but the first `count`. What has been learnt from them stays, so their `when` must be false for
    /// good from now on.
    void dropArcs(std::size_t count);
    /// to - from >= least where `when` holds.
    void addDifference(Variable from, Variable to, Value least, Literal when = kTrue);
    /// Smaller `priority` (0..3) is run earlier. The id is for watch() and infer().
    std::int32_t addPropagator(std::unique_ptr<Propagator> propagator, int priority);
    /// Wakes the propagator whenever `half` grows.
    void watch(Half half, std::int32_t propagator, std::int32_t tag);
    /// Which value to try first, where activity decides; the last solution as a rule (solution-based phases).
    void hint(Variable x, Value value) { hint_[at(x)] = value; }

    // --- looking ---

    [[nodiscard]] Value bound(Half half) const { return bound_[at(half)]; }
    [[nodiscard]] Value lower(Variable x) const { return bound_[at(plus(x))]; }
    [[nodiscard]] Value upper(Variable x) const { return -bound_[at(minus(x))]; }
    [[nodiscard]] bool isFixed(Variable x) const { return lower(x) == upper(x); }
    [[nodiscard]] bool isTrue(Literal l) const { return bound_[at(l.half)] >= l.bound; }
    [[nodiscard]] bool isFalse(Literal l) const { return bound_[at(l.half ^ 1)] > -l.bound; }
    /// Bound that holds without any assumption.
    [[nodiscard]] Value rootBound(Half half) const { return root_[at(half)]; }
    [[nodiscard]] bool isTrueAtRoot(Literal l) const { return root_[at(l.half)] >= l.bound; }
    /// Bound just before trail position `position`.
    [[nodiscard]] Value boundAt(Half half, std::int32_t position) const;
    /// Trail position at which the literal, now true, became so; -1 at the root.
    [[nodiscard]] std::int32_t positionOf(Literal literal) const;
    [[nodiscard]] std::int32_t position() const { return static_cast<std::int32_t>(trail_.size()); }
    [[nodiscard]] std::size_t variables() const { return hint_.size(); }
    [[nodiscard]] bool atRoot() const { return levels_.empty(); }
    /// Grows whenever something is undone: until then, bounds only tighten.
    [[nodiscard]] std::uint64_t epoch() const { return epoch_; }
    [[nodiscard]] const Counts& counts() const { return counts_; }
    void addWork(std::uint64_t work) { counts_.work += work; }

    // --- for propagators, while propagating ---

    /// Explained on demand by the propagator's explain() with `data`. False: dead end.
    bool infer(Literal literal, std::int32_t propagator, std::uint32_t data);
    /// Explained by `premises`, all true.
    bool infer(Literal literal, std::span<const Literal> premises);
    /// `premises`, all true, cannot hold together. Returns false.
    bool fail(std::span<const Literal> premises);

    // --- solving ---

    /// Looks for a solution in which all assumptions hold. What was learnt is kept.
    Outcome solve(std::span<const Literal> assumptions, const Limits& limits, Brancher& brancher);
    /// After Refuted: assumptions that cannot hold together; empty when there is no solution at all.
    [[nodiscard]] const std::vector<Literal>& core() const { return core_; }
    /// Undoes every decision. To be called after Satisfied before anything is stated.
    void backtrackToRoot() { backtrack(0); }
    /// Propagates at the root; false when there is no solution at all.
    bool settle();

    /// Every clause learnt so far, for tests: each must follow from what was stated.
    [[nodiscard]] std::vector<std::vector<Literal>> learntClauses() const;
    /// Test hook: called with each reason as (premises, consequence) when it is asked for; consequence is empty (half
    /// -1) for a dead end.
    using Witness = void (*)(void* context, std::span<const Literal> premises, Literal consequence);
    void setWitness(Witness witness, void* context) {
        witness_ = witness;
        witnessContext_ = context;
    }

  private:
    using ClauseRef = std::uint32_t; ///< offset into the arena
    /// Who inferred a bound: a propagator's id, or one of these.
    enum Who : std::int32_t { ByDecision = -1, ByClause = -2, ByEager = -3, ByArc = -4, ByArcOff = -5 };
    struct Reason {
        std::int32_t who = ByDecision;
        std::uint32_t data = 0;
    };
    struct Entry {
        Half half;
        Value from;            ///< bound before
        Value to;              ///< and after
        std::int32_t previous; ///< entry of the same half, -1: none above the root
        Reason reason;
        std::int32_t level;
    };
    struct Watcher {
        ClauseRef clause;
        Literal blocker;
    };
    /// The bound x >= value and its negation.
    struct Node {
        Variable variable{};
        Value value = 0;
        std::vector<Watcher> watchers[2]; ///< of clauses with the bound, with its negation
        std::int32_t uses = 0;            ///< clauses that name it
    };
    struct Key {
        Value value;
        std::int32_t node;
    };
    struct Arc {
        Half from;
        Half to;
        Value least;
        Literal when;
    };
    /// An arc as seen from the half it starts at.
    struct Out {
        Half to;
        Value least;
        Literal when;
        std::uint32_t arc;
    };
    struct Wake {
        std::int32_t propagator;
        std::int32_t tag;
    };
    struct Posted {
        std::unique_ptr<Propagator> propagator;
        int priority;
        bool isQueued;
    };

    // Clauses in the arena: size, LBD (0: stated, never dropped), age mark, then half, bound and node of each literal.
    static constexpr std::size_t kHeader = 3;
    static constexpr std::size_t kWords = 3; ///< of a literal
    [[nodiscard]] static std::size_t placeOf(ClauseRef c, std::int32_t i) {
        return c + kHeader + kWords * static_cast<std::size_t>(i);
    }
    [[nodiscard]] std::int32_t sizeOf(ClauseRef c) const { return arena_[c]; }
    [[nodiscard]] Literal literalOf(ClauseRef c, std::int32_t i) const {
        const std::size_t at = placeOf(c, i);
        return {arena_[at], arena_[at + 1]};
    }
    [[nodiscard]] std::int32_t nodeOf(ClauseRef c, std::int32_t i) const { return arena_[placeOf(c, i) + 2]; }
    void swapLiterals(ClauseRef c, std::int32_t i, std::int32_t j) {
        for (std::size_t word = 0; word < kWords; ++word) {
            std::swap(arena_[placeOf(c, i) + word], arena_[placeOf(c, j) + word]);
        }
    }
    ClauseRef store(std::span<const Literal> literals, std::int32_t lbd);
    void attach(ClauseRef clause);
    void collect(); ///< drops half of the learnt clauses and all nodes no longer of use; at the root

    std::int32_t nodeFor(Literal literal); ///< made if need be
    [[nodiscard]] std::int32_t nodeIfAny(Literal literal) const;
    static std::size_t sideOf(Literal l) { return static_cast<std::size_t>(l.half & 1); }
    static Value keyOf(Literal l) { return (l.half & 1) == 0 ? l.bound : 1 - l.bound; }

    bool set(Literal literal, Reason reason);
    bool clash(Literal literal, Reason reason);
    void push(Literal literal, Reason reason);
    bool propagate();
    bool propagateClauses(const Entry& entry);
    bool visit(std::int32_t index, std::size_t side);
    bool propagateArcs(Half half);
    bool propagateSwitched();
    void tidyArcs(); ///< drops what can never matter again; at the root
    bool runArc(const Out& out, Value from);
    void clearQueue();
    void decide(Literal literal);
    void openLevel();
    void backtrack(std::int32_t target);
    void commitRoot();
    [[nodiscard]] std::int32_t level() const { return static_cast<std::int32_t>(levels_.size()); }

    void explain(Literal consequence, Reason reason, std::int32_t position, std::vector<Literal>& premises) const;
    /// From conflict_ to learnt_ (asserting literal first, then one of the next highest level); false: no solution.
    void analyse();
    void mark(Literal literal);
    void bump(Literal literal);
    [[nodiscard]] bool isRedundant(std::int32_t entry, Value need, int depth);
    [[nodiscard]] std::int32_t conflictLevel() const;
    bool learn(); ///< after a dead end: analyses, backjumps, asserts; false at the root
    void findCore(Literal failed);

    // Small lists by the hundred thousand, which go all at once.
    std::pmr::monotonic_buffer_resource lasting_;

    std::vector<Value> bound_, root_;             ///< by half
    std::vector<std::int32_t> latest_;            ///< by half: its latest trail entry, -1: none
    std::vector<Literal> present_;                ///< by variable
    std::vector<Value> hint_;                     ///< by variable
    std::vector<std::pmr::vector<Key>> keys_;     ///< by variable, ascending
    std::vector<std::pmr::vector<Out>> out_;      ///< by half: arcs that always hold
    std::vector<std::pmr::vector<Out>> switched_; ///< by half: those with a `when`, run once the others are done
    std::vector<std::uint32_t> live_;             ///< by half: how many of these, from the first, still matter here
    std::vector<Half> idled_;                     ///< halves of which one was put aside, in order
    std::vector<std::size_t> idledLevels_;
    std::vector<Half> toSwitch_;   ///< halves that have grown since theirs were run
    std::vector<char> isToSwitch_; ///< by half
    std::vector<Half> switching_;  ///< scratch
    std::uint64_t rooted_ = 0;     ///< bounds tightened at the root
    std::uint64_t rootWhenTidied_ = 0;
    std::vector<std::pmr::vector<std::uint32_t>> gated_; ///< by half: arcs whose `when` it may make true
    std::vector<std::pmr::vector<Wake>> wakes_;          ///< by half
    std::vector<Arc> arcs_;

    std::vector<Entry> trail_;
    std::vector<std::int32_t> levels_; ///< trail size at the start of each level
    std::vector<std::size_t> eagerLevels_;
    std::vector<std::size_t>
        heads_; ///< head_ at the start of each level: assumptions are made before they are propagated
    std::size_t head_ = 0;
    std::vector<Literal> eager_; ///< count (as a literal), then premises
    std::vector<Posted> posted_;
    std::vector<std::int32_t> queue_[4];
    std::size_t queueHead_[4] = {0, 0, 0, 0};

    std::vector<std::int32_t> arena_;
    std::vector<ClauseRef> stated_, learnts_;
    std::vector<Node> nodes_;
    ActivityHeap heap_;
    std::vector<std::pair<std::int32_t, std::int32_t>> popped_; ///< level, node
    double increment_ = 1.0;
    std::size_t learntsAllowed_ = 0;

    std::vector<Literal> conflict_, learnt_, core_;
    std::vector<Value> need_;   ///< by trail entry: what conflict analysis needs of it
    std::vector<Value> poison_; ///< by trail entry: asked for this much or more, it is known not to be redundant
    std::vector<std::int32_t> marked_, poisoned_, below_;
    std::int32_t open_ = 0;
    mutable std::vector<std::vector<Literal>> scratch_;
    std::vector<Value> strongest_; ///< by half, scratch
    std::vector<std::int32_t> levelStamp_;
    std::int32_t stamp_ = 0;

    bool possible_ = true;
    std::uint64_t epoch_ = 0;
    Counts counts_;
    Witness witness_ = nullptr;
    void* witnessContext_ = nullptr;
};

} // namespace piewright::learn
