// A scheduling problem as plain values. The engine knows nothing of what the activities are.
// Time is counted in whole ticks from an origin that the caller chooses; every interval is half-open, [start, end).
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace piewright::schedule {

using Tick = std::int32_t;                                    ///< a point of time or a length of it
constexpr Tick kNever = std::numeric_limits<Tick>::max() / 4; ///< later than any time a problem may name

/// Indices into the problem's vectors, one type each.
enum class ActivityIndex : std::int32_t {};
enum class ResourceIndex : std::int32_t {};
enum class WorkerIndex : std::int32_t {};
enum class SkillIndex : std::int32_t {};
enum class FamilyIndex : std::int32_t {};
template <class Index> constexpr std::size_t at(Index index) { return static_cast<std::size_t>(index); }

struct Span {
    Tick from = 0;
    Tick to = 0;
    auto operator<=>(const Span&) const = default;
};

/// Room for several activities at once, up to `capacity`, less whatever `reserved` takes for a while. An activity of no
/// duration takes no room. Reserved beyond the capacity is no fault: then nobody else has room.
struct Cumulative {
    int capacity = 1;
    struct Reserved {
        Span span;
        int amount = 0;
    };
    std::vector<Reserved> reserved;
};

/// One activity at a time; between two of them lies `setup[from][to]` by their families. `first[f]` is the setup from
/// the machine's state at tick 0 to family f. The setup must fit between the end of one and the start of the next; it
/// may begin before the next activity's other resources are free, and it goes on while the machine is `away` (an oven
/// heats up unattended). Families: indices 0..n-1. Setups obey the triangle inequality: going by a third family is
/// never shorter. `first` and `setup` both empty: no setups, whatever the families. An activity of no duration has its
/// place in the machine's order too, so it never falls inside another one.
struct Machine {
    std::vector<Tick> first;
    std::vector<std::vector<Tick>> setup;
    std::vector<Span> away; ///< times at which no activity can use it
};

struct Resource {
    std::string name;                     ///< for people: told when limits clash
    std::optional<Cumulative> cumulative; ///< exactly one of the two
    std::optional<Machine> machine;
};

/// A person: one thing at a time, inside `present`, with the skills named.
struct Worker {
    std::string name;
    std::vector<SkillIndex> skills;
    std::vector<Span> present; ///< in order, apart from each other
};

struct Use {
    ResourceIndex resource{};
    int amount = 1;       ///< of a cumulative; 1 for a machine
    FamilyIndex family{}; ///< for a machine
};

/// `count` different workers who each have `skill`, for the whole activity. One worker fills one place only.
struct SkillNeed {
    SkillIndex skill{};
    int count = 1;
};

/// One way of doing an activity.
struct Mode {
    Tick duration = 0;
    std::vector<Use> uses;         ///< each resource at most once
    std::vector<SkillNeed> needs;  ///< people to be chosen by the engine; each skill at most once
    std::vector<WorkerIndex> team; ///< people named outright, besides those chosen
};

struct Activity {
    std::string name;          ///< for people
    std::vector<Mode> modes;   ///< at least one; an earlier mode is preferred to a later one of the same start
    Tick release = 0;          ///< starts no earlier
    Tick due = kNever;         ///< ends no later
    std::string releaseReason; ///< for people; empty where the limit needs no telling
    std::string dueReason;
};

enum class Point { Start, End };

/// time(to) - time(from) >= least. A greatest distance is the same the other way round with a negative `least`:
/// "B starts at most 30 after A ends" is Lag{B, Start, A, End, -30}.
struct Lag {
    ActivityIndex from{};
    Point fromPoint = Point::End;
    ActivityIndex to{};
    Point toPoint = Point::Start;
    Tick least = 0;
    std::string reason; ///< for people
};

struct Problem {
    std::vector<Activity> activities;
    std::vector<Lag> lags;
    std::vector<Resource> resources;
    std::vector<Worker> workers;
    std::vector<std::string> skills;   ///< names by SkillIndex
    std::vector<std::string> families; ///< names by FamilyIndex
    Tick horizon = 0;                  ///< every activity ends by then
    std::string horizonReason;         ///< for people; empty where the limit needs no telling
};

/// Where one activity was put.
struct Placed {
    Tick start = 0;
    Tick end = 0;
    int mode = 0;
    /// People by the mode's needs in order (count each), then its team.
    std::vector<WorkerIndex> workers;
    auto operator<=>(const Placed&) const = default;
};

/// One Placed for each activity, in the problem's order.
struct Schedule {
    std::vector<Placed> placed;
    auto operator<=>(const Schedule&) const = default;
};

/// What is wrong with a problem as stated (index out of range, negative duration, a mode that can never fit its
/// resource, setup that breaks the triangle inequality, …), one sentence each; empty when it may be solved.
[[nodiscard]] std::vector<std::string> faultsIn(const Problem& problem);

} // namespace piewright::schedule
