// A scheduling problem stated to the learning kernel; used by the prover alone.
#pragma once

#include "learn/solver.h"
#include "schedule/compiled_time.h"
#include "schedule/linear.h"
#include "schedule/network.h"
#include "schedule/problem.h"
#include "schedule/prover.h"

#include <map>
#include <string>
#include <vector>

namespace piewright::schedule {

/// One way of doing an activity.
struct Way {
    int mode = 0;
    Tick duration = 0;
    learn::Variable start{}; ///< the activity's own where there is one way; else optional
    learn::Literal present = learn::kTrue;
    /// By the mode's needs: the people who may fill it, and whether each does.
    struct Place {
        WorkerIndex worker{};
        learn::Literal fills;
    };
    std::vector<std::vector<Place>> places;
    Time end; ///< start + duration, but where it pauses
    bool pauses = false;
};

/// An activity. Its variables count where it is present, as those of a way do.
struct Doing {
    Time start, end;
    std::vector<Way> ways;
    learn::Literal present = learn::kTrue;
};

/// One that must be in order with another if both are to be: an occupation of a machine or a person.
struct Occupation {
    std::size_t activity = 0;
    Time start, end;
    learn::Literal present = learn::kTrue;
    FamilyIndex family{};
    Tick duration = 0; ///< the least from start to end
    int amount = 1;
};

struct Compiled {
    /// `open` may be a looser problem than `stated`, where limits are guarded.
    Compiled(const Problem& open, const Problem& stated, const ProverOptions& options);

    learn::Solver solver;
    std::vector<Doing> doings;
    learn::Variable latest{};    ///< at or after every end
    learn::Variable objective{}; ///< at least the cost; `latest` itself where the makespan is all that costs
    bool hasCosts = true;        ///< false: whatever the schedule, the objective is 0
    /// Literals that say an activity comes before another, with the two of them; for hints.
    struct Order {
        std::size_t before = 0;
        std::size_t after = 0;
        learn::Literal holds;
    };
    std::vector<Order> orders;
    std::vector<Order> togethers;      ///< likewise, that two are of one load
    std::vector<learn::Literal> fills; ///< all places of people, to be decided
    /// Assumptions, with the limit each stands for.
    struct Guard {
        learn::Literal holds;
        std::string limit;
    };
    std::vector<Guard> guards;
    bool isPossible = true;

  private:
    /// Cancelled: what is stated then is not all, and no answer may be had of it.
    [[nodiscard]] bool isCutShort() const {
        return options_.cancelled != nullptr && options_.cancelled->load(std::memory_order_relaxed);
    }
    void findWays();
    void addActivities();
    void addWay(std::size_t activity, Way& way);
    void addWindows();
    void addLags();
    void addAlternatives(std::size_t activity);
    void addPeople();
    void keepPresent(std::size_t activity, std::size_t worker, learn::Literal takesPart);
    void addCumulatives();
    void addSkillLevels();
    void addMachines();
    void addLoads(const Machine& machine, const std::vector<Occupation>& occupations, learn::Literal active);
    learn::Literal stand(const Machine& machine, const Occupation& one, const Occupation& other, learn::Literal active,
                         learn::Literal& before, learn::Literal& after);
    void addReservoirs();
    void addPairs();
    void addCosts();
    void addModeCosts();
    void addExtentCost(const ExtentCost& cost);
    void addLoadCost(const LoadCost& cost);
    void addWorkCost(const WorkCost& cost);
    void addHandOver(const HandOver& handOver);
    void addDistance(const Before& before);
    void addObjective();
    /// Adds `cost` where the literal, of a Boolean, holds.
    void addCost(learn::Literal literal, Cost cost);
    /// Adds the curve at x where `present` holds, which x is optional by.
    void addCurve(Time x, Curve curve, learn::Literal present);
    /// One of those whose first start or last end costs something.
    struct Extended {
        Time start, end;
        learn::Literal present;
    };
    [[nodiscard]] std::vector<Extended> extendedBy(const ExtentCost& cost) const;
    learn::Variable firstOf(const std::vector<Extended>& those, learn::Literal present, bool isExact);
    learn::Variable lastOf(const std::vector<Extended>& those, learn::Literal present, bool isExact);
    learn::Variable optionalTime(learn::Literal present);
    [[nodiscard]] learn::Literal takesPart(std::size_t activity, std::size_t worker) const;
    [[nodiscard]] Occupation occupationOf(std::size_t activity, const Way& way, const Use& use) const;
    void findDistances();
    void orderPairs();
    void order(const Occupation& one, const Occupation& other, Tick setup, Tick setupBack, learn::Literal active);
    void keepApart(const Occupation& occupation, Span away, learn::Literal active);
    learn::Literal before(std::size_t one, std::size_t other, const Occupation& first, const Occupation& second,
                          Tick setup);
    learn::Literal guard(const std::string& limit);
    /// All of them hold.
    learn::Literal all(std::vector<learn::Literal> literals);
    /// At least one of them does.
    learn::Literal any(std::vector<learn::Literal> literals);
    /// to - from >= least where both are present and `when` holds.
    void connect(Time from, learn::Literal fromPresent, Time to, learn::Literal toPresent, Tick least,
                 learn::Literal when);
    void clause(std::vector<learn::Literal> literals) {
        isPossible = solver.addClause(std::move(literals)) && isPossible;
    }
    [[nodiscard]] const Mode& modeOf(std::size_t activity, int mode) const {
        return problem_.activities[activity].modes[static_cast<std::size_t>(mode)];
    }
    [[nodiscard]] bool isSingle(std::size_t activity) const { return doings[activity].ways.size() == 1; }
    /// Least distance from start to start; -kNever where there is none.
    [[nodiscard]] Tick distance(std::size_t from, std::size_t to) const {
        return distance_.empty() ? -kNever : distance_[from * doings.size() + to];
    }

    const Problem& window_; ///< whose horizon and windows bound the variables
    const Problem& problem_;
    ProverOptions options_;
    Tick open_ = 0;                       ///< the latest time a variable may take
    std::vector<Tick> distance_;          ///< of mandatory activities only
    std::vector<std::vector<int>> modes_; ///< by activity: those that are possible by themselves
    std::vector<Length> lengths_;         ///< by activity, from start to end, over these
    std::vector<std::vector<WorkerIndex>> skilled_;
    std::vector<std::map<std::size_t, learn::Literal>> busy_; ///< by activity: worker to "takes part"
    std::map<std::vector<learn::Literal>, learn::Literal> alls_;
    std::map<learn::Variable, Cost> weights_; ///< of the objective: weight times variable, added up with
    Cost constant_ = 0;                       ///< this
    std::vector<char> isOrdered_;             ///< pairs that have an order by now, both mandatory
};

} // namespace piewright::schedule
