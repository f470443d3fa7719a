// Tabu search for shops: every activity on at most one machine at a time, on one of several perhaps.
#pragma once

#include "schedule/dice.h"
#include "schedule/generation.h"

#include <cstdint>
#include <vector>

namespace piewright::schedule {

/// Moves one critical activity at a time, to a place on one of its machines at which the longest path by it is
/// shortest: Mastrolilli, Gambardella 2000, Journal of Scheduling 3; tabu search for job shops after Dell'Amico,
/// Trubian 1993, Annals of Operations Research 41. Where it goes round in circles it begins again from a good sequence,
/// shaken.
class Shop {
  public:
    /// Does it take the project? Resources of one at a time that are always there, no people, no greatest lags or
    /// windows, each way on one machine or none, each lag from an end to a start and not below 0.
    [[nodiscard]] static bool takes(const Project& project);

    /// `project` must outlive it; it must take it.
    Shop(const Project& project, std::uint64_t seed);

    /// Goes on from this schedule.
    void take(const Plan& plan);
    /// One move. True: best() is better than before. O(critical activities * n). After take() only.
    bool step();
    [[nodiscard]] const Plan& best() const { return best_; }
    /// Steps of about a microsecond since the beginning.
    [[nodiscard]] std::uint64_t steps() const { return effort_ / kEffortOfStep; }

  private:
    struct Link {
        Item other = 0;
        Tick lag = 0;
    };
    struct State {
        std::vector<std::vector<Item>> lines; ///< by machine: activities in order
        std::vector<int> ways;
    };
    struct Move {
        Item activity = 0;
        int way = 0;
        std::size_t place = 0;
        Tick path = kNever; ///< longest by the activity
        Tick end = kNever;
    };

    void load(const State& state);
    bool measure();
    void findCritical();
    void consider(Item activity, Move& best, Move& anyway);
    void apply(const Move& move);
    void shake();
    void keep();
    void link(std::size_t machine);
    [[nodiscard]] std::size_t machineOf(Item activity, int way) const {
        return machines_[activity][static_cast<std::size_t>(way)];
    }

    static constexpr std::size_t kNone = static_cast<std::size_t>(-1);
    static constexpr Item kNobody = static_cast<Item>(-1);
    const Project& project_;
    Dice dice_;
    std::vector<std::vector<std::size_t>> machines_; ///< by activity and way
    std::vector<std::vector<Link>> before_, after_;
    State now_;
    std::vector<Item> previous_, next_; ///< on the machine
    std::vector<Tick> duration_, head_, tail_;
    std::vector<Tick> freeHead_, freeTail_; ///< with one taken out
    std::vector<Item> order_;
    std::vector<std::size_t> place_; ///< in order_
    std::vector<std::size_t> open_;
    std::vector<Item> critical_;
    std::vector<std::vector<std::uint64_t>> tabu_; ///< by activity and way: until that move
    Tick end_ = 0;
    std::uint64_t moves_ = 0;
    std::uint64_t stale_ = 0;
    static constexpr std::uint64_t kEffortOfStep = 768;
    std::uint64_t effort_ = 0; ///< activities looked at, about
    struct Elite {
        State state;
        Tick end = 0;
    };
    std::vector<Elite> elite_;
    Tick local_ = kNever; ///< best since the last shake
    State localState_;
    Plan best_;
};

} // namespace piewright::schedule
