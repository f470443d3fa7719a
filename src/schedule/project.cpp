#include "schedule/project.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace piewright::schedule {

namespace {

constexpr std::size_t kMostActivities = 2000;
constexpr std::size_t kMostInMatrix = 1000;
constexpr Tick kMostTicks = 65'536;
constexpr int kMostCapacity = 0x7FFF;

bool costsMakespanOnly(const Problem& problem) {
    const Costs& costs = problem.costs;
    if (!costs.times.empty() || !costs.loads.empty() || !costs.work.empty() || !costs.handOvers.empty() ||
        !costs.before.empty() || costs.extents.size() > 1) {
        return false;
    }
    for (const ExtentCost& extent : costs.extents) {
        if (extent.of != ExtentCost::Of::Last || extent.resource || extent.worker) return false;
        if (extent.curve.pieces.size() != 1 || extent.curve.pieces.front().perTick <= 0) return false;
    }
    return true;
}

bool isOfTheKind(const Problem& problem) {
    if (problem.activities.empty() || problem.activities.size() > kMostActivities || problem.workers.size() > 128 ||
        problem.skills.size() > 64 || !problem.stays.empty() || !problem.implications.empty()) {
        return false;
    }
    if (!costsMakespanOnly(problem)) return false;
    for (const Resource& resource : problem.resources) {
        if (resource.cumulative.has_value() == resource.machine.has_value()) return false;
        if (!resource.machine) continue;
        const Machine& machine = *resource.machine;
        if (machine.together != 1 || !machine.setup.empty() || !machine.first.empty() || !machine.setupCost.empty() ||
            !machine.firstCost.empty()) {
            return false;
        }
    }
    for (const Activity& activity : problem.activities) {
        if (activity.isOptional) return false;
        for (const Mode& mode : activity.modes) {
            if (!mode.flows.empty() || !mode.pauses.empty() || mode.cost != 0 || mode.needs.size() > 64) return false;
            if (mode.duration > 0) continue;
            if (!mode.needs.empty() || !mode.team.empty()) return false;
            for (const Use& use : mode.uses) {
                if (problem.resources[at(use.resource)].machine) return false;
            }
        }
    }
    return true;
}

/// The greatest common divisor of all times that matter.
Tick commonScale(const Problem& problem) {
    Tick scale = 0;
    const auto add = [&](Tick t) { scale = std::gcd(scale, t); };
    const auto addSpan = [&](const Span& span) {
        if (span.from > 0 && span.from < problem.horizon) add(span.from);
        if (span.to > 0 && span.to < problem.horizon) add(span.to);
    };
    for (const Activity& activity : problem.activities) {
        add(activity.release);
        for (const Mode& mode : activity.modes) add(mode.duration);
    }
    for (const Lag& lag : problem.lags) add(lag.least);
    for (const Resource& resource : problem.resources) {
        if (resource.cumulative) {
            for (const Cumulative::Reserved& reserved : resource.cumulative->reserved) addSpan(reserved.span);
        } else {
            for (const Span& span : resource.machine->away) addSpan(span);
        }
    }
    for (const Worker& worker : problem.workers) {
        for (const Span& span : worker.present) addSpan(span);
    }
    return std::max(scale, 1);
}

class Maker {
  public:
    explicit Maker(const Problem& problem) : problem_(problem) {}

    std::optional<Project> make() {
        project_.scale = commonScale(problem_);
        project_.size = problem_.activities.size();
        const Tick horizon = problem_.horizon / project_.scale;
        if (horizon < 0 || horizon > kMostTicks) return std::nullopt;
        project_.horizon = horizon;
        addPeople();
        if (!addResources() || !addActivities() || !addLags()) return std::nullopt;
        return std::move(project_);
    }

  private:
    [[nodiscard]] std::size_t tick(Tick t) const {
        return static_cast<std::size_t>(std::clamp(t / project_.scale, 0, project_.horizon));
    }

