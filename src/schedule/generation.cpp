#include "schedule/generation.h"

#include <algorithm>
#include <numeric>

namespace piewright::schedule {

namespace {
std::size_t index(Tick t) { return static_cast<std::size_t>(t); }
} // namespace

Generator::Generator(const Project& project)
    : project_(project), room_(project.room), busy_(project.away), byRank_(project.size) {
    std::iota(byRank_.begin(), byRank_.end(), Item{0});
    std::sort(byRank_.begin(), byRank_.end(), [&](Item a, Item b) { return project.rank[a] < project.rank[b]; });
    keys_.resize(project.size);
    if (!project.isCyclic) return;
    for (auto* times : {&soonest_, &latest_, &earliest_, &furthest_}) times->resize(project.size);
    isPlaced_.resize(project.size);
    position_.resize(project.size);
}

void Generator::clear() {
    if (touchedFrom_ >= touchedTo_) return;
    const auto from = static_cast<std::ptrdiff_t>(touchedFrom_);
    const auto to = static_cast<std::ptrdiff_t>(touchedTo_);
    for (std::size_t w = 0; w < room_.size(); ++w) {
        std::copy(project_.room[w].begin() + from, project_.room[w].begin() + to, room_[w].begin() + from);
    }
    if (!busy_.empty()) std::copy(project_.away.begin() + from, project_.away.begin() + to, busy_.begin() + from);
    touchedFrom_ = kNever;
    touchedTo_ = 0;
}

Tick Generator::fit(Tick from, Tick last, const Project::Way& way, People& crew) {
    const Tick duration = way.duration;
    if (duration == 0 || (way.demands.empty() && !way.asksPeople)) return from <= last ? from : kNever;
    last = std::min(last, project_.horizon - duration);
    Tick checked = from; // ticks before it, from the start on, have room
    Tick start = from;
    while (start <= last) {
        const Tick end = start + duration;
        Tick blocked = -1;
        if (way.demands.size() == 1) {
            const std::uint64_t* const room = room_[way.demands.front().word].data();
            const std::uint64_t amounts = way.demands.front().amounts;
            for (Tick t = end - 1; t >= checked; --t) {
                if (((room[t] - amounts) & kGuards) != kGuards) {
                    blocked = t;
                    break;
                }
            }
        } else {
            for (Tick t = end - 1; t >= checked && blocked < 0; --t) {
                for (const Project::Demand& demand : way.demands) {
                    if (((room_[demand.word][index(t)] - demand.amounts) & kGuards) != kGuards) blocked = t;
                }
            }
        }
        effort_ += static_cast<std::uint64_t>(end - std::max(checked, blocked)) + 4;
        checked = std::max(checked, end);
        if (blocked >= 0) {
            start = blocked + 1;
            continue;
        }
        if (!way.asksPeople) return start;
        People taken;
        for (Tick t = start; t < end; ++t) taken = taken | busy_[index(t)];
        People all{{~std::uint64_t{0}, ~std::uint64_t{0}}};
        effort_ += static_cast<std::uint64_t>(duration) + 16;
        if (choosePeople(project_, way, all - taken, crew)) return start;
        ++start;
    }
    return kNever;
}

void Generator::occupy(Tick start, const Project::Way& way, People crew) {
    const Tick end = start + way.duration;
    effort_ += static_cast<std::uint64_t>(way.duration) + 12;
    if (way.duration == 0) return;
    touchedFrom_ = std::min(touchedFrom_, start);
    touchedTo_ = std::max(touchedTo_, end);
    for (const Project::Demand& demand : way.demands) {
        std::uint64_t* const room = room_[demand.word].data();
        for (Tick t = start; t < end; ++t) room[t] -= demand.amounts;
    }
    if (!way.asksPeople) return;
    for (Tick t = start; t < end; ++t) busy_[index(t)] = busy_[index(t)] | crew;
}

void Generator::vacate(Tick start, const Project::Way& way, People crew) {
    const Tick end = start + way.duration;
    for (const Project::Demand& demand : way.demands) {
        std::uint64_t* const room = room_[demand.word].data();
        for (Tick t = start; t < end; ++t) room[t] += demand.amounts;
    }
    if (!way.asksPeople) return;
    for (Tick t = start; t < end; ++t) busy_[index(t)] = busy_[index(t)] - crew;
}

bool Generator::serial(std::span<const Item> list, Tick floor, Tick limit, Plan& plan) {
    plan.starts.resize(project_.size);
    if (project_.asksPeople()) plan.crews.resize(project_.size);
    clear();
    effort_ += 300 + 12 * project_.size;
    return project_.isCyclic ? bulldoze(list, floor, limit, plan) : acyclic(list, floor, limit, plan);
}

bool Generator::acyclic(std::span<const Item> list, Tick floor, Tick limit, Plan& plan) {
    plan.end = 0;
    for (const Item a : list) {
        const Project::Way& way = project_.way(a, plan.ways[a]);
        Tick from = std::max(floor, project_.release[a]);
        for (const Project::Arc& arc : project_.arcs[a]) {
            from = std::max(
                from, plan.starts[arc.from] +
                          Project::weight(arc, project_.way(arc.from, plan.ways[arc.from]).duration, way.duration));
        }
        effort_ += project_.arcs[a].size() * 2 + 8;
        People crew = way.asksPeople ? plan.crews[a] : People{};
        const Tick start = fit(from, std::min(limit, project_.due[a]) - way.duration, way, crew);
        if (start == kNever) {
            culprit_ = a;
            return false;
        }
        occupy(start, way, crew);
        plan.starts[a] = start;
        if (way.asksPeople) plan.crews[a] = crew;
        plan.end = std::max(plan.end, start + way.duration);
    }
    return true;
}

void Generator::narrow(std::size_t activity, Tick start) {
    const std::size_t n = project_.size;
    const Tick* const after = project_.matrix.data() + activity * n;
    const Tick* const before = project_.transposed.data() + activity * n;
    for (std::size_t k = 0; k < n; ++k) {
        earliest_[k] = std::max(earliest_[k], start + after[k]);
        furthest_[k] = std::min(furthest_[k], start - before[k]);
    }
    effort_ += n / 3 + 4;
}

bool Generator::bulldoze(std::span<const Item> list, Tick floor, Tick limit, Plan& plan) {
    const std::size_t n = project_.size;
    for (std::size_t a = 0; a < n; ++a) {
        soonest_[a] = std::max(floor, project_.release[a]);
        latest_[a] = std::min(project_.due[a] - project_.ways[a].front().duration, limit - project_.tail[a]);
    }
    earliest_ = soonest_;
    furthest_ = latest_;
    std::fill(isPlaced_.begin(), isPlaced_.end(), char{0});
    for (std::size_t i = 0; i < n; ++i) position_[list[i]] = i;
    plan.end = 0;
    std::size_t next = 0;
    std::size_t patience = 4 * n + 40; // what may be taken out again
    while (true) {
        while (next < n && isPlaced_[list[next]] != 0) ++next;
        if (next == n) break;
        const std::size_t a = list[next];
        culprit_ = a;
        const Project::Way& way = project_.ways[a].front();
        People crew = way.asksPeople ? plan.crews[a] : People{};
        // Beyond furthest_ something must give way; beyond latest_ nothing helps.
        const Tick start = fit(earliest_[a], latest_[a], way, crew);
        if (start == kNever) return false;
        if (start <= furthest_[a]) {
            occupy(start, way, crew);
            plan.starts[a] = start;
            if (way.asksPeople) plan.crews[a] = crew;
            isPlaced_[a] = 1;
            narrow(a, start);
            ++next;
            continue;
        }
        const Tick* const after = project_.matrix.data() + a * n;
        for (std::size_t i = 0; i < n; ++i) {
            if (isPlaced_[i] == 0 || plan.starts[i] >= start + after[i]) continue;
            const Tick soonest = start + after[i];
            if (soonest > latest_[i]) return false;
            const Tick* const onward = project_.matrix.data() + i * n;
            for (std::size_t k = 0; k < n; ++k) soonest_[k] = std::max(soonest_[k], soonest + onward[k]);
            effort_ += n / 4;
        }
        earliest_ = soonest_;
        furthest_ = latest_;
        for (std::size_t i = 0; i < n; ++i) {
            if (isPlaced_[i] == 0) continue;
            if (plan.starts[i] < soonest_[i]) {
                vacate(plan.starts[i], project_.ways[i].front(), project_.asksPeople() ? plan.crews[i] : People{});
                isPlaced_[i] = 0;
                next = std::min(next, position_[i]);
                if (--patience == 0) return false;
            } else {
                narrow(i, plan.starts[i]);
            }
        }
    }
    for (std::size_t a = 0; a < n; ++a) {
        plan.end = std::max(plan.end, plan.starts[a] + project_.ways[a].front().duration);
    }
    return true;
}

bool Generator::parallel(std::span<const double> keys, Plan& plan) {
    const std::size_t n = project_.size;
    plan.starts.resize(n);
    if (project_.asksPeople()) plan.crews.resize(n);
    clear();
    plan.end = 0;
    std::vector<std::vector<Item>> after(n);
    std::vector<std::size_t> open(n);
    for (std::size_t a = 0; a < n; ++a) {
        open[a] = project_.arcs[a].size();
        for (const Project::Arc& arc : project_.arcs[a]) after[arc.from].push_back(static_cast<Item>(a));
    }
    std::vector<Tick> from = project_.release;
    List ready;
    for (std::size_t a = 0; a < n; ++a) {
        if (open[a] == 0) ready.push_back(static_cast<Item>(a));
    }
    std::size_t placed = 0;
    for (Tick now = 0; placed < n && now <= project_.horizon;) {
        std::sort(ready.begin(), ready.end(),
                  [&](Item a, Item b) { return keys[a] != keys[b] ? keys[a] < keys[b] : a < b; });
        bool isAny = false;
        for (std::size_t i = 0; i < ready.size(); ++i) {
            const Item a = ready[i];
            if (from[a] > now) continue;
            const Project::Way& way = project_.way(a, plan.ways[a]);
            People crew = way.asksPeople ? plan.crews[a] : People{};
            const Tick last = std::min(now, project_.due[a] - way.duration);
            if (fit(now, last, way, crew) == kNever) continue;
            occupy(now, way, crew);
            plan.starts[a] = now;
            if (way.asksPeople) plan.crews[a] = crew;
            plan.end = std::max(plan.end, now + way.duration);
            ready.erase(ready.begin() + static_cast<std::ptrdiff_t>(i));
            ++placed;
            for (const Item next : after[a]) {
                for (const Project::Arc& arc : project_.arcs[next]) {
                    if (arc.from != a) continue;
                    from[next] =
                        std::max(from[next], now + Project::weight(arc, way.duration,
                                                                   project_.way(next, plan.ways[next]).duration));
                }
                if (--open[next] == 0) ready.push_back(next);
            }
            isAny = true;
            break; // in order of keys again
        }
        if (!isAny) ++now;
    }
    return placed == n;
}

void Generator::listBy(std::span<const Tick> keys, List& list) {
    const std::size_t n = project_.size;
    effort_ += n * 3;
    keys_.assign(keys.begin(), keys.end());
    for (const Item a : byRank_) {
        for (const Project::Arc& arc : project_.arcs[a]) {
            if (!project_.isCyclic || arc.least > 0) keys_[a] = std::max(keys_[a], keys_[arc.from]);
        }
    }
    const auto [low, high] = std::minmax_element(keys_.begin(), keys_.end());
    const Tick first = *low;
    list.resize(n);
    bucket_.assign(index(*high - first) + 2, 0);
    for (const Tick key : keys_) ++bucket_[index(key - first) + 1];
    for (std::size_t i = 1; i < bucket_.size(); ++i) bucket_[i] += bucket_[i - 1];
    for (const Item a : byRank_) list[bucket_[index(keys_[a] - first)]++] = a;
}

} // namespace piewright::schedule
