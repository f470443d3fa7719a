// Time-table propagation of a cumulative resource on the learning kernel: what surely runs at a time leaves the rest of
// the capacity to the others. Explained pointwise (Schutt, Feydy, Stuckey, Wallace 2011, Constraints 16): one time, and
// of each activity no more than that it runs then.
#pragma once

#include "learn/solver.h"
#include "schedule/problem.h"

#include <span>
#include <vector>

namespace piewright::schedule {

/// A task on a cumulative resource; its start may be an optional variable.
struct Task {
    learn::Variable start{};
    Tick duration = 0;                     ///< at least 1
    int demand = 0;                        ///< at least 1
    learn::Literal present = learn::kTrue; ///< whether it is done at all
};

/// Capacity left by reservations, as steps: from each `from` on (the first at or before all else) there is `capacity`.
struct Step {
    Tick from = 0;
    int capacity = 0;
};

/// Capacity over time; never below 0.
[[nodiscard]] std::vector<Step> stepsOf(const Cumulative& cumulative);
[[nodiscard]] int capacityAt(std::span<const Step> steps, Tick time);

class Timetable final : public learn::Propagator {
  public:
    /// Propagates only where `active` holds.
    Timetable(std::vector<Task> tasks, std::vector<Step> capacity, learn::Literal active);

    /// Adds it to the solver and subscribes it.
    static void post(learn::Solver& solver, std::vector<Task> tasks, std::vector<Step> capacity, learn::Literal active);

    bool propagate(learn::Solver& solver) override;
    bool woken(std::int32_t tag) override;
    void explain(const learn::Solver& solver, learn::Literal consequence, std::uint32_t data, std::int32_t position,
                 std::vector<learn::Literal>& premises) override;

  private:
    /// One stretch of the profile.
    struct Stretch {
        Tick from;
        Tick to;
        int used;
        int capacity;
    };
    /// When a task surely runs: from its latest start to its earliest end, if these are in that order.
    struct Part {
        Tick from = 0;
        Tick to = 0;
        bool isThere = false;
    };

    [[nodiscard]] Part partOf(const learn::Solver& solver, std::size_t index) const;
    /// Takes in what has changed; sets the stretch of time in which the profile may have grown.
    void update(const learn::Solver& solver);
    void buildProfile();
    bool overloaded(learn::Solver& solver, const Stretch& stretch);
    bool pushLater(learn::Solver& solver, std::size_t index);
    bool pushEarlier(learn::Solver& solver, std::size_t index);
    /// What of the others runs at `time` for sure, until it takes more than `spare`; false when it does not.
    bool cover(const learn::Solver& solver, std::size_t without, Tick time, int spare, std::int32_t position,
               std::vector<learn::Literal>& premises) const;

    std::vector<Task> tasks_;
    std::vector<Step> capacity_;
    learn::Literal active_;
    std::vector<std::size_t> byVariable_; ///< task of a variable, from the smallest variable on
    std::int32_t firstVariable_ = 0;
    std::int32_t id_ = 0;
    std::vector<Part> parts_;
    /// An end of a part that is there.
    struct Edge {
        Tick time;
        std::uint32_t task;
    };
    void arrange(std::vector<Edge>& edges, Tick Part::* key);
    std::vector<Edge> byFrom_, byTo_;     ///< in order of time, kept from run to run
    std::vector<std::uint32_t> unlisted_; ///< there, and not yet among them
    std::vector<char> isListed_;
    std::vector<unsigned char> isChanged_; ///< since the last run: 1 its lower bound, 2 its upper
    std::vector<std::size_t> changed_;
    std::uint64_t epoch_ = std::numeric_limits<std::uint64_t>::max();
    Tick grownFrom_ = 0;
    Tick grownTo_ = 0;
    std::vector<Stretch> profile_;
    int most_ = 0; ///< largest of used - capacity in the profile
    struct Cover {
        std::int32_t position;
        std::size_t task;
    };
    mutable std::vector<Cover> covers_;
};

} // namespace piewright::schedule