    void addPeople() {
        const bool asks = std::any_of(problem_.activities.begin(), problem_.activities.end(), [](const Activity& a) {
            return std::any_of(a.modes.begin(), a.modes.end(),
                               [](const Mode& m) { return !m.needs.empty() || !m.team.empty(); });
        });
        if (!asks) return;
        // Where a skill is short of people, whoever has it is kept for it.
        std::vector<double> worth(problem_.skills.size(), 0.0);
        for (const Activity& activity : problem_.activities) {
            for (const Mode& mode : activity.modes) {
                for (const SkillNeed& need : mode.needs) {
                    worth[at(need.skill)] += static_cast<double>(need.count) * static_cast<double>(mode.duration);
                }
            }
        }
        std::vector<double> people(problem_.skills.size(), 0.0);
        for (const Worker& worker : problem_.workers) {
            for (const SkillIndex skill : worker.skills) people[at(skill)] += 1.0;
        }
        std::vector<double> weight(problem_.workers.size(), 0.0);
        for (std::size_t w = 0; w < problem_.workers.size(); ++w) {
            for (const SkillIndex skill : problem_.workers[w].skills) weight[w] += worth[at(skill)] / people[at(skill)];
        }
        for (std::size_t w = 0; w < problem_.workers.size(); ++w) {
            project_.who.push_back(static_cast<WorkerIndex>(w));
        }
        std::stable_sort(project_.who.begin(), project_.who.end(),
                         [&](WorkerIndex a, WorkerIndex b) { return weight[at(a)] < weight[at(b)]; });
        place_.resize(problem_.workers.size());
        project_.skilled.resize(problem_.skills.size());
        People all;
        for (std::size_t p = 0; p < project_.who.size(); ++p) {
            place_[at(project_.who[p])] = p;
            all.add(p);
            for (const SkillIndex skill : problem_.workers[at(project_.who[p])].skills) {
                project_.skilled[at(skill)].add(p);
            }
        }
        project_.away.assign(static_cast<std::size_t>(project_.horizon), all);
        for (std::size_t p = 0; p < project_.who.size(); ++p) {
            for (const Span& span : problem_.workers[at(project_.who[p])].present) {
                for (std::size_t t = tick(span.from); t < tick(span.to); ++t) project_.away[t].remove(p);
            }
        }
    }

    /// Gives a lane to each resource that can run short.
    bool addResources() {
        std::vector<std::int64_t> wanted(problem_.resources.size(), 0);
        for (const Activity& activity : problem_.activities) {
            std::vector<std::int64_t> most(problem_.resources.size(), 0);
            for (const Mode& mode : activity.modes) {
                for (const Use& use : mode.uses) {
                    most[at(use.resource)] = std::max<std::int64_t>(most[at(use.resource)], use.amount);
                }
            }
            for (std::size_t r = 0; r < most.size(); ++r) wanted[r] += most[r];
        }
        lane_.assign(problem_.resources.size(), kNoLane);
        std::size_t lanes = 0;
        for (std::size_t r = 0; r < problem_.resources.size(); ++r) {
            const Resource& resource = problem_.resources[r];
            const int capacity = resource.cumulative ? resource.cumulative->capacity : 1;
            const bool isReserved =
                resource.cumulative ? !resource.cumulative->reserved.empty() : !resource.machine->away.empty();
            if (wanted[r] == 0 || (wanted[r] <= capacity && !isReserved)) continue;
            if (capacity > kMostCapacity) return false;
            lane_[r] = lanes++;
            if (lanes > project_.room.size() * 4) {
                project_.room.emplace_back(static_cast<std::size_t>(project_.horizon), kGuards);
            }
            std::vector<std::int64_t> left(static_cast<std::size_t>(project_.horizon), capacity);
            const auto take = [&](const Span& span, int amount) {
                for (std::size_t t = tick(span.from); t < tick(span.to); ++t) left[t] -= amount;
            };
            if (resource.cumulative) {
                for (const Cumulative::Reserved& reserved : resource.cumulative->reserved) {
                    take(reserved.span, reserved.amount);
                }
            } else {
                for (const Span& span : resource.machine->away) take(span, 1);
            }
            std::vector<std::uint64_t>& room = project_.room[lane_[r] / 4];
            for (std::size_t t = 0; t < room.size(); ++t) {
                room[t] += static_cast<std::uint64_t>(std::max<std::int64_t>(left[t], 0)) << (lane_[r] % 4 * 16);
            }
        }
        return true;
    }

