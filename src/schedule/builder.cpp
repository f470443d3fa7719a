#include "schedule/builder.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <tuple>
#include <utility>

namespace piewright::schedule {

Builder::Builder(const Model& model, std::uint64_t seed)
    : model_(model), draft_(model), random_(seed), weights_(model.units.size(), 1), failures_(model.units.size(), 0),
      ejection_(model, weights_), isDeferred_(model.units.size(), 0), bias_(model.units.size(), 0),
      flows_(model.problem.resources.size()) {
    for (std::size_t a = 0; a < model.problem.activities.size(); ++a) {
        for (const int mode : model.modes[a]) {
            for (const Flow& flow : model.mode(a, mode).flows) {
                std::vector<char>& flows = flows_[at(flow.resource)];
                flows.resize(model.units.size(), 0);
                if (flow.amount != 0) {
                    char& way = flows[model.unitOf[a]];
                    way = static_cast<char>(way | (flow.amount > 0 ? 1 : 2));
                }
            }
        }
    }
}

std::optional<Schedule> Builder::run(std::uint64_t work, const std::atomic<bool>* cancelled) {
    if (!std::exchange(begun_, true)) restart();
    const std::size_t patience = 100 + 10 * model_.units.size();
    while (!draft_.open().empty()) {
        if (this->work() >= work) return std::nullopt;
        if (cancelled != nullptr && cancelled->load(std::memory_order_relaxed)) return std::nullopt;
        if (ejections_ > patience) restart();
        const std::size_t unit = next();
        if (place(unit)) {
            for (const std::size_t other : deferred_) isDeferred_[other] = 0;
            deferred_.clear();
        } else if (isDeferred_[unit] == 0 && waitsForStock(unit)) {
            isDeferred_[unit] = 1;
            deferred_.push_back(unit);
        } else {
            eject(unit);
        }
    }
    fillIn();
    compact();
    return Schedule{draft_.board().placed()};
}

Schedule Builder::compacted(const Schedule& schedule) {
    restart();
    for (std::size_t u = 0; u < model_.units.size(); ++u) {
        if (draft_.now(u) == Draft::Now::Out) draft_.takeUp(u);
        std::vector<Placed> places;
        for (const std::size_t a : model_.units[u].members) places.push_back(schedule.placed[a]);
        if (places.front().mode == kAbsent) {
            draft_.leaveOut(u);
        } else {
            [[maybe_unused]] const bool isPut = draft_.put(u, places);
        }
    }
    fillIn();
    compact();
    return Schedule{draft_.board().placed()};
}

void Builder::restart() {
    for (std::size_t u = 0; u < model_.units.size(); ++u) draft_.remove(u);
    leaveOutOptional();
    for (std::size_t u = 0; u < model_.units.size(); ++u) {
        if (draft_.now(u) == Draft::Now::Open && !model_.groups[model_.groupOf[u]].isRequired) draft_.leaveOut(u);
    }
    ejections_ = 0;
    const Bounds& open = draft_.bounds();
    // The first round goes strictly by latest start. Later ones add a random bias of a quarter of the slack there is,
    // and bring forward what failed: the squeaky wheel.
    for (std::size_t u = 0; u < model_.units.size(); ++u) {
        const Node node = startOf(model_.units[u].members.front());
        const auto slack = static_cast<std::uint64_t>(std::max(0, open.upper(node) - open.lower(node)));
        const std::uint64_t squeak = slack / 16 * std::min<std::uint64_t>(weights_[u] - 1, 16);
        bias_[u] =
            restarts_ == 0 ? 0 : static_cast<std::int64_t>(draw(slack / 4 + 1)) - static_cast<std::int64_t>(squeak);
        weights_[u] = 1 + weights_[u] / 2;
    }
    ++restarts_;
}

/// What is most pressing: the smallest latest start, sooner for what failed before.
std::size_t Builder::next() {
    const Bounds& bounds = draft_.bounds();
    std::size_t best = model_.units.size();
    std::tuple<char, std::int64_t, Tick, std::size_t> bestKey;
    for (const std::size_t u : draft_.open()) {
        const Node node = startOf(model_.units[u].members.front());
        const std::tuple key{isDeferred_[u], bounds.upper(node) + bias_[u], bounds.lower(node), u};
        if (best == model_.units.size() || key < bestKey) {
            best = u;
            bestKey = key;
        }
    }
    return best;
}

bool Builder::place(std::size_t unit) {
    // In the first round where it costs least; when that does not work out, where it leaves most room.
    if (restarts_ == 1 && ejections_ <= model_.units.size() && !draft_.tally().isOfExtents())
        return draft_.putCheapest(unit, {});
    return draft_.putEarliest(unit);
}

/// Whether it uses a stock that something still open would change to its advantage.
bool Builder::waitsForStock(std::size_t unit) const {
    return std::any_of(flows_.begin(), flows_.end(), [&](const std::vector<char>& flows) {
        if (flows.empty() || flows[unit] == 0) return false;
        return std::any_of(draft_.open().begin(), draft_.open().end(), [&](std::size_t other) {
            return other != unit && isDeferred_[other] == 0 && flows[other] != 0 && flows[other] != flows[unit];
        });
    });
}

void Builder::leaveOutOptional() {
    const std::vector<std::size_t> open = draft_.open();
    for (const std::size_t u : open) {
        if (!model_.groups[model_.groupOf[u]].isRequired) draft_.leaveOut(u);
    }
}

void Builder::eject(std::size_t unit) {
    ++failures_[unit];
    ++weights_[unit];
    ++ejections_;
    const Bounds& bounds = draft_.bounds();
    const Node leader = startOf(model_.units[unit].members.front());
    const Tick first = bounds.openLower(leader);
    const Tick last = bounds.openUpper(leader);
    std::vector<Tick> starts;
    constexpr Tick kAll = 24;
    if (last - first <= kAll) {
        for (Tick start = first; start <= last; ++start) starts.push_back(start);
    } else {
        starts = {bounds.lower(leader), bounds.upper(leader)};
        // Bulldoze: where it fits if only what holds it back in time gave way.
        if (const auto later = draft_.earliest(unit, bounds.upper(leader), last, true)) starts.push_back(*later);
        const auto some = [&](Tick from, Tick to) {
            starts.push_back(from + static_cast<Tick>(draw(static_cast<std::uint64_t>(to - from) + 1)));
        };
        for (int i = 0; i < kAll / 2; ++i) {
            some(bounds.lower(leader), bounds.upper(leader));
            some(first, last);
        }
    }
    std::optional<Ejection::Plan> best;
    Tick bestStart = 0;
    const std::size_t turn = draw(starts.size()); // ties fall differently each time
    for (std::size_t i = 0; i < starts.size(); ++i) {
        const Tick start = starts[(i + turn) % starts.size()];
        // So that work goes with time.
        draft_.board().addWork(model_.units[unit].members.size() + model_.units.size() / 256);
        const std::uint64_t limit = best ? best->cost : std::numeric_limits<std::uint64_t>::max();
        if (auto plan = ejection_.plan(draft_.board(), bounds, unit, start, limit)) {
            best = std::move(plan);
            bestStart = start;
        }
    }
    if (!best) {
        ejections_ += 10; // nothing can be moved to help
        if (isDeferred_[unit] == 0) {
            isDeferred_[unit] = 1;
            deferred_.push_back(unit);
        }
        return;
    }
    for (const std::size_t other : best->units) draft_.remove(other);
    leaveOutOptional();
    if (!draft_.putAt(unit, bestStart, &best->modes)) {
        ejections_ += 2; // members in each other's way
        return;
    }
    for (const std::size_t other : deferred_) isDeferred_[other] = 0;
    deferred_.clear();
}

/// Optional groups that are worth it.
void Builder::fillIn() {
    if (draft_.tally().isIdle()) return;
    for (std::size_t g = 0; g < model_.groups.size(); ++g) {
        const Group& group = model_.groups[g];
        if (group.isRequired || draft_.now(group.units.front()) != Draft::Now::Out) continue;
        const Cost before = draft_.total();
        draft_.mark();
        if (!draft_.putWorthwhile(g, {}) || !draft_.open().empty() || draft_.total() > before) draft_.rollBack();
    }
}

void Builder::compact() {
    const bool isByCost = !draft_.tally().isOfExtents();
    std::vector<std::size_t> order;
    for (std::size_t u = 0; u < model_.units.size(); ++u) {
        if (draft_.now(u) == Draft::Now::In && model_.groups[model_.groupOf[u]].isRequired) order.push_back(u);
    }
    std::sort(order.begin(), order.end(), [&](std::size_t x, std::size_t y) {
        return std::pair{draft_.startOfUnit(x), x} < std::pair{draft_.startOfUnit(y), y};
    });
    for (const std::size_t u : order) {
        const Tick start = draft_.startOfUnit(u);
        const Cost before = draft_.total();
        draft_.mark();
        draft_.remove(u);
        // What goes with it for want of stock stays, and so does it.
        const bool isBetter = draft_.open().size() == 1 &&
                              (isByCost ? draft_.putCheapest(u, {}) : draft_.putEarliest(u)) &&
                              draft_.total() <= before && (isByCost || draft_.startOfUnit(u) <= start);
        if (!isBetter) draft_.rollBack();
    }
}

} // namespace piewright::schedule
