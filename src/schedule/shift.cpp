#include "schedule/shift.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace piewright::schedule {

namespace {

constexpr std::int64_t kEndless = std::numeric_limits<std::int64_t>::max() / 4;
constexpr int kMostSteps = 200;

/// Largest flow from a source to a sink, by blocking flows (Dinic 1970).
class Cut {
  public:
    explicit Cut(std::size_t nodes) : first_(nodes, kNone), level_(nodes), next_(nodes) {}

    void add(std::size_t from, std::size_t to, std::int64_t room) {
        edges_.push_back({to, first_[from], room});
        first_[from] = edges_.size() - 1;
        edges_.push_back({from, first_[to], 0});
        first_[to] = edges_.size() - 1;
    }

    std::int64_t run(std::size_t source, std::size_t sink) {
        std::int64_t all = 0;
        while (layer(source, sink)) {
            next_ = first_;
            while (const std::int64_t more = push(source, sink, kEndless)) all += more;
        }
        return all;
    }
    /// After run(): on the source's side of the cut.
    [[nodiscard]] bool isOfSource(std::size_t node) const { return level_[node] >= 0; }

  private:
    static constexpr std::size_t kNone = static_cast<std::size_t>(-1);
    struct Edge {
        std::size_t to;
        std::size_t next;
        std::int64_t room;
    };

    bool layer(std::size_t source, std::size_t sink) {
        std::fill(level_.begin(), level_.end(), -1);
        std::vector<std::size_t> queue{source};
        level_[source] = 0;
        for (std::size_t i = 0; i < queue.size(); ++i) {
            for (std::size_t e = first_[queue[i]]; e != kNone; e = edges_[e].next) {
                if (edges_[e].room == 0 || level_[edges_[e].to] >= 0) continue;
                level_[edges_[e].to] = level_[queue[i]] + 1;
                queue.push_back(edges_[e].to);
            }
        }
        return level_[sink] >= 0;
    }

    /// As deep as there are layers: no more than nodes.
    std::int64_t push(std::size_t node, std::size_t sink, std::int64_t most) {
        if (node == sink) return most;
        for (std::size_t& e = next_[node]; e != kNone; e = edges_[e].next) {
            const Edge edge = edges_[e];
            if (edge.room == 0 || level_[edge.to] != level_[node] + 1) continue;
            const std::int64_t pushed = push(edge.to, sink, std::min(most, edge.room));
            if (pushed == 0) continue;
            edges_[e].room -= pushed;
            edges_[e ^ 1U].room += pushed;
            return pushed;
        }
        return 0;
    }

    std::vector<std::size_t> first_;
    std::vector<int> level_;
    std::vector<std::size_t> next_;
    std::vector<Edge> edges_;
};

} // namespace

Shift::Shift(const Model& model)
    : model_(model), units_(model.units.size()), time_(units_ + 2 * model.problem.costs.extents.size(), 0),
      lower_(time_.size(), 0), upper_(time_.size(), 0), isHere_(time_.size(), 0), isMoving_(time_.size(), 0) {}

bool Shift::run(Draft& draft) {
    gather(draft);
    int steps = 0;
    int idle = 0;
    // One way as long as it pays, then the other.
    for (int way = 1; steps < kMostSteps && idle < 2; ++steps) {
        if (step(draft, way)) {
            idle = 0;
        } else {
            way = -way;
            ++idle;
        }
    }
    draft.board().addWork(static_cast<std::uint64_t>(steps) * (units_ + arcs_.size()) / 16 + units_);
    return steps > 2 && apply(draft);
}

void Shift::gather(const Draft& draft) {
    arcs_.clear();
    std::fill(isHere_.begin(), isHere_.end(), char{0});
    gatherUnits(draft);
    gatherLines(draft);
    gatherLevels(draft);
    gatherStocks(draft);
    gatherExtents(draft);
}

/// `other` starts `gap` or more after `one` ends, as they do now.
void Shift::order(std::size_t one, Tick oneEnds, std::size_t other, Tick otherStarts, Tick gap) {
    const std::size_t from = model_.unitOf[one];
    const std::size_t to = model_.unitOf[other];
    if (from == to) return;
    // Both are told by their units' times.
    const std::int64_t least = std::int64_t{gap} + (oneEnds - time_[from]) - (otherStarts - time_[to]);
    arcs_.push_back({from, to, least});
}

void Shift::tie(std::size_t one, std::size_t other) {
    const std::size_t from = model_.unitOf[one];
    const std::size_t to = model_.unitOf[other];
    if (from == to) return;
    arcs_.push_back({from, to, time_[to] - time_[from]});
    arcs_.push_back({to, from, time_[from] - time_[to]});
}

