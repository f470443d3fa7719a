#include "schedule/builder.h"

#include <algorithm>
#include <cassert>
#include <numeric>
#include <tuple>
#include <utility>

namespace piewright::schedule {

Builder::Builder(const Model& model, std::uint64_t seed)
    : model_(model), open_(model.network, model.problem, model.lengths), bounds_(open_), board_(model), random_(seed),
      weights_(model.units.size(), 1), failures_(model.units.size(), 0), ejection_(model, open_, weights_),
      isPlaced_(model.units.size(), 0), unplaced_(model.units.size()), bias_(model.units.size(), 0) {}

std::optional<Schedule> Builder::run(std::uint64_t work) {
    if (!std::exchange(begun_, true)) {
        restart();
    }
    const std::size_t patience = 100 + 10 * model_.units.size();
    while (unplaced_ > 0) {
        if (board_.work() >= work) {
            return std::nullopt;
        }
        if (ejections_ > patience) {
            restart();
        }
        const std::size_t unit = next();
        if (!place(unit)) {
            eject(unit);
        }
    }
    compact();
    return Schedule{board_.placed()};
}

Schedule Builder::compacted(const Schedule& schedule) {
    restart();
    for (std::size_t u = 0; u < model_.units.size(); ++u) {
        for (const std::size_t a : model_.units[u].members) {
            board_.put(a, schedule.placed[a]);
        }
        isPlaced_[u] = 1;
    }
    unplaced_ = 0;
    compact();
    return Schedule{board_.placed()};
}

void Builder::restart() {
    for (std::size_t u = 0; u < model_.units.size(); ++u) {
        if (isPlaced_[u] != 0) {
            takeUnit(u);
        }
    }
    ejections_ = 0;
    bounds_ = open_;
    // The first round goes strictly by latest start. Later ones add a random bias of a quarter of the slack there is,
    // and bring forward what failed: the squeaky wheel.
    for (std::size_t u = 0; u < model_.units.size(); ++u) {
        const Node node = startOf(model_.units[u].members.front());
        const auto slack = static_cast<std::uint64_t>(open_.upper(node) - open_.lower(node));
        const std::uint64_t squeak = slack / 16 * std::min<std::uint64_t>(weights_[u] - 1, 16);
        bias_[u] =
            restarts_ == 0 ? 0 : static_cast<std::int64_t>(draw(slack / 4 + 1)) - static_cast<std::int64_t>(squeak);
        weights_[u] = 1 + weights_[u] / 2;
    }
    ++restarts_;
}

void Builder::renewBounds() {
    bounds_ = open_;
    board_.addWork(model_.units.size() / 32);
    for (std::size_t u = 0; u < model_.units.size(); ++u) {
        if (isPlaced_[u] == 0) {
            continue;
        }
        for (const std::size_t a : model_.units[u].members) {
            bounds_.note(a, board_.placed(a).start, board_.placed(a).end);
        }
    }
    [[maybe_unused]] const bool isConsistent = bounds_.spread();
    assert(isConsistent);
}

/// What is most pressing: the smallest latest start, sooner for what failed before.
std::size_t Builder::next() const {
    std::size_t best = model_.units.size();
    std::tuple<std::int64_t, Tick, std::size_t> bestKey;
    for (std::size_t u = 0; u < model_.units.size(); ++u) {
        if (isPlaced_[u] != 0) {
            continue;
        }
        const Node node = startOf(model_.units[u].members.front());
        const std::tuple key{bounds_.upper(node) + bias_[u], bounds_.lower(node), u};
        if (best == model_.units.size() || key < bestKey) {
            best = u;
            bestKey = key;
        }
    }
    return best;
}

std::optional<Tick> Builder::earliest(std::size_t unit, Tick from, Tick upTo) {
    const Unit& coming = model_.units[unit];
    for (Tick start = from; start <= upTo;) {
        Tick later = start;
        for (std::size_t i = 0; i < coming.members.size(); ++i) {
            const std::size_t a = coming.members[i];
            std::optional<Tick> best;
            for (const int mode : model_.modes[a]) {
                const Tick duration = model_.problem.activities[a].modes[static_cast<std::size_t>(mode)].duration;
                const Tick first = std::max(start + coming.offsets[i], open_.lower(endOf(a)) - duration);
                const Tick last =
                    std::min({upTo + coming.offsets[i], open_.upper(endOf(a)) - duration, best ? *best - 1 : kNever});
                if (const std::optional<Tick> found = board_.earliest(a, mode, first, last)) {
                    best = found;
                }
            }
            if (!best) {
                return std::nullopt;
            }
            later = *best - coming.offsets[i];
            if (later > start) {
                break;
            }
        }
        if (later == start) {
            return start;
        }
        start = later;
    }
    return std::nullopt;
}

bool Builder::placeAt(std::size_t unit, Tick start, const std::vector<int>* modes) {
    const Unit& coming = model_.units[unit];
    for (std::size_t i = 0; i < coming.members.size(); ++i) {
        const std::size_t a = coming.members[i];
        const Tick when = start + coming.offsets[i];
        std::optional<Placed> found;
        for (const int mode : model_.modes[a]) {
            const Tick end = when + model_.problem.activities[a].modes[static_cast<std::size_t>(mode)].duration;
            if ((modes != nullptr && (*modes)[i] != mode) || when < bounds_.lower(startOf(a)) ||
                when > bounds_.upper(startOf(a)) || end < bounds_.lower(endOf(a)) || end > bounds_.upper(endOf(a))) {
                continue;
            }
            found = board_.fit(a, mode, when);
            if (found) {
                break;
            }
        }
        if (!found || !bounds_.fix(a, found->start, found->end)) { // members in each other's way
            const bool isSpoilt = found || i > 0;
            while (i-- > 0) {
                board_.take(coming.members[i]);
            }
            if (isSpoilt) {
                renewBounds();
            }
            return false;
        }
        board_.put(a, *std::move(found));
    }
    isPlaced_[unit] = 1;
    --unplaced_;
    return true;
}

bool Builder::place(std::size_t unit) {
    const Node leader = startOf(model_.units[unit].members.front());
    const std::int64_t last = bounds_.upper(leader);
    // Where each member has room for itself they may still be in each other's way, perhaps at any start: the steps
    // grow.
    std::int64_t step = 1;
    int stumbles = 0;
    for (std::int64_t start = bounds_.lower(leader); start <= last; start += step) {
        const std::optional<Tick> found = earliest(unit, static_cast<Tick>(start), static_cast<Tick>(last));
        if (!found) {
            return false;
        }
        start = *found;
        if (placeAt(unit, *found, nullptr)) {
            return true;
        }
        step = ++stumbles % 16 == 0 ? 2 * step : step;
    }
    return false;
}

void Builder::takeUnit(std::size_t unit) {
    for (const std::size_t a : model_.units[unit].members) {
        board_.take(a);
    }
    isPlaced_[unit] = 0;
    ++unplaced_;
}

void Builder::eject(std::size_t unit) {
    ++failures_[unit];
    ++weights_[unit];
    ++ejections_;
    const Node leader = startOf(model_.units[unit].members.front());
    const Tick first = open_.lower(leader);
    const Tick last = open_.upper(leader);
    std::vector<Tick> starts;
    constexpr Tick kAll = 24;
    if (last - first <= kAll) {
        for (Tick start = first; start <= last; ++start) {
            starts.push_back(start);
        }
    } else {
        starts = {bounds_.lower(leader), bounds_.upper(leader)};
        // Bulldoze: where it fits if only what holds it back in time gave way.
        if (const auto later = earliest(unit, bounds_.upper(leader), last)) {
            starts.push_back(*later);
        }
        const auto some = [&](Tick from, Tick to) {
            starts.push_back(from + static_cast<Tick>(draw(static_cast<std::uint64_t>(to - from) + 1)));
        };
        for (int i = 0; i < kAll / 2; ++i) {
            some(bounds_.lower(leader), bounds_.upper(leader));
            some(first, last);
        }
    }
    std::optional<Ejection::Plan> best;
    Tick bestStart = 0;
    const std::size_t turn = draw(starts.size()); // ties fall differently each time
    for (std::size_t i = 0; i < starts.size(); ++i) {
        const Tick start = starts[(i + turn) % starts.size()];
        board_.addWork(model_.units[unit].members.size() + model_.units.size() / 256); // so that work goes with time
        const std::uint64_t limit = best ? best->cost : std::numeric_limits<std::uint64_t>::max();
        if (auto plan = ejection_.plan(board_, unit, start, limit)) {
            best = std::move(plan);
            bestStart = start;
        }
    }
    if (!best) {
        ejections_ += 10; // nothing can be moved to help
        return;
    }
    for (const std::size_t other : best->units) {
        takeUnit(other);
    }
    renewBounds();
    if (!placeAt(unit, bestStart, &best->modes)) {
        ejections_ += 2; // members in each other's way
    }
}

void Builder::compact() {
    std::vector<std::size_t> order(model_.units.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto start = [&](std::size_t u) { return board_.placed(model_.units[u].members.front()).start; };
    std::sort(order.begin(), order.end(),
              [&](std::size_t x, std::size_t y) { return std::pair{start(x), x} < std::pair{start(y), y}; });
    for (const std::size_t u : order) {
        std::vector<Placed> before;
        for (const std::size_t a : model_.units[u].members) {
            before.push_back(board_.placed(a));
        }
        takeUnit(u);
        renewBounds();
        const bool found = place(u);
        if (found && start(u) <= before.front().start) {
            continue;
        }
        if (found) {
            takeUnit(u);
        }
        for (std::size_t i = 0; i < before.size(); ++i) {
            board_.put(model_.units[u].members[i], std::move(before[i]));
        }
        isPlaced_[u] = 1;
        --unplaced_;
    }
}

} // namespace piewright::schedule
