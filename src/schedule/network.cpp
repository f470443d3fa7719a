#include "schedule/network.h"

#include "schedule/stretch.h"

#include <algorithm>
#include <utility>

namespace piewright::schedule {

Network::Network(const Problem& problem, const Presence& presence) {
    const std::size_t nodes = 2 * problem.activities.size();
    outgoingFrom_.assign(nodes + 1, 0);
    incomingFrom_.assign(nodes + 1, 0);
    for (const Lag& lag : problem.lags) {
        ++outgoingFrom_[nodeOf(lag.from, lag.fromPoint) + 1];
        ++incomingFrom_[nodeOf(lag.to, lag.toPoint) + 1];
    }
    for (std::size_t n = 0; n < nodes; ++n) {
        outgoingFrom_[n + 1] += outgoingFrom_[n];
        incomingFrom_[n + 1] += incomingFrom_[n];
    }
    outgoing_.resize(problem.lags.size());
    incoming_.resize(problem.lags.size());
    std::vector<std::size_t> nextOut = outgoingFrom_;
    std::vector<std::size_t> nextIn = incomingFrom_;
    for (const Lag& lag : problem.lags) {
        const Node from = nodeOf(lag.from, lag.fromPoint);
        const Node to = nodeOf(lag.to, lag.toPoint);
        outgoing_[nextOut[from]++] = {to, lag.least, presence.follows(at(lag.to), at(lag.from))};
        incoming_[nextIn[to]++] = {from, lag.least, presence.follows(at(lag.from), at(lag.to))};
    }
}

namespace {

struct NamedArc {
    Node from;
    Node to;
    std::int64_t least;
    const std::string* reason; ///< none for a duration
};

/// A loop of positive length as indices of its arcs, in order. Longest paths from a virtual source at distance 0 to
/// all.
std::vector<std::size_t> positiveLoop(std::size_t nodes, const std::vector<NamedArc>& arcs) {
    constexpr std::size_t kNone = static_cast<std::size_t>(-1);
    std::vector<std::int64_t> distance(nodes, 0);
    std::vector<std::size_t> by(nodes, kNone);
    Node moved = kNone;
    for (std::size_t round = 0; round <= nodes; ++round) {
        moved = kNone;
        for (std::size_t i = 0; i < arcs.size(); ++i) {
            const NamedArc& arc = arcs[i];
            if (distance[arc.from] + arc.least > distance[arc.to]) {
                distance[arc.to] = distance[arc.from] + arc.least;
                by[arc.to] = i;
                moved = arc.to;
            }
        }
        if (moved == kNone) {
            return {};
        }
    }
    for (std::size_t i = 0; i < nodes; ++i) {
        moved = arcs[by[moved]].from;
    } // walk back until surely on the loop
    std::vector<std::size_t> loop;
    Node node = moved;
    do {
        loop.push_back(by[node]);
        node = arcs[by[node]].from;
    } while (node != moved);
    std::reverse(loop.begin(), loop.end());
    return loop;
}

std::vector<std::string> reasonsOn(const std::vector<std::size_t>& loop, const std::vector<NamedArc>& arcs,
                                   Node origin) {
    // Told from the origin on, if the loop comes by it: a release first, a due time last. Otherwise the tightest
    // greatest lag comes last: "at least, at least, and yet at most".
    auto first = std::find_if(loop.begin(), loop.end(), [&](std::size_t i) { return arcs[i].from == origin; });
    if (first == loop.end()) {
        first = std::min_element(loop.begin(), loop.end(), [&](std::size_t x, std::size_t y) {
            return std::pair{arcs[x].reason == nullptr, arcs[x].least} <
                   std::pair{arcs[y].reason == nullptr, arcs[y].least};
        });
        if (++first == loop.end()) {
            first = loop.begin();
        }
    }
    std::vector<std::size_t> ordered(first, loop.end());
    ordered.insert(ordered.end(), loop.begin(), first);
    std::vector<std::string> reasons;
    for (const std::size_t i : ordered) {
        const std::string* reason = arcs[i].reason;
        if (reason == nullptr || reason->empty()) {
            continue;
        }
        if (std::find(reasons.begin(), reasons.end(), *reason) == reasons.end()) {
            reasons.push_back(*reason);
        }
    }
    return reasons;
}

} // namespace

std::optional<std::vector<std::string>> contradiction(const Problem& problem, std::span<const Length> lengths) {
    const Node origin = 2 * problem.activities.size();
    const Presence presence(problem);
    std::vector<NamedArc> arcs; // between what is done for certain
    for (const Lag& lag : problem.lags) {
        if (!presence.isRequired(at(lag.from)) || !presence.isRequired(at(lag.to))) continue;
        arcs.push_back({nodeOf(lag.from, lag.fromPoint), nodeOf(lag.to, lag.toPoint), lag.least, &lag.reason});
    }
    for (std::size_t a = 0; a < problem.activities.size(); ++a) {
        if (!presence.isRequired(a)) continue;
        arcs.push_back({startOf(a), endOf(a), lengths[a].least, nullptr});
        arcs.push_back({endOf(a), startOf(a), -std::int64_t{lengths[a].most}, nullptr});
    }
    if (const auto loop = positiveLoop(origin + 1, arcs); !loop.empty()) {
        return reasonsOn(loop, arcs, origin);
    }
    for (std::size_t a = 0; a < problem.activities.size(); ++a) {
        if (!presence.isRequired(a)) continue;
        const Activity& activity = problem.activities[a];
        arcs.push_back({origin, startOf(a), activity.release, &activity.releaseReason});
        arcs.push_back({endOf(a), origin, -std::int64_t{activity.due}, &activity.dueReason});
        arcs.push_back({endOf(a), origin, -std::int64_t{problem.horizon}, &problem.horizonReason});
    }
    if (const auto loop = positiveLoop(origin + 1, arcs); !loop.empty()) {
        return reasonsOn(loop, arcs, origin);
    }
    return std::nullopt;
}

std::optional<std::vector<std::string>> contradiction(const Problem& problem) {
    std::vector<Length> lengths;
    for (const Activity& activity : problem.activities) {
        Length length{kNever, 0};
        for (const Mode& mode : activity.modes) {
            length = {std::min(length.least, mode.duration), std::max(length.most, Stretch(mode).most())};
        }
        lengths.push_back(length);
    }
    return contradiction(problem, lengths);
}

Bounds::Bounds(const Network& network, const Problem& problem, const Presence& presence, std::vector<Length> lengths)
    : network_(&network), presence_(&presence), lengths_(std::move(lengths)), lower_(network.nodes(), 0),
      upper_(network.nodes(), 0), isFixed_(problem.activities.size(), 0), inLower_(network.nodes(), 0),
      inUpper_(network.nodes(), 0), turns_(network.nodes(), 0), isOpening_(true) {
    for (std::size_t a = 0; a < problem.activities.size(); ++a) {
        lower_[startOf(a)] = lower_[endOf(a)] = problem.activities[a].release;
        upper_[startOf(a)] = upper_[endOf(a)] = std::min(problem.activities[a].due, problem.horizon);
    }
    for (Node n = 0; n < network.nodes(); ++n) push(n);
    propagate();
    isOpening_ = false;
    openLower_ = lower_;
    openUpper_ = upper_;
}

void Bounds::push(Node node) {
    if (!inLower_[node]) {
        inLower_[node] = 1;
        lowerQueue_.push_back(node);
    }
    if (!inUpper_[node]) {
        inUpper_[node] = 1;
        upperQueue_.push_back(node);
    }
}

void Bounds::pushLower(Node node, std::int64_t value) {
    if (value <= lower_[node]) return;
    const bool isDone = isFixed_[node / 2] != 0;
    if (value > upper_[node]) {
        if (isDone || presence_->isRequired(node / 2)) {
            empty_ = true;
        } else { // it cannot be done, which says nothing of others
            lower_[node] = upper_[node] + 1;
        }
        return;
    }
    lower_[node] = static_cast<Tick>(value);
    if (!inLower_[node]) {
        inLower_[node] = 1;
        lowerQueue_.push_back(node);
    }
}

void Bounds::pushUpper(Node node, std::int64_t value) {
    if (value >= upper_[node]) return;
    const bool isDone = isFixed_[node / 2] != 0;
    if (value < lower_[node]) {
        if (isDone || presence_->isRequired(node / 2)) {
            empty_ = true;
        } else if (lower_[node] == upper_[node] + 1) {
            return; // closed before
        } else {
            lower_[node] = upper_[node] + 1;
        }
        return;
    }
    upper_[node] = static_cast<Tick>(value);
    if (!inUpper_[node]) {
        inUpper_[node] = 1;
        upperQueue_.push_back(node);
    }
}

bool Bounds::propagate() {
    // A loop of positive length, through what is optional: seen by how often it comes round.
    const auto goesRound = [&](Node node) {
        if (!isOpening_ || ++turns_[node] <= 2 * network_->nodes()) return false;
        if (presence_->isRequired(node / 2)) {
            empty_ = true;
        } else {
            lower_[node] = upper_[node] + 1;
        }
        return true;
    };
    for (std::size_t i = 0; i < lowerQueue_.size() && !empty_; ++i) {
        const Node node = lowerQueue_[i];
        inLower_[node] = 0;
        const bool isDone = isFixed_[node / 2] != 0;
        if (!isOpen(node / 2) || goesRound(node)) continue;
        const std::int64_t value = lower_[node];
        const Length length = lengths_[node / 2];
        if (!isDone) pushLower(node ^ 1U, node % 2 == 0 ? value + length.least : value - length.most);
        for (const Network::Arc& arc : network_->outgoing(node)) {
            if (isDone || arc.holds) pushLower(arc.other, value + arc.least);
        }
    }
    for (const Node node : lowerQueue_) inLower_[node] = 0;
    lowerQueue_.clear();
    for (std::size_t i = 0; i < upperQueue_.size() && !empty_; ++i) {
        const Node node = upperQueue_[i];
        inUpper_[node] = 0;
        const bool isDone = isFixed_[node / 2] != 0;
        if (!isOpen(node / 2) || goesRound(node)) continue;
        const std::int64_t value = upper_[node];
        const Length length = lengths_[node / 2];
        if (!isDone) pushUpper(node ^ 1U, node % 2 == 1 ? value - length.least : value + length.most);
        for (const Network::Arc& arc : network_->incoming(node)) {
            if (isDone || arc.holds) pushUpper(arc.other, value - arc.least);
        }
    }
    for (const Node node : upperQueue_) inUpper_[node] = 0;
    upperQueue_.clear();
    return !empty_;
}

bool Bounds::fix(std::size_t activity, Tick start, Tick end) {
    bool isInside = true;
    for (const auto& [node, value] : {std::pair{startOf(activity), start}, std::pair{endOf(activity), end}}) {
        isInside = isInside && lower_[node] <= value && value <= upper_[node];
        lower_[node] = upper_[node] = value;
    }
    isFixed_[activity] = 1;
    if (!isInside) return false;
    push(startOf(activity));
    push(endOf(activity));
    empty_ = false;
    return propagate();
}

void Bounds::set(std::size_t activity, Tick start, Tick end) {
    lower_[startOf(activity)] = upper_[startOf(activity)] = start;
    lower_[endOf(activity)] = upper_[endOf(activity)] = end;
    isFixed_[activity] = 1;
}

void Bounds::renew(std::span<const std::size_t> loose) {
    empty_ = false;
    for (const std::size_t a : loose) {
        for (const Node node : {startOf(a), endOf(a)}) {
            lower_[node] = openLower_[node];
            upper_[node] = openUpper_[node];
        }
    }
    for (const std::size_t a : loose) {
        for (const Node node : {startOf(a), endOf(a)}) {
            for (const Network::Arc& arc : network_->incoming(node)) {
                if (isFixed_[arc.other / 2] != 0) pushLower(node, std::int64_t{lower_[arc.other]} + arc.least);
            }
            for (const Network::Arc& arc : network_->outgoing(node)) {
                if (isFixed_[arc.other / 2] != 0) pushUpper(node, std::int64_t{upper_[arc.other]} - arc.least);
            }
        }
    }
    propagate();
}

} // namespace piewright::schedule
