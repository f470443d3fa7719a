// Complete search for small problems: gives every activity a mode and people and posts an order between two that clash
// in the earliest-start schedule, until none do (De Reyck and Herroelen 1998, European Journal of Operational Research
// 111; pairs chosen by least slack as in Smith and Cheng 1993, AAAI-93). Every order it does not post it has refuted,
// so when nothing is left there is no schedule.
#pragma once

#include "schedule/model.h"
#include "schedule/network.h"
#include "schedule/problem.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace piewright::schedule {

/// Whether it understands all that the problem states. It knows nothing of loads, reservoirs, pauses, what may be left
/// out, or who must stay: there it leaves the proof to others, and search() answers OutOfTime at once.
[[nodiscard]] bool understands(const Problem& problem);

enum class TreeAnswer { Found, None, OutOfTime };

class Tree {
  public:
    explicit Tree(const Model& model);

    /// From the beginning, within `work`.
    [[nodiscard]] TreeAnswer search(std::uint64_t work);
    [[nodiscard]] const Schedule& schedule() const { return schedule_; }      ///< after Found
    [[nodiscard]] std::uint64_t work() const { return work_ + checks_ / 64; } ///< of the last search

  private:
    /// One way on from a conflict: an arc, or a bound when it is about something that can't be moved.
    struct Step {
        Node from;
        Node to; ///< the same as `from` for a bound
        Tick value;
        bool isLower;
        std::int64_t slack;
    };
    /// One way of doing an activity: mode and people by place.
    struct Option {
        int mode;
        std::vector<WorkerIndex> crew;
    };
    struct User {
        std::size_t activity;
        Use use;
    };
    struct Change {
        enum class What { Lower, Upper, Length, Arc, Decided } what;
        std::size_t index;
        Tick first;
        Tick second;
    };

    void begin();
    bool spend();
    bool descend();
    bool tryStep(const Step& step);
    void undo(std::size_t mark);

    bool raise(Node node, std::int64_t value, Node guard);
    bool reduce(Node node, std::int64_t value, Node guard);
    bool addArc(Node from, Node to, Tick least);
    bool setLength(std::size_t activity, Tick duration);
    bool decide(std::size_t activity, const Option& option);

    bool propagate();
    bool keepOpen(std::size_t activity);
    bool orderPair(std::size_t one, std::size_t other, Tick there, Tick back);
    [[nodiscard]] std::vector<Step> worstConflict();
    void considerPair(std::size_t one, std::size_t other, Tick there, Tick back, std::vector<Step>& worst);
    void considerLevel(std::size_t resource, std::vector<Step>& worst);
    void keepWorse(std::vector<Step>& steps, std::vector<Step>& worst) const;
    [[nodiscard]] std::size_t nextUndecided() const;
    [[nodiscard]] std::vector<Option> optionsOf(std::size_t activity);
    void gatherCrews(std::size_t activity, int mode, std::vector<Option>& options);

    [[nodiscard]] const Mode& mode(std::size_t activity) const;
    [[nodiscard]] Tick setup(const Machine& machine, const User& from, const User& to) const;

    const Model& model_;
    bool isUnderstood_ = true;
    std::vector<Tick> lower_, upper_;
    std::vector<Length> lengths_;
    std::vector<std::vector<Network::Arc>> outgoing_, incoming_; ///< posted on top of the network
    std::vector<int> mode_;                                      ///< by activity; -1: undecided
    std::vector<std::vector<WorkerIndex>> crew_;
    std::vector<std::vector<User>> users_;               ///< by resource
    std::vector<std::vector<std::size_t>> tasks_;        ///< by worker
    std::vector<std::vector<std::vector<Span>>> closed_; ///< by activity and mode: when its resources are not to be had
    std::vector<std::vector<Span>> absent_;              ///< by worker
    std::vector<std::size_t> alike_;                     ///< by worker: first worker that can't be told from this one
    std::vector<Change> trail_;
    std::vector<Node> queue_;
    std::vector<char> isQueued_;
    std::uint64_t work_ = 0, limit_ = 0;
    std::uint64_t checks_ = 0;
    bool isSpent_ = false;
    std::size_t depth_ = 0;
    Schedule schedule_;
};

} // namespace piewright::schedule