void Shift::notBefore(std::size_t activity, Tick start, Tick earliest) {
    const std::size_t unit = model_.unitOf[activity];
    lower_[unit] = std::max(lower_[unit], time_[unit] - (std::int64_t{start} - earliest));
}

void Shift::notAfter(std::size_t activity, Tick end, Tick latest) {
    const std::size_t unit = model_.unitOf[activity];
    upper_[unit] = std::min(upper_[unit], time_[unit] + (std::int64_t{latest} - end));
}

void Shift::gatherUnits(const Draft& draft) {
    const Problem& problem = model_.problem;
    for (std::size_t u = 0; u < units_; ++u) {
        if (draft.now(u) != Draft::Now::In) continue;
        isHere_[u] = 1;
        time_[u] = draft.startOfUnit(u);
        lower_[u] = 0;
        upper_[u] = kEndless;
        for (const std::size_t a : model_.units[u].members) {
            const Placed& placed = draft.board().placed(a);
            notBefore(a, placed.start, problem.activities[a].release);
            notAfter(a, placed.end, std::min(problem.activities[a].due, problem.horizon));
            // What may pause would change its length.
            if (!model_.mode(a, placed.mode).pauses.empty()) lower_[u] = upper_[u] = time_[u];
        }
    }
    for (const Lag& lag : problem.lags) {
        const std::size_t from = at(lag.from);
        const std::size_t to = at(lag.to);
        if (!draft.board().isPlaced(from) || !draft.board().isPlaced(to)) continue;
        const Placed& one = draft.board().placed(from);
        const Placed& other = draft.board().placed(to);
        order(from, lag.fromPoint == Point::Start ? one.start : one.end, to,
              lag.toPoint == Point::Start ? other.start : other.end, lag.least);
    }
    for (std::size_t w = 0; w < problem.workers.size(); ++w) {
        const std::vector<Diary::Booking>& bookings = draft.board().diary(static_cast<WorkerIndex>(w)).bookings();
        for (std::size_t i = 0; i < bookings.size(); ++i) {
            const Diary::Booking& one = bookings[i];
            if (i > 0) order(bookings[i - 1].activity, bookings[i - 1].end, one.activity, one.start, 0);
            for (const Span& span : problem.workers[w].present) {
                if (span.from > one.start || one.end > span.to) continue;
                notBefore(one.activity, one.start, span.from);
                notAfter(one.activity, one.end, span.to);
                break;
            }
        }
    }
}

void Shift::gatherLines(const Draft& draft) {
    for (std::size_t r = 0; r < model_.problem.resources.size(); ++r) {
        if (!model_.problem.resources[r].machine) continue;
        const Machine& machine = *model_.problem.resources[r].machine;
        const Line& line = draft.board().line(static_cast<ResourceIndex>(r));
        const std::vector<Line::Booking>& bookings = line.bookings();
        // The load before, and where the present one begins, as indices.
        std::size_t lastFrom = 0;
        std::size_t from = 0;
        for (std::size_t i = 0; i < bookings.size(); ++i) {
            const Line::Booking& one = bookings[i];
            if (i > from && line.joins(bookings[from], one.start, one.family)) {
                tie(bookings[from].activity, one.activity);
            } else {
                lastFrom = from;
                from = i;
            }
            for (std::size_t j = lastFrom; j < from; ++j) {
                order(bookings[j].activity, bookings[j].end, one.activity, one.start,
                      line.setup(bookings[j].family, one.family));
            }
            if (!machine.first.empty()) notBefore(one.activity, one.start, machine.first[at(one.family)]);
            for (const Span& away : machine.away) {
                if (away.to <= one.start) notBefore(one.activity, one.start, away.to);
                if (one.end <= away.from) notAfter(one.activity, one.end, away.from);
            }
        }
    }
}

