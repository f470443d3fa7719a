#include "schedule/population.h"

#include <algorithm>

namespace piewright::schedule {

namespace {

std::uint64_t printOf(const Plan& plan) {
    std::uint64_t print = 1469598103934665603U; // FNV-1a
    for (std::size_t a = 0; a < plan.starts.size(); ++a) {
        print = (print ^ static_cast<std::uint64_t>(plan.starts[a] * 64 + plan.ways[a])) * 1099511628211U;
    }
    return print;
}

constexpr std::size_t kMostInParallel = 600; ///< activities: it takes O(n^2)
/// The population is small at first and after each restart twice as large, until it begins anew.
constexpr std::size_t kSmallest = 40;
constexpr std::size_t kLargest = 160;
constexpr std::size_t kPatience = 150; ///< children without a better one, for each member
constexpr double kRuins = 0.8;         ///< of the children; the others are crossed
constexpr double kMoves = 0.25;        ///< of the children, where there are greatest lags
constexpr double kPeaks = 0.5;         ///< of those crossed
constexpr double kMutations = 0.02;    ///< of the activities of a child
constexpr double kReach = 0.1;         ///< of a mutation, of the makespan
constexpr double kWindow = 0.3;        ///< at most, of the makespan

} // namespace

Population::Population(const Project& project, const Project& back, std::uint64_t seed)
    : project_(project), back_(back), forward_(project), backward_(back), dice_(seed) {
    capacity_ = kSmallest;
    load_.assign(project.size, 0);
    weight_.assign(project.size, 0);
    longest_ = std::max(1, *std::max_element(project.tail.begin(), project.tail.end()));
    std::vector<std::int64_t> most(project.room.size() * 4, 1);
    for (std::size_t w = 0; w < project.room.size(); ++w) {
        for (const std::uint64_t room : project.room[w]) {
            for (std::size_t lane = 0; lane < 4; ++lane) {
                most[w * 4 + lane] =
                    std::max(most[w * 4 + lane], static_cast<std::int64_t>((room >> (16 * lane)) & 0x7FFFU));
            }
        }
    }
    for (std::size_t a = 0; a < project.size; ++a) {
        const Project::Way& way = project.ways[a].front();
        for (const Project::Demand& demand : way.demands) {
            for (std::size_t lane = 0; lane < 4; ++lane) {
                load_[a] += 1000 * static_cast<std::int64_t>((demand.amounts >> (16 * lane)) & 0x7FFFU) /
                            most[demand.word * 4 + lane];
            }
        }
        for (const Project::Way::Need& need : way.needs) load_[a] += std::int64_t{1000} * need.count;
    }
}

std::vector<double> Population::keysOf(std::size_t rule) const {
    const std::size_t n = project_.size;
    std::vector<double> keys(n, 0.0);
    const auto duration = [&](std::size_t a) { return static_cast<double>(project_.ways[a].front().duration); };
    for (std::size_t a = 0; a < n; ++a) {
        const double tail = static_cast<double>(project_.tail[a]);
        if (rule == 0) keys[a] = -tail;
        if (rule == 1) keys[a] = duration(a) - tail;
        if (rule == 2) keys[a] = static_cast<double>(project_.head[a]);
        if (rule == 3) keys[a] = -duration(a);
    }
    if (rule == 3) { // greatest rank positional weight
        for (std::size_t a = 0; a < n; ++a) {
            for (const Project::Arc& arc : project_.arcs[a]) keys[arc.from] -= duration(a);
        }
    }
    if (rule == 4) { // most total successors
        std::vector<std::vector<bool>> after(n, std::vector<bool>(n, false));
        std::vector<std::size_t> order(n);
        for (std::size_t a = 0; a < n; ++a) order[project_.rank[a]] = a;
        for (auto it = order.rbegin(); it != order.rend(); ++it) {
            for (const Project::Arc& arc : project_.arcs[*it]) {
                after[arc.from][*it] = true;
                for (std::size_t k = 0; k < n; ++k) {
                    if (after[*it][k]) after[arc.from][k] = true;
                }
            }
        }
        for (std::size_t a = 0; a < n; ++a) {
            keys[a] = -static_cast<double>(std::count(after[a].begin(), after[a].end(), true));
        }
    }
    return keys;
}

bool Population::rule(std::size_t number) {
    const std::vector<double> keys = keysOf(number / 2);
    child_.plan.ways.assign(project_.size, 0);
    child_.plan.crews.assign(project_.asksPeople() ? project_.size : 0, {});
    if (project_.isFlexible) {
        for (std::size_t a = 0; a < project_.size; ++a) {
            for (std::size_t w = 0; w < project_.ways[a].size(); ++w) {
                if (project_.ways[a][w].duration < project_.way(a, child_.plan.ways[a]).duration) {
                    child_.plan.ways[a] = static_cast<int>(w);
                }
            }
        }
    }
    if (number % 2 == 1) {
        if (project_.isCyclic || project_.size > kMostInParallel || !forward_.parallel(keys, child_.plan)) return false;
        return settle();
    }
    keys_.resize(project_.size);
    for (std::size_t a = 0; a < keys_.size(); ++a) keys_[a] = static_cast<Tick>(keys[a]);
    return build();
}

bool Population::sample() {
    const std::size_t n = project_.size;
    keys_.resize(n);
    const Tick range = std::max(1, static_cast<Tick>(static_cast<double>(longest_) * dice_.share() * 0.5));
    child_.plan.ways.assign(n, 0);
    child_.plan.crews.assign(project_.asksPeople() ? n : 0, {});
    const bool anyCrew = dice_.below(2) == 0;
    const bool useHead = dice_.below(4) == 0;
    for (std::size_t a = 0; a < n; ++a) {
        keys_[a] = (useHead ? project_.head[a] : -project_.tail[a]) + dice_.between(0, range);
        if (project_.isCyclic) keys_[a] -= weight_[a];
        if (project_.isFlexible) child_.plan.ways[a] = static_cast<int>(dice_.below(project_.ways[a].size()));
        if (project_.asksPeople() && anyCrew) child_.plan.crews[a] = anyone();
    }
    return build();
}

bool Population::build() {
    // Half of them are built from the end, half from the beginning: each way finds what the other does not (Debels,
    // Vanhoucke 2005, Lecture Notes in Computer Science 3483).
    if (dice_.below(2) == 0) return buildBackwards();
    forward_.listBy(keys_, list_);
    if (!forward_.serial(list_, 0, project_.horizon, child_.plan)) {
        squeak(forward_.culprit());
        return false;
    }
    return settle();
}

bool Population::buildBackwards() {
    Plan& plan = child_.plan;
    for (std::size_t a = 0; a < keys_.size(); ++a) keys_[a] = -keys_[a] - project_.way(a, plan.ways[a]).duration;
    turned_.ways = plan.ways;
    turned_.crews = plan.crews;
    backward_.listBy(keys_, list_);
    if (!backward_.serial(list_, 0, project_.horizon, turned_)) {
        squeak(backward_.culprit());
        return false;
    }
    if (!goForward(plan)) return false;
    assess();
    return true;
}

bool Population::goForward(Plan& plan) {
    for (std::size_t a = 0; a < keys_.size(); ++a) {
        keys_[a] = project_.horizon - turned_.starts[a] - project_.way(a, turned_.ways[a]).duration;
    }
    plan.ways = turned_.ways;
    plan.crews = turned_.crews;
    forward_.listBy(keys_, list_);
    return forward_.serial(list_, 0, project_.horizon, plan);
}

void Population::assess() {
    const Plan& plan = child_.plan;
    child_.print = printOf(plan);
    child_.score = 0;
    for (std::size_t a = 0; a < plan.starts.size(); ++a) {
        child_.score += load_[a] * plan.starts[a] * project_.way(a, plan.ways[a]).duration;
    }
}

void Population::squeak(std::size_t activity) {
    weight_[activity] += 1 + static_cast<Tick>(dice_.below(8));
    if (weight_[activity] < 2 * longest_) return;
    for (Tick& weight : weight_) weight /= 2;
}

bool Population::settle() {
    Plan& plan = child_.plan;
    const std::size_t n = project_.size;
    turned_.ways = plan.ways;
    turned_.crews = plan.crews;
    keys_.resize(n);
    const Tick horizon = project_.horizon;
    for (std::size_t a = 0; a < n; ++a) {
        keys_[a] = horizon - plan.starts[a] - project_.way(a, plan.ways[a]).duration;
    }
    backward_.listBy(keys_, list_);
    if (backward_.serial(list_, horizon - plan.end, horizon, turned_) && goForward(again_) && again_.end <= plan.end) {
        std::swap(plan, again_);
    }
    assess();
    return true;
}

void Population::keysFromTimes(const One& one) {
    keys_ = one.plan.starts;
    child_.plan.ways = one.plan.ways;
    child_.plan.crews = one.plan.crews;
}

const Population::One& Population::choose() {
    const One& a = members_[dice_.below(members_.size())];
    const One& b = members_[dice_.below(members_.size())];
    return b.isBetterThan(a) ? b : a;
}

void Population::inherit(std::size_t activity, const One& from) {
    child_.plan.ways[activity] = from.plan.ways[activity];
    if (project_.asksPeople()) child_.plan.crews[activity] = from.plan.crews[activity];
}

People Population::anyone() {
    const auto half = [this] {
        return std::uint64_t{dice_.below(std::size_t{1} << 31)} << 32 | dice_.below(std::size_t{1} << 31);
    };
    return {{half(), half()}};
}

void Population::twoPoints(const One& mother, const One& father) {
    const Tick end = std::max(mother.plan.end, father.plan.end) + 1;
    const Tick one = dice_.between(0, mother.plan.end);
    const Tick other = dice_.between(0, mother.plan.end);
    const Tick from = std::min(one, other);
    const Tick to = std::max(one, other);
    for (std::size_t a = 0; a < keys_.size(); ++a) {
        const Tick start = mother.plan.starts[a];
        if (start < from) {
            keys_[a] = start;
        } else if (start >= to) {
            keys_[a] = start + 2 * end;
        } else {
            keys_[a] = end + father.plan.starts[a];
            inherit(a, father);
        }
    }
}

void Population::peak(const One& mother, const One& father) {
    const Tick end = std::max(mother.plan.end, father.plan.end) + 1;
    const auto ticks = static_cast<std::size_t>(father.plan.end);
    use_.assign(ticks + 2, 0);
    for (std::size_t a = 0; a < keys_.size(); ++a) {
        const auto start = static_cast<std::size_t>(father.plan.starts[a]);
        use_[start + 1] += load_[a];
        use_[start + 1 + static_cast<std::size_t>(project_.way(a, father.plan.ways[a]).duration)] -= load_[a];
    }
    for (int pass = 0; pass < 2; ++pass) {
        for (std::size_t t = 1; t < use_.size(); ++t) use_[t] += use_[t - 1];
    }
    const auto length = static_cast<std::size_t>(dice_.between(father.plan.end / 4, father.plan.end * 3 / 4));
    std::size_t best = 0;
    for (std::size_t t = 0; t + length <= ticks; ++t) {
        if (use_[t + length] - use_[t] > use_[best + length] - use_[best]) best = t;
    }
    const Tick from = static_cast<Tick>(best);
    const Tick to = static_cast<Tick>(best + length);
    for (std::size_t a = 0; a < keys_.size(); ++a) {
        const Tick start = father.plan.starts[a];
        const Tick finish = start + project_.way(a, father.plan.ways[a]).duration;
        if (start >= from && finish <= to) {
            keys_[a] = end + start;
            inherit(a, father);
        } else {
            keys_[a] = mother.plan.starts[a] + (mother.plan.starts[a] < from ? 0 : 2 * end);
        }
    }
}

void Population::mutate() {
    const std::size_t n = keys_.size();
    const Tick reach = std::max(2, best_.end == kNever ? 2 : static_cast<Tick>(kReach * best_.end));
    for (std::size_t a = 0; a < n; ++a) {
        if (dice_.share() < kMutations) keys_[a] += dice_.between(-reach, reach);
        if (project_.isFlexible && dice_.share() < kMutations) {
            child_.plan.ways[a] = static_cast<int>(dice_.below(project_.ways[a].size()));
        }
        if (project_.asksPeople() && dice_.share() < kMutations) child_.plan.crews[a] = anyone();
    }
}

bool Population::cross() {
    const One& mother = choose();
    const One& father = choose();
    keysFromTimes(mother);
    if (dice_.share() < kPeaks) {
        peak(mother, father);
    } else {
        twoPoints(mother, father);
    }
    mutate();
    return build();
}

bool Population::ruin(const One& from) {
    keysFromTimes(from);
    const Tick length = std::max(2, static_cast<Tick>(kWindow * dice_.share() * from.plan.end));
    const Tick begin = dice_.between(-length / 2, from.plan.end);
    for (std::size_t a = 0; a < keys_.size(); ++a) {
        const Tick middle = keys_[a];
        if (middle >= begin && middle < begin + length) keys_[a] = begin + dice_.between(0, length);
    }
    return build();
}

bool Population::move(const One& from) {
    keysFromTimes(from);
    const std::size_t component = project_.component[dice_.below(project_.size)];
    const Tick reach = std::max(2, from.plan.end / 2);
    const Tick by = dice_.between(-reach, reach);
    for (std::size_t a = 0; a < keys_.size(); ++a) {
        if (project_.component[a] == component) keys_[a] += by;
    }
    return build();
}

bool Population::keep() {
    const bool isBetter = child_.plan.end < best_.end;
    if (isBetter) best_ = child_.plan;
    for (const One& one : members_) {
        if (one.print == child_.print) return isBetter;
    }
    child_.age = tried_;
    if (members_.size() < capacity_) {
        members_.push_back(child_);
        return isBetter;
    }
    auto worst = std::max_element(members_.begin(), members_.end(), [](const One& a, const One& b) {
        return a.isBetterThan(b) || (!b.isBetterThan(a) && a.age > b.age);
    });
    if (!worst->isBetterThan(child_)) {
        if (child_.plan.end <
            std::min_element(
                members_.begin(), members_.end(), [](const One& a, const One& b) { return a.plan.end < b.plan.end; })
                ->plan.end) {
            stale_ = 0;
        }
        *worst = child_;
    }
    return isBetter;
}

void Population::restart() {
    members_.clear();
    stale_ = 0;
    capacity_ = capacity_ < kLargest ? capacity_ * 2 : kSmallest;
}

bool Population::step() {
    const std::size_t number = tried_++;
    bool isBuilt = false;
    if (number < 10) {
        isBuilt = rule(number);
    } else if (members_.size() < capacity_ && (members_.size() < 2 || number % 4 != 0)) {
        isBuilt = sample();
    } else {
        ++stale_;
        if (project_.isCyclic && dice_.share() < kMoves) {
            isBuilt = move(choose());
        } else {
            isBuilt = dice_.share() < kRuins ? ruin(choose()) : cross();
        }
    }
    const bool isBetter = isBuilt && keep();
    if (stale_ > kPatience * capacity_) restart();
    return isBetter;
}

void Population::take(const Plan& plan) {
    child_.plan = plan;
    child_.print = printOf(plan);
    static_cast<void>(keep());
}

} // namespace piewright::schedule
