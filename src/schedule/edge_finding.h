// Time-table edge finding of a cumulative resource (Vilím 2011, CPAIOR): between two times there is only so much
// capacity; what must surely run there, with its free parts, leaves the rest to the others. Explained by energy
// (Schutt, Feydy, Stuckey 2013, CPAIOR): of each task only that it spends so many ticks there, as few as still do.
#pragma once

#include "learn/solver.h"
#include "schedule/timetable.h"

#include <cstdint>
#include <vector>

namespace piewright::schedule {

class EdgeFinding final : public learn::Propagator {
  public:
    EdgeFinding(std::vector<Task> tasks, std::vector<Step> capacity, learn::Literal active);

    /// Adds it to the solver and subscribes it. Propagates only where `active` holds.
    static void post(learn::Solver& solver, std::vector<Task> tasks, std::vector<Step> capacity, learn::Literal active);

    /// O(n^2), n tasks not yet fixed; run the less often the less it finds, as it is redundant beside a Timetable.
    bool propagate(learn::Solver& solver) override;

  private:
    /// A task that is not fixed, in one direction of time.
    struct Free {
        Tick earliest, latest; ///< start
        Tick duration;
        std::int64_t demand;
        std::size_t task;
        bool isPresent;
    };
    struct Window {
        Tick from, to;
    };
    struct Share {
        std::int32_t position;
        std::size_t task;
        Tick ticks;
    };
    struct Area {
        Tick time;
        std::int64_t left; ///< capacity no compulsory part takes, summed up to here
        std::int64_t rate; ///< and by tick from here on
    };

    void measure(const learn::Solver& solver);
    [[nodiscard]] std::int64_t areaUpTo(Tick time) const;
    [[nodiscard]] std::int64_t capacityIn(Window window) const;
    bool sweep(learn::Solver& solver, bool isMirrored);
    /// Ticks that a task spends in the window whatever its start.
    [[nodiscard]] Tick ticksIn(const learn::Solver& solver, const Task& task, Window window) const;
    bool overfull(learn::Solver& solver, Window window);
    bool push(learn::Solver& solver, std::size_t index, Window window, bool isMirrored);
    /// Premises for "more than `capacity` is used in the window", `own` energy apart.
    bool gather(const learn::Solver& solver, Window window, std::int64_t capacity, std::size_t without);

    std::vector<Task> tasks_;
    std::vector<Step> capacity_;
    learn::Literal active_;
    std::vector<Free> free_, mirrored_;
    std::vector<Tick> ends_;
    struct Event {
        Tick time;
        std::int64_t change;
    };
    std::vector<Event> events_;
    std::vector<Area> areas_;
    std::vector<Share> shares_;
    std::vector<learn::Literal> premises_;
    bool hasFound_ = false;
    std::uint32_t pause_ = 0; ///< runs left out while it finds nothing
    std::uint32_t left_ = 0;
};

} // namespace piewright::schedule
