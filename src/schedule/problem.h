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
using Cost = std::int64_t;                                    ///< in a unit that the caller chooses
constexpr Tick kNever = std::numeric_limits<Tick>::max() / 4; ///< later than any time a problem may name
/// What all costs of a problem may come to at most, each at its worst within the horizon and without its sign, so that
/// sums of two fit 32 bits.
constexpr Cost kMostCost = Cost{1} << 29;

/// Indices into the problem's vectors, one type each.
enum class ActivityIndex : std::int32_t {};
enum class ResourceIndex : std::int32_t {};
enum class WorkerIndex : std::int32_t {};
enum class SkillIndex : std::int32_t {};
enum class FamilyIndex : std::int32_t {};
constexpr int kAbsent = -1; ///< the mode of an activity that is left out
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

/// One load at a time; between two of them lies `setup[from][to]` by their families. `first[f]` is the setup from
/// the machine's state at tick 0 to family f. The setup must fit between the end of one and the start of the next; it
/// may begin before the next activity's other resources are free, and it goes on while the machine is `away` (an oven
/// heats up unattended). Families: indices 0..n-1. Setups obey the triangle inequality: going by a third family is
/// never shorter. `first` and `setup` both empty: no setups, whatever the families. An activity of no duration has its
/// place in the machine's order too, so it never falls inside another one.
///
/// A load is one activity where `together` is 1. Else it may be several: of one family, begun at the same moment (they
/// may end apart), the amounts of those that last adding up to no more than `together`. Any two activities are of one
/// load, or the one ends (and the setup fits) before the other starts.
struct Machine {
    std::vector<Tick> first;
    std::vector<std::vector<Tick>> setup;
    std::vector<Span> away; ///< times at which no activity can use it
    int together = 1;
    /// `firstCost[f]` for the first load, `setupCost[from][to]` for each next one after the load before it; >= 0. Both
    /// empty: nothing. No triangle inequality. Then no activity on the machine is without duration.
    std::vector<Cost> firstCost = {};
    std::vector<std::vector<Cost>> setupCost = {};
};

/// A stock. Its level is `initial` at first and then what has flowed in and out up to and with each moment (all flows
/// of one moment count together). It is never below `least` nor above `most`, and neither is `initial`.
struct Reservoir {
    int initial = 0;
    int least = 0;
    int most = std::numeric_limits<int>::max();
};

struct Resource {
    std::string name;                     ///< for people: told when limits clash
    std::optional<Cumulative> cumulative; ///< exactly one of the three
    std::optional<Machine> machine;
    std::optional<Reservoir> reservoir = {};
};

/// A person: one thing at a time, inside `present`, with the skills named.
struct Worker {
    std::string name;
    std::vector<SkillIndex> skills;
    std::vector<Span> present; ///< in order, apart from each other
};

/// Of a cumulative or a machine, from start to end.
struct Use {
    ResourceIndex resource{};
    int amount = 1;       ///< of a cumulative or of a load; 1 where the machine's `together` is 1
    FamilyIndex family{}; ///< for a machine
};

enum class Point { Start, End };

/// Into (amount > 0) or out of a reservoir, at one moment.
struct Flow {
    ResourceIndex resource{};
    Point point = Point::Start;
    int amount = 0;
};

/// `count` different workers who each have `skill`, for the whole activity. One worker fills one place only.
struct SkillNeed {
    SkillIndex skill{};
    int count = 1;
};

/// One way of doing an activity. It may pause: then the ticks within `pauses` do not count towards its duration, it
/// ends as soon as `duration` other ticks have passed, and it does not start within a pause. While it pauses its
/// resources and people stay tied to it (a machine must not be away), but people need not be present. Without pauses an
/// activity is never interrupted.
struct Mode {
    Tick duration = 0;
    std::vector<Use> uses;         ///< each resource at most once
    std::vector<SkillNeed> needs;  ///< people to be chosen by the engine; each skill at most once
    std::vector<WorkerIndex> team; ///< people named outright, besides those chosen
    std::vector<Flow> flows = {};
    std::vector<Span> pauses = {}; ///< in order, apart from each other; duration above 0 only
    Cost cost = 0;                 ///< of doing it this way
};