    bool addActivities() {
        for (const Activity& activity : problem_.activities) {
            std::vector<Project::Way> ways;
            for (std::size_t m = 0; m < activity.modes.size(); ++m) {
                if (std::optional<Project::Way> way = makeWay(activity.modes[m])) {
                    way->mode = static_cast<int>(m);
                    ways.push_back(std::move(*way));
                }
            }
            if (ways.empty()) return false;
            project_.isFlexible = project_.isFlexible || ways.size() > 1;
            project_.ways.push_back(std::move(ways));
            const Tick scale = project_.scale;
            project_.release.push_back((activity.release + scale - 1) / scale);
            project_.due.push_back(std::min(activity.due / scale, project_.horizon));
        }
        return true;
    }

    std::optional<Project::Way> makeWay(const Mode& mode) {
        Project::Way way;
        way.duration = mode.duration / project_.scale;
        if (way.duration > project_.horizon) return std::nullopt;
        for (const Use& use : mode.uses) {
            const std::size_t lane = lane_[at(use.resource)];
            const Resource& resource = problem_.resources[at(use.resource)];
            if (way.duration == 0 || use.amount == 0) continue;
            if (use.amount > (resource.cumulative ? resource.cumulative->capacity : 1)) return std::nullopt;
            if (lane == kNoLane) continue;
            auto demand = std::find_if(way.demands.begin(), way.demands.end(),
                                       [&](const Project::Demand& d) { return d.word == lane / 4; });
            if (demand == way.demands.end()) demand = way.demands.insert(demand, {lane / 4, 0});
            demand->amounts += static_cast<std::uint64_t>(use.amount) << (lane % 4 * 16);
        }
        for (const SkillNeed& need : mode.needs) {
            if (need.count > 0) way.needs.push_back({at(need.skill), need.count});
        }
        for (const WorkerIndex worker : mode.team) way.team.add(place_[at(worker)]);
        way.asksPeople = !way.needs.empty() || !way.team.isEmpty();
        return way;
    }

    bool addLags() {
        Project& p = project_;
        p.arcs.resize(p.size);
        bool hasWindows = false;
        for (std::size_t a = 0; a < p.size; ++a) hasWindows = hasWindows || p.due[a] < p.horizon;
        for (const Lag& lag : problem_.lags) {
            const Project::Arc arc{at(lag.from), lag.least / p.scale, lag.fromPoint == Point::End,
                                   lag.toPoint == Point::End};
            if (lag.from == lag.to) {
                const Tick duration = p.ways[at(lag.from)].front().duration;
                if (p.isFlexible || Project::weight(arc, duration, duration) > 0) return false;
                continue;
            }
            p.arcs[at(lag.to)].push_back(arc);
        }
        for (std::vector<Project::Arc>& arcs : p.arcs) {
            std::stable_sort(arcs.begin(), arcs.end(),
                             [](const Project::Arc& a, const Project::Arc& b) { return a.from < b.from; });
        }
        const bool hasLoop = !orderArcs();
        if (hasLoop && p.isFlexible) return false;
        p.isCyclic = !p.isFlexible && (hasLoop || hasWindows || mayGoBack());
        if (p.isCyclic) return findDistances();
        findPaths();
        p.isPlain = !p.isFlexible;
        for (std::size_t a = 0; a < p.size; ++a) {
            for (const Project::Arc& arc : p.arcs[a]) {
                const Tick duration = p.ways[arc.from].front().duration;
                if (Project::weight(arc, duration, p.ways[a].front().duration) < duration) p.isPlain = false;
            }
        }
        return true;
    }

    /// May something start before what it comes after? Then its place in a list is free.
    [[nodiscard]] bool mayGoBack() const {
        for (std::size_t a = 0; a < project_.size; ++a) {
            for (const Project::Arc& arc : project_.arcs[a]) {
                const Tick from = project_.ways[arc.from].front().duration;
                if (Project::weight(arc, from, project_.ways[a].front().duration) < 0) return true;
            }
        }
        return false;
    }

