// The temporal side of a problem: starts and ends as nodes of a simple temporal network (Dechter, Meiri, Pearl 1991,
// Artificial Intelligence 49). Every rule on time is an arc `time(to) - time(from) >= least`; a loop of positive length
// is a contradiction. Resources play no part here.
#pragma once

#include "schedule/presence.h"
#include "schedule/problem.h"

#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace piewright::schedule {

/// A start or an end: 2·activity, and one more for the end.
using Node = std::size_t;
inline Node startOf(std::size_t activity) { return 2 * activity; }
inline Node endOf(std::size_t activity) { return 2 * activity + 1; }
inline Node nodeOf(ActivityIndex activity, Point point) {
    return point == Point::Start ? startOf(at(activity)) : endOf(at(activity));
}

/// Shortest and longest duration an activity may still take.
struct Length {
    Tick least = 0;
    Tick most = 0;
};

/// The arcs of the lags, sorted both ways. Durations are kept by the user of the network, as they change with the
/// modes.
class Network {
  public:
    struct Arc {
        Node other; ///< target (outgoing) or source (incoming)
        Tick least;
        /// Wherever `other` is done, this node's activity is: then what is known of this node holds for `other` before
        /// it is settled that this one is done.
        bool holds;
    };

    Network(const Problem& problem, const Presence& presence);

    [[nodiscard]] std::span<const Arc> outgoing(Node node) const { return slice(outgoing_, outgoingFrom_, node); }
    [[nodiscard]] std::span<const Arc> incoming(Node node) const { return slice(incoming_, incomingFrom_, node); }
    [[nodiscard]] std::size_t nodes() const { return outgoingFrom_.size() - 1; }

  private:
    static std::span<const Arc> slice(const std::vector<Arc>& arcs, const std::vector<std::size_t>& from, Node node) {
        return {arcs.data() + from[node], from[node + 1] - from[node]};
    }

    std::vector<Arc> outgoing_, incoming_;
    std::vector<std::size_t> outgoingFrom_, incomingFrom_;
};

/// The reasons on a loop of rules that contradict each other, in loop order; nothing when the rules on time alone can
/// be kept. A loop of lags is preferred to one by way of a release, a due time or the horizon. Bellman-Ford:
/// O(nodes·arcs).
[[nodiscard]] std::optional<std::vector<std::string>> contradiction(const Problem& problem,
                                                                    std::span<const Length> lengths);

/// The same, with every mode allowed.
[[nodiscard]] std::optional<std::vector<std::string>> contradiction(const Problem& problem);

/// Earliest and latest time of every node, were it done, kept consistent with the network while activities are fixed
/// one by one and let go again. Where nothing is optional every value between a node's bounds belongs to some solution
/// of the network (with durations between their least and most).
class Bounds {
  public:
    /// Propagates releases, due times and the horizon. There must be no contradiction().
    Bounds(const Network& network, const Problem& problem, const Presence& presence, std::vector<Length> lengths);

    [[nodiscard]] Tick lower(Node node) const { return lower_[node]; }
    [[nodiscard]] Tick upper(Node node) const { return upper_[node]; }
    /// With nothing fixed.
    [[nodiscard]] Tick openLower(Node node) const { return openLower_[node]; }
    [[nodiscard]] Tick openUpper(Node node) const { return openUpper_[node]; }
    [[nodiscard]] bool isFixed(std::size_t activity) const { return isFixed_[activity] != 0; }
    /// Whether the activity has a window left; for one that is required this is so after every successful call.
    [[nodiscard]] bool isOpen(std::size_t activity) const {
        return lower_[2 * activity] <= upper_[2 * activity] && lower_[2 * activity + 1] <= upper_[2 * activity + 1];
    }

    /// Fixes an activity. False when that breaks a lag, or takes what is required its window: then it must be let go.
    bool fix(std::size_t activity, Tick start, Tick end);
    /// Fixes it where it is known to do no harm, and nothing is loose.
    void set(std::size_t activity, Tick start, Tick end);
    /// Lets activities go. The bounds hold again after renew().
    void letGo(std::size_t activity) { isFixed_[activity] = 0; }
    /// Bounds of all `loose` activities, which must be all that are not fixed. O(their arcs, as a rule).
    void renew(std::span<const std::size_t> loose);

  private:
    void push(Node node);
    void pushLower(Node node, std::int64_t value);
    void pushUpper(Node node, std::int64_t value);
    bool propagate();

    const Network* network_;
    const Presence* presence_;
    std::vector<Length> lengths_;
    std::vector<Tick> lower_, upper_, openLower_, openUpper_;
    std::vector<char> isFixed_; ///< by activity
    std::vector<Node> lowerQueue_, upperQueue_;
    std::vector<char> inLower_, inUpper_;
    std::vector<std::uint32_t> turns_; ///< by node, while the open bounds are found
    bool isOpening_ = false;
    bool empty_ = false;
};

} // namespace piewright::schedule