/// Who takes over whose part of the room (partial-order schedules: Policella, Cesta, Oddi, Smith 2007, AI
/// Communications 20); what is reserved stays where it is.
void Shift::gatherLevels(const Draft& draft) {
    constexpr std::size_t kNobody = static_cast<std::size_t>(-1);
    struct User {
        Tick start;
        Tick end;
        std::int64_t amount;
        std::size_t activity; ///< or kNobody
        auto operator<=>(const User&) const = default;
    };
    struct Part {
        Tick end;
        std::int64_t amount;
        std::size_t activity;
    };
    for (std::size_t r = 0; r < model_.problem.resources.size(); ++r) {
        if (!model_.problem.resources[r].cumulative) continue;
        const Cumulative& cumulative = *model_.problem.resources[r].cumulative;
        std::vector<User> users;
        for (const Board::Booking& one : draft.board().bookings(static_cast<ResourceIndex>(r))) {
            if (one.end > one.start && one.amount > 0) users.push_back({one.start, one.end, one.amount, one.activity});
        }
        for (const Cumulative::Reserved& one : cumulative.reserved) {
            if (one.span.to > one.span.from && one.amount > 0)
                users.push_back({one.span.from, one.span.to, one.amount, kNobody});
        }
        std::sort(users.begin(), users.end());
        std::vector<Part> parts{{-kNever, cumulative.capacity, kNobody}};
        for (const User& user : users) {
            // What has been free for the shortest time, so that the rest stays free of orders.
            std::sort(parts.begin(), parts.end(), [](const Part& x, const Part& y) { return x.end > y.end; });
            std::int64_t left = user.amount;
            for (Part& part : parts) {
                if (part.end > user.start || left == 0 || part.amount == 0) continue;
                const std::int64_t taken = std::min(left, part.amount);
                part.amount -= taken;
                left -= taken;
                if (user.activity == kNobody) {
                    if (part.activity != kNobody) notAfter(part.activity, part.end, user.start);
                } else if (part.activity != kNobody) {
                    order(part.activity, part.end, user.activity, user.start, 0);
                } else {
                    notBefore(user.activity, user.start, part.end);
                }
            }
            std::erase_if(parts, [](const Part& part) { return part.amount == 0; });
            parts.push_back({user.end, user.amount - left, user.activity});
        }
    }
}

/// Flows keep their order; those of one moment stay together.
void Shift::gatherStocks(const Draft& draft) {
    for (std::size_t r = 0; r < model_.problem.resources.size(); ++r) {
        if (!model_.problem.resources[r].reservoir) continue;
        const std::vector<Stock::Booking>& bookings = draft.board().stock(static_cast<ResourceIndex>(r)).bookings();
        std::size_t first = 0; // of its moment
        for (std::size_t i = 1; i < bookings.size(); ++i) {
            if (bookings[i].when == bookings[first].when) {
                tie(bookings[first].activity, bookings[i].activity);
            } else {
                order(bookings[first].activity, bookings[first].when, bookings[i].activity, bookings[i].when, 0);
                first = i;
            }
        }
    }
}

void Shift::gatherExtents(const Draft& draft) {
    const std::vector<ExtentCost>& extents = model_.problem.costs.extents;
    for (std::size_t e = 0; e < extents.size(); ++e) {
        const Position first = units_ + 2 * e;
        const Position last = first + 1;
        bool isAny = false;
        for (std::size_t a = 0; a < model_.problem.activities.size(); ++a) {
            if (!draft.board().isPlaced(a)) continue;
            const Placed& placed = draft.board().placed(a);
            const Mode& mode = model_.mode(a, placed.mode);
            const auto isIt = [&](const auto& one) { return one.resource == *extents[e].resource; };
            const bool isOf = extents[e].worker
                                  ? std::find(placed.workers.begin(), placed.workers.end(), *extents[e].worker) !=
                                        placed.workers.end()
                                  : !extents[e].resource || std::any_of(mode.uses.begin(), mode.uses.end(), isIt) ||
                                        std::any_of(mode.flows.begin(), mode.flows.end(), isIt);
            if (!isOf) continue;
            const std::size_t unit = model_.unitOf[a];
            if (!std::exchange(isAny, true)) {
                time_[first] = placed.start;
                time_[last] = placed.end;
            }
            time_[first] = std::min(time_[first], std::int64_t{placed.start});
            time_[last] = std::max(time_[last], std::int64_t{placed.end});
            arcs_.push_back({first, unit, time_[unit] - placed.start});
            arcs_.push_back({unit, last, placed.end - time_[unit]});
        }
        if (!isAny) continue;
        const bool isLength = extents[e].of == ExtentCost::Of::Length;
        isHere_[first] = isLength || extents[e].of == ExtentCost::Of::First ? 1 : 0;
        isHere_[last] = isLength || extents[e].of == ExtentCost::Of::Last ? 1 : 0;
        lower_[first] = lower_[last] = -kEndless;
        upper_[first] = upper_[last] = kEndless;
    }
    std::erase_if(arcs_, [&](const Arc& arc) { return isHere_[arc.from] == 0 || isHere_[arc.to] == 0; });
}