    /// False where the arcs have a cycle. Kahn 1962.
    bool orderArcs() {
        std::vector<std::size_t> open(project_.size, 0);
        std::vector<std::vector<std::size_t>> after(project_.size);
        for (std::size_t a = 0; a < project_.size; ++a) {
            open[a] = project_.arcs[a].size();
            for (const Project::Arc& arc : project_.arcs[a]) after[arc.from].push_back(a);
        }
        for (std::size_t a = 0; a < project_.size; ++a) {
            if (open[a] == 0) order_.push_back(a);
        }
        for (std::size_t i = 0; i < order_.size(); ++i) {
            for (const std::size_t next : after[order_[i]]) {
                if (--open[next] == 0) order_.push_back(next);
            }
        }
        project_.rank.assign(project_.size, 0);
        for (std::size_t i = 0; i < order_.size(); ++i) project_.rank[order_[i]] = i;
        return order_.size() == project_.size;
    }

    void findPaths() {
        Project& p = project_;
        p.head = p.release;
        p.tail.assign(p.size, 0);
        std::vector<Tick> least(p.size), most(p.size);
        for (std::size_t a = 0; a < p.size; ++a) {
            const auto [low, high] =
                std::minmax_element(p.ways[a].begin(), p.ways[a].end(),
                                    [](const auto& x, const auto& y) { return x.duration < y.duration; });
            least[a] = low->duration;
            most[a] = high->duration;
            p.tail[a] = least[a];
        }
        for (const std::size_t a : order_) {
            for (const Project::Arc& arc : p.arcs[a]) {
                p.head[a] = std::max(p.head[a], p.head[arc.from] + Project::weight(arc, least[arc.from], most[a]));
            }
        }
        for (auto it = order_.rbegin(); it != order_.rend(); ++it) {
            for (const Project::Arc& arc : p.arcs[*it]) {
                p.tail[arc.from] =
                    std::max(p.tail[arc.from], p.tail[*it] + Project::weight(arc, least[arc.from], most[*it]));
            }
        }
    }

    /// All longest paths [Floyd 1962]; false where there is a loop of positive length or an empty window.
    bool findDistances() {
        Project& p = project_;
        const std::size_t n = p.size;
        if (n > kMostInMatrix) return false;
        p.matrix.assign(n * n, -kNever);
        for (std::size_t a = 0; a < n; ++a) {
            p.matrix[a * n + a] = 0;
            for (const Project::Arc& arc : p.arcs[a]) {
                Tick& distance = p.matrix[arc.from * n + a];
                distance = std::max(
                    distance, Project::weight(arc, p.ways[arc.from].front().duration, p.ways[a].front().duration));
            }
        }
        for (std::size_t via = 0; via < n; ++via) {
            const Tick* const second = p.matrix.data() + via * n;
            for (std::size_t from = 0; from < n; ++from) {
                const Tick first = p.matrix[from * n + via];
                if (first <= -kNever / 2) continue;
                Tick* const row = p.matrix.data() + from * n;
                for (std::size_t to = 0; to < n; ++to) row[to] = std::max(row[to], first + second[to]);
            }
            if (p.matrix[via * n + via] > 0) return false;
        }
        for (std::size_t a = 0; a < n; ++a) {
            if (p.matrix[a * n + a] > 0) return false;
        }
        for (Tick& distance : p.matrix) {
            if (distance <= -kNever / 2) distance = -kNever;
        }
        p.transposed.resize(n * n);
        for (std::size_t i = 0; i < n; ++i) {
            for (std::size_t j = 0; j < n; ++j) p.transposed[j * n + i] = p.matrix[i * n + j];
        }
        p.head.assign(n, 0);
        p.tail.assign(n, 0);
        for (std::size_t i = 0; i < n; ++i) {
            for (std::size_t j = 0; j < n; ++j) {
                const Tick distance = p.matrix[i * n + j];
                if (distance == -kNever) continue;
                p.head[j] = std::max(p.head[j], p.release[i] + distance);
                p.tail[i] = std::max(p.tail[i], distance + p.ways[j].front().duration);
            }
        }
        // Windows as tight as the lags make them.
        std::vector<Tick> due = p.due;
        for (std::size_t i = 0; i < n; ++i) {
            for (std::size_t j = 0; j < n; ++j) {
                const Tick distance = p.matrix[i * n + j];
                if (distance == -kNever) continue;
                const Tick latest = p.due[j] - p.ways[j].front().duration - distance;
                due[i] = std::min(due[i], latest + p.ways[i].front().duration);
            }
            if (p.head[i] + p.ways[i].front().duration > due[i]) return false;
        }
        p.due = std::move(due);
        p.release = p.head;
        std::vector<std::size_t> order(n);
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t a, std::size_t b) { return p.head[a] < p.head[b]; });
        for (std::size_t i = 0; i < n; ++i) p.rank[order[i]] = i;
        p.component.resize(n);
        for (std::size_t i = 0; i < n; ++i) {
            p.component[i] = i;
            for (std::size_t j = 0; j < i; ++j) {
                if (p.matrix[i * n + j] == -kNever || p.matrix[j * n + i] == -kNever) continue;
                p.component[i] = p.component[j];
                break;
            }
        }
        return true;
    }

    static constexpr std::size_t kNoLane = static_cast<std::size_t>(-1);
    const Problem& problem_;
    Project project_;
    std::vector<std::size_t> lane_;  ///< by resource
    std::vector<std::size_t> place_; ///< by worker: the person's index
    std::vector<std::size_t> order_; ///< by arcs
};

} // namespace

