// A scheduling problem stated to the learning kernel; used by the prover alone.
#pragma once

#include "learn/solver.h"
#include "schedule/model.h"
#include "schedule/problem.h"
#include "schedule/prover.h"

#include <string>
#include <vector>

namespace piewright::schedule {

/// A point in time: a variable and a constant.
struct Time {
    learn::Variable variable{};
    Tick offset = 0;
};
inline learn::Literal atLeast(Time time, Tick tick) { return learn::atLeast(time.variable, tick - time.offset); }
inline learn::Literal atMost(Time time, Tick tick) { return learn::atMost(time.variable, tick - time.offset); }

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
};

struct Doing {
    Time start, end;
    std::vector<Way> ways;
};

/// One that must be in order with another if both are to be: an occupation of a machine or a person.
struct Occupation {
    std::size_t activity = 0;
    Time start, end;
    learn::Literal present = learn::kTrue;
    FamilyIndex family{};
};

struct Compiled {
    /// `model` may be of a looser problem than `stated`, where limits are guarded.
    Compiled(const Model& model, const Problem& stated, const ProverOptions& options);

    learn::Solver solver;
    std::vector<Doing> doings;
    learn::Variable latest{}; ///< at or after every end
    /// Literals that say an activity comes before another, with the two of them; for hints.
    struct Order {
        std::size_t before = 0;
        std::size_t after = 0;
        learn::Literal holds;
    };
    std::vector<Order> orders;
    std::vector<learn::Literal> fills; ///< all places of people, to be decided
    /// Assumptions, with the limit each stands for.
    struct Guard {
        learn::Literal holds;
        std::string limit;
    };
    std::vector<Guard> guards;
    bool isPossible = true;

  private:
    void addActivities();
    void addWindows();
    void addLags();
    void addAlternatives(std::size_t activity);
    void addPeople();
    void addCumulatives();
    void addSkillLevels();
    void addMachines();
    void findDistances();
    void orderPairs();
    void order(const Occupation& one, const Occupation& other, Tick setup, Tick setupBack, learn::Literal active);
    void keepApart(const Occupation& occupation, Span away, learn::Literal active);
    learn::Literal before(std::size_t one, std::size_t other, const Occupation& first, const Occupation& second,
                          Tick setup);
    learn::Literal guard(const std::string& limit);
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

    const Model& model_;
    const Problem& problem_;
    ProverOptions options_;
    Tick open_ = 0; ///< the latest time a variable may take
    std::vector<Tick> distance_;
    std::vector<char> isOrdered_; ///< pairs that have an order by now, both mandatory
};

} // namespace piewright::schedule