struct Activity {
    std::string name;          ///< for people
    std::vector<Mode> modes;   ///< at least one; an earlier mode is preferred to a later one of the same start
    Tick release = 0;          ///< starts no earlier
    Tick due = kNever;         ///< ends no later
    std::string releaseReason; ///< for people; empty where the limit needs no telling
    std::string dueReason;
    bool isOptional =
        false;           ///< may be left out: it then uses nothing, and no lag or cost but `absentCost` speaks of it
    Cost absentCost = 0; ///< of leaving it out
};

/// time(to) - time(from) >= least, where both are done. A greatest distance is the same the other way round with a
/// negative `least`: "B starts at most 30 after A ends" is Lag{B, Start, A, End, -30}.
struct Lag {
    ActivityIndex from{};
    Point fromPoint = Point::End;
    ActivityIndex to{};
    Point toPoint = Point::Start;
    Tick least = 0;
    std::string reason; ///< for people
};

/// Everyone who takes part in `to` takes part in `from` as well, where both are done.
struct Stay {
    ActivityIndex from{};
    ActivityIndex to{};
    std::string reason; ///< for people
};

/// Where `given` is done, `also` is done.
struct Implication {
    ActivityIndex given{};
    ActivityIndex also{};
    std::string reason; ///< for people
};

/// Piecewise linear: at t it is value + perTick * (t - from) of the last piece that begins at or before t, or of the
/// first piece for all t before it. Jumps are allowed. At least one piece, `from` ascending.
struct Curve {
    struct Piece {
        Tick from = 0;
        Cost value = 0;
        Cost perTick = 0;
    };
    std::vector<Piece> pieces;
};

/// Of when an activity starts or ends; nothing where it is left out. (A preferred window is a curve that is 0 inside.)
struct TimeCost {
    ActivityIndex activity{};
    Point point = Point::Start;
    Curve curve;
};

/// Of the first start, the last end or the ticks between them, over all activities, or those whose mode names the
/// resource in a use or a flow, or those in which the worker takes part. Nothing where there are none. (The makespan is
/// Last over all, one per tick.)
struct ExtentCost {
    enum class Of { First, Last, Length };
    Of of = Of::Last;
    std::optional<ResourceIndex> resource; ///< at most one of the two
    std::optional<WorkerIndex> worker;
    Curve curve;
};

/// Of a cumulative resource's use over time: for each tick of `span`, `perTick` for each unit used beyond `above` (what
/// is reserved does not count). perTick >= 0.
struct LoadCost {
    ResourceIndex resource{};
    Span span;
    int above = 0;
    Cost perTick = 0;
};

/// Of the ticks a worker works in all, pauses not counted (overtime); of 0 for one who does nothing.
struct WorkCost {
    WorkerIndex worker{};
    Curve curve;
};

/// For each person in `to` who did not take part in `from`, where both are done.
struct HandOver {
    ActivityIndex from{};
    ActivityIndex to{};
    Cost cost = 0;
};

/// Distance from a previous plan: `perTick` for each tick the start has moved either way, `otherMode` once for another
/// mode, `perPerson` for each one who takes part now and did not. Where it is done only now or was done only then:
/// `otherMode` alone.
struct Before {
    ActivityIndex activity{};
    Tick start = 0;
    int mode = 0; ///< or kAbsent
    std::vector<WorkerIndex> workers;
    Cost perTick = 0;
    Cost otherMode = 0;
    Cost perPerson = 0;
};

/// What is to be made least: the sum of all these, with the costs of modes, absences and setups. All are >= 0 except
/// those of curves, modes and absences, which may be gains. See kMostCost.
struct Costs {
    std::vector<TimeCost> times;
    std::vector<ExtentCost> extents;
    std::vector<LoadCost> loads;
    std::vector<WorkCost> work;
    std::vector<HandOver> handOvers;
    std::vector<Before> before;
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
    std::vector<Stay> stays = {};
    std::vector<Implication> implications = {};
    Costs costs = {}; ///< all empty, and no cost anywhere else: any schedule will do
};

/// A problem whose only cost is the latest end.
[[nodiscard]] Costs makespan();

/// Where one activity was put. Left out: mode kAbsent, start and end 0, nobody.
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