std::optional<Project> asProject(const Problem& problem) {
    if (!isOfTheKind(problem)) return std::nullopt;
    return Maker(problem).make();
}

Project mirrored(const Project& project) {
    Project back = project;
    const std::size_t n = project.size;
    for (std::vector<Project::Arc>& arcs : back.arcs) arcs.clear();
    for (std::size_t a = 0; a < n; ++a) {
        back.release[a] = project.horizon - project.due[a];
        back.due[a] = project.horizon - project.release[a];
        back.rank[a] = n - 1 - project.rank[a];
        for (const Project::Arc& arc : project.arcs[a]) {
            back.arcs[arc.from].push_back({a, arc.least, !arc.toEnd, !arc.fromEnd});
        }
    }
    for (std::vector<std::uint64_t>& room : back.room) std::reverse(room.begin(), room.end());
    std::reverse(back.away.begin(), back.away.end());
    // A time between starts becomes one between ends.
    const auto duration = [&](std::size_t a) { return project.ways[a].front().duration; };
    if (project.isCyclic) {
        for (std::size_t i = 0; i < n; ++i) {
            for (std::size_t j = 0; j < n; ++j) {
                const Tick distance = project.matrix[i * n + j];
                const Tick turned = distance == -kNever ? -kNever : distance + duration(j) - duration(i);
                back.matrix[j * n + i] = turned;
                back.transposed[i * n + j] = turned;
            }
        }
    }
    for (std::size_t a = 0; a < n; ++a) {
        back.head[a] = std::max(project.tail[a] - duration(a), back.release[a]);
        back.tail[a] = project.head[a] + duration(a);
    }
    return back;
}

Schedule asSchedule(const Problem& problem, const Project& project, const Plan& plan) {
    Schedule schedule;
    schedule.placed.resize(project.size);
    for (std::size_t a = 0; a < project.size; ++a) {
        const Project::Way& way = project.way(a, plan.ways[a]);
        Placed& placed = schedule.placed[a];
        const Mode& mode = problem.activities[a].modes[static_cast<std::size_t>(way.mode)];
        placed.mode = way.mode;
        placed.start = plan.starts[a] * project.scale;
        placed.end = placed.start + mode.duration;
        if (way.asksPeople) placed.workers = inPlaces(project, way, plan.crews[a], mode);
    }
    return schedule;
}

std::optional<Plan> asPlan(const Problem& problem, const Project& project, const Schedule& schedule) {
    Plan plan;
    plan.end = 0;
    std::vector<std::size_t> place(problem.workers.size(), 0);
    for (std::size_t p = 0; p < project.who.size(); ++p) place[at(project.who[p])] = p;
    for (std::size_t a = 0; a < project.size; ++a) {
        const Placed& placed = schedule.placed[a];
        const auto& ways = project.ways[a];
        const auto way = std::find_if(ways.begin(), ways.end(), [&](const auto& w) { return w.mode == placed.mode; });
        if (way == ways.end() || placed.start % project.scale != 0) return std::nullopt;
        plan.starts.push_back(placed.start / project.scale);
        plan.ways.push_back(static_cast<int>(way - ways.begin()));
        plan.end = std::max(plan.end, plan.starts.back() + way->duration);
        if (!project.asksPeople()) continue;
        People crew;
        for (const WorkerIndex worker : placed.workers) crew.add(place[at(worker)]);
        plan.crews.push_back(crew);
    }
    return plan;
}

} // namespace piewright::schedule
