#include "schedule/distances.h"

#include <algorithm>
#include <utility>

namespace piewright::schedule {

namespace {

constexpr std::int64_t kFar = std::numeric_limits<std::int64_t>::min() / 2;
constexpr std::size_t kMostKept = 32'000'000; ///< numbers in memory before all are forgotten

} // namespace

Distances::Distances(const Model& model)
    : model_(model), distance_(model.network.nodes(), kFar), isQueued_(model.network.nodes(), 0) {
    for (std::size_t u = 0; u < model.units.size(); ++u) {
        first_.push_back(marks_.size());
        marks_.push_back({u, startOf(model.units[u].members.front())});
        for (const std::size_t a : model.units[u].members) {
            if (model.lengths[a].least != model.lengths[a].most) {
                marks_.push_back({u, endOf(a)});
            }
        }
    }
    first_.push_back(marks_.size());
    rows_.resize(2 * marks_.size());
}

std::span<const Tick> Distances::row(std::size_t mark, bool forward) {
    std::vector<Tick>& row = rows_[2 * mark + (forward ? 0 : 1)];
    if (row.empty()) {
        if (kept_ > kMostKept) {
            for (std::vector<Tick>& old : rows_) {
                old = {};
            }
            kept_ = 0;
        }
        find(marks_[mark].node, forward, row);
        kept_ += row.size();
    }
    return row;
}

void Distances::find(Node from, bool forward, std::vector<Tick>& row) {
    const auto reach = [&](Node node, std::int64_t distance) {
        if (distance <= distance_[node]) {
            return;
        }
        if (distance_[node] == kFar) {
            touched_.push_back(node);
        }
        distance_[node] = distance;
        if (std::exchange(isQueued_[node], char{1}) == 0) {
            queue_.push_back(node);
        }
    };
    queue_.clear();
    touched_.clear();
    reach(from, 0);
    for (std::size_t i = 0; i < queue_.size(); ++i) {
        const Node node = queue_[i];
        isQueued_[node] = 0;
        // What may be left out holds nothing together.
        if (model_.unitOf[node / 2] != model_.unitOf[from / 2] && !model_.presence.isRequired(node / 2)) continue;
        const Length length = model_.lengths[node / 2];
        const bool isStart = node % 2 == 0;
        reach(node ^ 1U, distance_[node] + (isStart == forward ? length.least : -length.most));
        for (const Network::Arc& arc : forward ? model_.network.outgoing(node) : model_.network.incoming(node)) {
            reach(arc.other, distance_[node] + arc.least);
        }
    }
    row.reserve(marks_.size());
    for (const Mark& mark : marks_) {
        const std::int64_t distance = distance_[mark.node];
        // Longer than any time there is says as much as the longest; shorter is no limit.
        row.push_back(distance < -std::int64_t{kNever} ? kNone
                                                       : static_cast<Tick>(std::min<std::int64_t>(distance, kNever)));
    }
    for (const Node node : touched_) {
        distance_[node] = kFar;
    }
}

} // namespace piewright::schedule
