#include "schedule/shop.h"

#include <algorithm>
#include <utility>

namespace piewright::schedule {

namespace {

constexpr std::size_t kElite = 8;

/// The lane of a demand for exactly one unit of one resource; 4 when it is not of that kind.
std::size_t laneOf(std::uint64_t amounts) {
    for (std::size_t lane = 0; lane < 4; ++lane) {
        if (amounts == std::uint64_t{1} << (16 * lane)) return lane;
    }
    return 4;
}

} // namespace

bool Shop::takes(const Project& project) {
    if (project.isCyclic || project.asksPeople()) return false;
    for (std::size_t a = 0; a < project.size; ++a) {
        if (project.due[a] < project.horizon) return false;
        for (const Project::Arc& arc : project.arcs[a]) {
            if (!arc.fromEnd || arc.toEnd || arc.least < 0) return false;
        }
        for (const Project::Way& way : project.ways[a]) {
            if (way.demands.size() > 1) return false;
            if (way.demands.size() == 1 && laneOf(way.demands.front().amounts) == 4) return false;
        }
    }
    for (const std::vector<std::uint64_t>& room : project.room) {
        for (const std::uint64_t left : room) {
            if (left != room.front()) return false;
            for (std::size_t lane = 0; lane < 4; ++lane) {
                if (((left >> (16 * lane)) & 0x7FFFU) > 1) return false;
            }
        }
    }
    return true;
}

Shop::Shop(const Project& project, std::uint64_t seed) : project_(project), dice_(seed) {
    const std::size_t n = project.size;
    machines_.resize(n);
    before_.resize(n);
    after_.resize(n);
    tabu_.resize(n);
    for (std::size_t a = 0; a < n; ++a) {
        for (const Project::Way& way : project.ways[a]) {
            machines_[a].push_back(
                way.demands.empty() ? kNone : way.demands.front().word * 4 + laneOf(way.demands.front().amounts));
        }
        tabu_[a].assign(machines_[a].size(), 0);
        for (const Project::Arc& arc : project.arcs[a]) {
            before_[a].push_back({static_cast<Item>(arc.from), arc.least});
            after_[arc.from].push_back({static_cast<Item>(a), arc.least});
        }
    }
    now_.lines.resize(project.room.size() * 4);
    now_.ways.assign(n, 0);
    previous_.assign(n, kNobody);
    next_.assign(n, kNobody);
    for (auto* times : {&duration_, &head_, &tail_, &freeHead_, &freeTail_}) times->assign(n, 0);
    place_.resize(n);
    open_.resize(n);
}

void Shop::link(std::size_t machine) {
    const std::vector<Item>& line = now_.lines[machine];
    for (std::size_t i = 0; i < line.size(); ++i) {
        previous_[line[i]] = i == 0 ? kNobody : line[i - 1];
        next_[line[i]] = i + 1 == line.size() ? kNobody : line[i + 1];
    }
}

void Shop::load(const State& state) {
    now_ = state;
    std::fill(previous_.begin(), previous_.end(), kNobody);
    std::fill(next_.begin(), next_.end(), kNobody);
    for (std::size_t m = 0; m < now_.lines.size(); ++m) link(m);
    for (std::size_t a = 0; a < project_.size; ++a) duration_[a] = project_.way(a, now_.ways[a]).duration;
    static_cast<void>(measure());
}

void Shop::take(const Plan& plan) {
    State state;
    state.ways = plan.ways;
    state.lines.resize(now_.lines.size());
    List list(project_.size);
    for (std::size_t a = 0; a < list.size(); ++a) list[a] = static_cast<Item>(a);
    std::stable_sort(list.begin(), list.end(), [&](Item a, Item b) { return plan.starts[a] < plan.starts[b]; });
    for (const Item a : list) {
        const std::size_t machine = machineOf(a, plan.ways[a]);
        if (machine != kNone) state.lines[machine].push_back(a);
    }
    load(state);
    local_ = kNever;
    keep();
}

bool Shop::measure() {
    const std::size_t n = project_.size;
    effort_ += n * 4;
    order_.clear();
    for (std::size_t a = 0; a < n; ++a) {
        open_[a] = before_[a].size() + (previous_[a] == kNobody ? 0 : 1);
        if (open_[a] == 0) order_.push_back(static_cast<Item>(a));
    }
    for (std::size_t i = 0; i < order_.size(); ++i) {
        const Item a = order_[i];
        place_[a] = i;
        Tick head = project_.release[a];
        for (const Link& link : before_[a]) head = std::max(head, head_[link.other] + duration_[link.other] + link.lag);
        if (previous_[a] != kNobody) head = std::max(head, head_[previous_[a]] + duration_[previous_[a]]);
        head_[a] = head;
        for (const Link& link : after_[a]) {
            if (--open_[link.other] == 0) order_.push_back(link.other);
        }
        if (next_[a] != kNobody && --open_[next_[a]] == 0) order_.push_back(next_[a]);
    }
    if (order_.size() < n) return false;
    end_ = 0;
    for (std::size_t i = n; i-- > 0;) {
        const Item a = order_[i];
        Tick tail = 0;
        for (const Link& link : after_[a]) tail = std::max(tail, link.lag + duration_[link.other] + tail_[link.other]);
        if (next_[a] != kNobody) tail = std::max(tail, duration_[next_[a]] + tail_[next_[a]]);
        tail_[a] = tail;
        end_ = std::max(end_, head_[a] + duration_[a] + tail);
    }
    return true;
}

void Shop::findCritical() {
    critical_.clear();
    // From a random last one back along a random critical path.
    Item now = kNobody;
    std::size_t ties = 0;
    for (std::size_t a = 0; a < project_.size; ++a) {
        if (head_[a] + duration_[a] == end_ && tail_[a] == 0 && dice_.below(++ties) == 0) now = static_cast<Item>(a);
    }
    while (now != kNobody) {
        if (machineOf(now, now_.ways[now]) != kNone) critical_.push_back(now);
        Item from = kNobody;
        ties = 0;
        const Item previous = previous_[now];
        if (previous != kNobody && head_[previous] + duration_[previous] == head_[now]) {
            from = previous;
            ties = 1;
        }
        for (const Link& link : before_[now]) {
            if (head_[link.other] + duration_[link.other] + link.lag == head_[now] && dice_.below(++ties) == 0) {
                from = link.other;
            }
        }
        now = from;
    }
}

void Shop::consider(Item activity, Move& best, Move& anyway) {
    const std::size_t n = project_.size;
    const Item v = activity;
    const int way = now_.ways[v];
    const std::size_t machine = machineOf(v, way);
    // Without v: it lasts no time and is on no machine.
    const Item previous = previous_[v];
    const Item next = next_[v];
    if (project_.ways[v].size() == 1 && previous == kNobody && next == kNobody) return;
    const Tick duration = std::exchange(duration_[v], 0);
    if (previous != kNobody) next_[previous] = next;
    if (next != kNobody) previous_[next] = previous;
    previous_[v] = kNobody;
    next_[v] = kNobody;
    std::vector<Item>& line = now_.lines[machine];
    const auto at = std::find(line.begin(), line.end(), v);
    const auto place = static_cast<std::size_t>(at - line.begin());
    line.erase(at);
    freeHead_ = head_;
    freeTail_ = tail_;
    Tick end = 0;
    for (std::size_t i = place_[v]; i < n; ++i) {
        const Item a = order_[i];
        Tick head = project_.release[a];
        for (const Link& link : before_[a]) {
            head = std::max(head, freeHead_[link.other] + duration_[link.other] + link.lag);
        }
        if (previous_[a] != kNobody) head = std::max(head, freeHead_[previous_[a]] + duration_[previous_[a]]);
        freeHead_[a] = head;
        end = std::max(end, head + duration_[a]);
    }
    for (std::size_t i = place_[v] + 1; i-- > 0;) {
        const Item a = order_[i];
        Tick tail = 0;
        for (const Link& link : after_[a]) {
            tail = std::max(tail, link.lag + duration_[link.other] + freeTail_[link.other]);
        }
        if (next_[a] != kNobody) tail = std::max(tail, duration_[next_[a]] + freeTail_[next_[a]]);
        freeTail_[a] = tail;
        end = std::max(end, freeHead_[a] + duration_[a] + tail);
    }
    effort_ += n * 3;
    const Tick head = freeHead_[v];
    const Tick tail = freeTail_[v];
    for (std::size_t w = 0; w < machines_[v].size(); ++w) {
        const std::size_t other = machines_[v][w];
        const Tick lasts = project_.ways[v][w].duration;
        const bool isTabu = tabu_[v][w] > moves_;
        Move move{v, static_cast<int>(w), 0, 0, 0};
        const auto offer = [&](Tick path, std::size_t where) {
            move.path = path;
            move.end = std::max(path, end);
            move.place = where;
            const auto isBetter = [&](const Move& than) {
                if (move.end != than.end) return move.end < than.end;
                if (move.path != than.path) return move.path < than.path;
                return dice_.below(2) == 0;
            };
            if ((!isTabu || move.end < best_.end) && isBetter(best)) best = move;
            if (isTabu && dice_.below(8) == 0 && isBetter(anyway)) anyway = move;
        };
        if (other == kNone) {
            if (static_cast<int>(w) != way) offer(head + lasts + tail, 0);
            continue;
        }
        const std::vector<Item>& row = now_.lines[other];
        const auto first = static_cast<std::size_t>(
            std::partition_point(row.begin(), row.end(), [&](Item x) { return freeHead_[x] + duration_[x] <= head; }) -
            row.begin());
        const auto last = static_cast<std::size_t>(
            std::partition_point(row.begin(), row.end(), [&](Item x) { return freeTail_[x] + duration_[x] > tail; }) -
            row.begin());
        const std::size_t from = std::min(first, last);
        const std::size_t to = std::max(first, last);
        for (std::size_t where = from; where <= to; ++where) {
            if (static_cast<int>(w) == way && where == place) continue;
            Tick early = head;
            Tick late = tail;
            if (where > 0) early = std::max(early, freeHead_[row[where - 1]] + duration_[row[where - 1]]);
            if (where < row.size()) late = std::max(late, freeTail_[row[where]] + duration_[row[where]]);
            offer(early + lasts + late, where);
        }
        effort_ += 2 * (to - from) + 8;
    }
    line.insert(line.begin() + static_cast<std::ptrdiff_t>(place), v);
    duration_[v] = duration;
    previous_[v] = previous;
    next_[v] = next;
    if (previous != kNobody) next_[previous] = v;
    if (next != kNobody) previous_[next] = v;
}

void Shop::apply(const Move& move) {
    const Item v = move.activity;
    const std::size_t machine = machineOf(v, now_.ways[v]);
    if (machine != kNone) {
        std::vector<Item>& line = now_.lines[machine];
        line.erase(std::find(line.begin(), line.end(), v));
        link(machine);
    }
    previous_[v] = kNobody;
    next_[v] = kNobody;
    now_.ways[v] = move.way;
    duration_[v] = project_.way(v, move.way).duration;
    const std::size_t other = machineOf(v, move.way);
    if (other == kNone) return;
    std::vector<Item>& row = now_.lines[other];
    row.insert(row.begin() + static_cast<std::ptrdiff_t>(move.place), v);
    link(other);
}

bool Shop::step() {
    ++moves_;
    findCritical();
    Move best;
    Move anyway;
    for (const Item v : critical_) consider(v, best, anyway);
    const Move& move = best.end != kNever ? best : anyway;
    if (move.end != kNever) {
        const Item v = move.activity;
        tabu_[v][static_cast<std::size_t>(now_.ways[v])] =
            moves_ + critical_.size() + machines_[v].size() + dice_.below(critical_.size() + 1) / 2;
        apply(move);
        if (!measure()) { // cannot be: such places admit no loop
            load(localState_);
        }
    } else {
        shake();
    }
    const Tick before = best_.end;
    ++stale_;
    keep();
    if (stale_ > 2000 + project_.size * 10) shake();
    return best_.end < before;
}

void Shop::keep() {
    if (end_ >= local_) return;
    local_ = end_;
    localState_ = now_;
    stale_ = 0;
    if (end_ >= best_.end) return;
    best_.starts = head_;
    best_.ways = now_.ways;
    best_.end = end_;
}

void Shop::shake() {
    // What the last walk came to may join the elite; then from one of them.
    const bool isKnown = std::any_of(elite_.begin(), elite_.end(), [&](const Elite& e) {
        return e.end == local_ && e.state.lines == localState_.lines;
    });
    if (!isKnown && local_ != kNever) {
        if (elite_.size() < kElite) {
            elite_.push_back({localState_, local_});
        } else {
            auto worst = std::max_element(elite_.begin(), elite_.end(),
                                          [](const Elite& a, const Elite& b) { return a.end < b.end; });
            if (local_ <= worst->end) *worst = {localState_, local_};
        }
    }
    stale_ = 0;
    local_ = kNever;
    if (elite_.empty()) return;
    load(elite_[dice_.below(elite_.size())].state);
    const std::size_t shakes = 5 + dice_.below(15);
    for (std::size_t i = 0; i < shakes; ++i) {
        findCritical();
        if (critical_.empty()) break;
        Move best;
        Move anyway;
        consider(critical_[dice_.below(critical_.size())], best, anyway);
        const Move& move = best.end != kNever ? best : anyway;
        if (move.end == kNever) continue;
        tabu_[move.activity][static_cast<std::size_t>(now_.ways[move.activity])] = moves_ + shakes + 10;
        apply(move);
        static_cast<void>(measure());
    }
}

} // namespace piewright::schedule
