// Problems that are like a project, in a compact form made for building schedules very fast: every activity is done,
// without a pause, in one of its modes, and only the latest end counts.
#pragma once

#include "schedule/problem.h"

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace piewright::schedule {

/// A set of up to 128 people.
struct People {
    std::array<std::uint64_t, 2> bits{};

    [[nodiscard]] bool has(std::size_t person) const { return (bits[person / 64] >> (person % 64) & 1U) != 0; }
    void add(std::size_t person) { bits[person / 64] |= std::uint64_t{1} << (person % 64); }
    void remove(std::size_t person) { bits[person / 64] &= ~(std::uint64_t{1} << (person % 64)); }
    [[nodiscard]] bool isEmpty() const { return (bits[0] | bits[1]) == 0; }
    [[nodiscard]] int count() const;
    /// The first of them; at least one.
    [[nodiscard]] std::size_t first() const;
    friend People operator&(People a, People b) { return {{a.bits[0] & b.bits[0], a.bits[1] & b.bits[1]}}; }
    friend People operator|(People a, People b) { return {{a.bits[0] | b.bits[0], a.bits[1] | b.bits[1]}}; }
    friend People operator-(People a, People b) { return {{a.bits[0] & ~b.bits[0], a.bits[1] & ~b.bits[1]}}; }
    bool operator==(const People&) const = default;
};

/// Four resources share a word, 16 bits each; the top bit of each stays set as long as enough is left.
constexpr std::uint64_t kGuards = 0x8000'8000'8000'8000U;

struct Project {
    struct Demand {
        std::size_t word = 0;
        std::uint64_t amounts = 0;
    };
    struct Way {
        Tick duration = 0;
        std::vector<Demand> demands; ///< none where the duration is 0
        struct Need {
            std::size_t skill = 0;
            int count = 0;
        };
        std::vector<Need> needs;
        People team;
        bool asksPeople = false;
        int mode = 0; ///< in the problem
    };
    /// time(here, toPoint) - time(from, fromPoint) >= least, kept at `here`.
    struct Arc {
        std::size_t from = 0;
        Tick least = 0;
        bool fromEnd = false;
        bool toEnd = false;
    };

    std::size_t size = 0;
    std::vector<std::vector<Way>> ways; ///< by activity
    std::vector<Tick> release;          ///< starts no earlier
    std::vector<Tick> due;              ///< ends no later
    Tick horizon = 0;                   ///< all end by then
    std::vector<std::vector<Arc>> arcs; ///< by activity: what it comes after, besides greatest distances in `matrix`
    bool isCyclic = false;         ///< has greatest lags, windows, or lags that let it start before what it follows
    bool isPlain = false;          ///< one way each, no arc allows an overlap: sorted by start is sorted by arcs
    bool isFlexible = false;       ///< some activity has several ways
    std::vector<std::size_t> rank; ///< by activity: its place in an order of the arcs (acyclic), or of components
    /// Cyclic only (and then with one way each): least start(j) - start(i) at [i * size + j], -kNever where there is
    /// none; and the same with i and j exchanged.
    std::vector<Tick> matrix;
    std::vector<Tick> transposed;
    std::vector<Tick> head; ///< earliest starts by lags alone (shortest durations)
    std::vector<Tick> tail; ///< from the start to the latest end, likewise
    /// room[w][t], with guards, for t < horizon.
    std::vector<std::vector<std::uint64_t>> room;
    std::vector<std::size_t> component; ///< by activity, cyclic only: the same for those that hold each other both ways
    std::vector<People> away;           ///< by tick: people who are not there; empty when nobody is asked for
    std::vector<People> skilled;        ///< by skill
    std::vector<WorkerIndex> who;       ///< by person: the least versatile first
    Tick scale = 1;                     ///< ticks of the problem to one tick here

    [[nodiscard]] bool asksPeople() const { return !away.empty(); }
    [[nodiscard]] Tick distance(std::size_t i, std::size_t j) const { return matrix[i * size + j]; }
    /// start(here) - start(from) >= this.
    [[nodiscard]] static Tick weight(const Arc& arc, Tick fromDuration, Tick duration) {
        return arc.least + (arc.fromEnd ? fromDuration : 0) - (arc.toEnd ? duration : 0);
    }
    [[nodiscard]] const Way& way(std::size_t activity, int index) const {
        return ways[activity][static_cast<std::size_t>(index)];
    }
};

/// The compact form of `problem`, if it is of this kind: only the makespan costs (or nothing does, and the caller wants
/// it); nothing optional, no flows, pauses, stays, implications, loads of several or setups; an activity without
/// duration asks for no machine and nobody; at most 128 people, 64 skills, capacities that matter up to 32767, 65536
/// ticks (after division by the greatest common divisor) and 2000 activities (1000 with greatest lags); several modes
/// only without greatest lags. O(n^3) with greatest lags, else O(size). Nothing also when lags, releases and due times
/// contradict each other.
[[nodiscard]] std::optional<Project> asProject(const Problem& problem);

/// The same project with time running backwards from its horizon: a start there is horizon - end here.
[[nodiscard]] Project mirrored(const Project& project);

/// A schedule of a project.
struct Plan {
    std::vector<Tick> starts;
    std::vector<int> ways;
    std::vector<People> crews; ///< empty when nobody is asked for
    Tick end = kNever;         ///< latest end
};

/// In the problem's own terms. People are matched to the needs they fill.
[[nodiscard]] Schedule asSchedule(const Problem& problem, const Project& project, const Plan& plan);
/// Nothing if the schedule's people or ticks do not fit the compact form.
[[nodiscard]] std::optional<Plan> asPlan(const Problem& problem, const Project& project, const Schedule& schedule);

/// `crew` gets enough people for the way out of `free`: those who were in it before if it may be, then those with low
/// indices. False: not enough. Bipartite matching by augmenting paths over skills (Kuhn 1955).
[[nodiscard]] bool choosePeople(const Project& project, const Project::Way& way, People free, People& crew);
/// The crew in the order of Placed::workers; empty when it is not enough.
[[nodiscard]] std::vector<WorkerIndex> inPlaces(const Project& project, const Project::Way& way, People crew,
                                                const Mode& mode);

} // namespace piewright::schedule
