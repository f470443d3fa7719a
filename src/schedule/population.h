// A population of lists that are crossed, changed and justified.
#pragma once

#include "schedule/dice.h"
#include "schedule/generation.h"

#include <cstdint>
#include <vector>

namespace piewright::schedule {

/// Genetic search after Valls, Ballestin, Quintanilla 2008 (EJOR 185) and Debels, Vanhoucke 2007 (Operations Research
/// 55): each schedule is justified to the right and to the left again, peaks of resource use are handed on as they are.
class Population {
  public:
    /// Both must outlive it; `back` is mirrored(project).
    Population(const Project& project, const Project& back, std::uint64_t seed);

    /// Builds one schedule more, with its justification. True: best() is better than before.
    bool step();
    /// A schedule from elsewhere that may be better.
    void take(const Plan& plan);
    /// Its end is kNever while there is none.
    [[nodiscard]] const Plan& best() const { return best_; }
    [[nodiscard]] std::size_t tried() const { return tried_; } ///< calls of step()
    [[nodiscard]] std::uint64_t steps() const { return forward_.steps() + backward_.steps(); }

  private:
    struct One {
        Plan plan;
        std::uint64_t print = 0; ///< of the starts
        std::uint64_t age = 0;
        std::int64_t score = 0; ///< of the same end, the one that does more early is better
        [[nodiscard]] bool isBetterThan(const One& other) const {
            return plan.end != other.plan.end ? plan.end < other.plan.end : score < other.score;
        }
    };

    bool rule(std::size_t number);
    bool sample();
    bool cross();
    bool ruin(const One& from);
    void twoPoints(const One& mother, const One& father);
    void peak(const One& mother, const One& father);
    void inherit(std::size_t activity, const One& from);
    [[nodiscard]] People anyone();
    bool move(const One& from);
    void mutate();
    /// Builds `child_` from its keys and justifies it. False: no schedule.
    bool build();
    bool buildBackwards();
    bool settle();
    /// The schedule of `turned_`, which is mirrored, justified to the left.
    bool goForward(Plan& plan);
    void assess();
    void squeak(std::size_t activity);
    [[nodiscard]] std::vector<double> keysOf(std::size_t rule) const;
    void keysFromTimes(const One& one);
    const One& choose();
    [[nodiscard]] bool keep();
    void restart();

    const Project& project_;
    const Project& back_;
    Generator forward_, backward_;
    Dice dice_;
    std::vector<One> members_;
    std::size_t capacity_ = 0;
    One child_;
    std::vector<Tick> keys_;
    Plan turned_, again_;
    List list_;
    std::vector<std::int64_t> load_; ///< of an activity on all resources, per tick, in thousandths of each
    std::vector<Tick> weight_;       ///< grows with each failure (squeaky wheel; Joslin, Clements 1999, JAIR 10)
    Tick longest_ = 1;               ///< path by lags alone
    Plan best_;
    std::size_t tried_ = 0;
    std::size_t stale_ = 0;
    std::vector<std::int64_t> use_;
};

} // namespace piewright::schedule