Cost Shift::costAt(const Draft& draft, Position position, std::int64_t time) const {
    if (position < units_) {
        Cost cost = 0;
        const auto moved = static_cast<Tick>(time - time_[position]);
        const Unit& unit = model_.units[position];
        // What is in the draft is where it was at first; only the distance counts.
        const auto from = static_cast<Tick>(time_[position] - draft.startOfUnit(position));
        for (const std::size_t a : unit.members) {
            const Placed& placed = draft.board().placed(a);
            cost += draft.tally().ofTime(a, placed.start + from + moved, placed.end + from + moved);
        }
        return cost;
    }
    const ExtentCost& extent = model_.problem.costs.extents[(position - units_) / 2];
    if (extent.of != ExtentCost::Of::Length) return valueAt(extent.curve, static_cast<Tick>(time));
    const bool isFirst = (position - units_) % 2 == 0;
    const std::int64_t length = isFirst ? time_[position + 1] - time : time - time_[position - 1];
    return valueAt(extent.curve, static_cast<Tick>(length));
}

/// Ticks that way until its cost may change its slope.
std::int64_t Shift::untilBend(const Draft& draft, Position position, int way) const {
    if (position >= units_) {
        return model_.problem.costs.extents[(position - units_) / 2].curve.pieces.size() == 1 ? kEndless : 1;
    }
    const Unit& unit = model_.units[position];
    std::vector<Tick> corners;
    std::int64_t least = kEndless;
    const std::int64_t from = time_[position] - draft.startOfUnit(position);
    for (const std::size_t a : unit.members) {
        const Placed& placed = draft.board().placed(a);
        corners.clear();
        draft.tally().addCorners(a, placed.end - placed.start, corners);
        for (const Tick corner : corners) {
            const std::int64_t away = way * (corner - (placed.start + from));
            if (away > 0) least = std::min(least, away);
        }
    }
    return least;
}

bool Shift::step(const Draft& draft, int way) {
    const std::size_t source = time_.size();
    const std::size_t sink = source + 1;
    Cut cut(time_.size() + 2);
    std::int64_t gain = 0;
    for (Position p = 0; p < time_.size(); ++p) {
        if (isHere_[p] == 0) continue;
        if (way > 0 ? time_[p] >= upper_[p] : time_[p] <= lower_[p]) cut.add(p, sink, kEndless);
        const Cost less = costAt(draft, p, time_[p]) - costAt(draft, p, time_[p] + way);
        if (less > 0) {
            cut.add(source, p, less);
            gain += less;
        } else if (less < 0) {
            cut.add(p, sink, -less);
        }
    }
    if (gain == 0) return false;
    for (const Arc& arc : arcs_) {
        if (time_[arc.to] - time_[arc.from] != arc.least) continue;
        if (way > 0) {
            cut.add(arc.from, arc.to, kEndless);
        } else {
            cut.add(arc.to, arc.from, kEndless);
        }
    }
    if (cut.run(source, sink) >= gain) return false;
    std::int64_t far = kEndless;
    for (Position p = 0; p < time_.size(); ++p) {
        isMoving_[p] = isHere_[p] != 0 && cut.isOfSource(p) ? 1 : 0;
        if (isMoving_[p] == 0) continue;
        far = std::min({far, untilBend(draft, p, way), way > 0 ? upper_[p] - time_[p] : time_[p] - lower_[p]});
    }
    for (const Arc& arc : arcs_) {
        const bool isClosing = way > 0 ? isMoving_[arc.from] != 0 && isMoving_[arc.to] == 0
                                       : isMoving_[arc.to] != 0 && isMoving_[arc.from] == 0;
        if (isClosing) far = std::min(far, time_[arc.to] - time_[arc.from] - arc.least);
    }
    far = std::clamp<std::int64_t>(far, 1, kNever);
    for (Position p = 0; p < time_.size(); ++p) {
        if (isMoving_[p] != 0) time_[p] += way * far;
    }
    return true;
}

bool Shift::apply(Draft& draft) {
    const Cost before = draft.total();
    std::vector<std::pair<std::size_t, std::vector<Placed>>> moved;
    for (std::size_t u = 0; u < units_; ++u) {
        if (isHere_[u] == 0 || time_[u] == draft.startOfUnit(u)) continue;
        const auto by = static_cast<Tick>(time_[u] - draft.startOfUnit(u));
        std::vector<Placed> places;
        for (const std::size_t a : model_.units[u].members) {
            Placed placed = draft.board().placed(a);
            placed.start += by;
            placed.end += by;
            places.push_back(std::move(placed));
        }
        moved.emplace_back(u, std::move(places));
    }
    if (moved.empty()) return false;
    draft.mark();
    draft.takeAll(moved);
    bool isFine = true;
    for (std::size_t i = 0; i < moved.size() && isFine; ++i)
        isFine = draft.putIfFits(moved[i].first, moved[i].second, false);
    if (isFine && draft.isSound() && draft.total() < before) return true;
    draft.rollBack();
    return false;
}

} // namespace piewright::schedule
