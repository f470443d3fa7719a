#include "schedule/tree.h"

#include "schedule/crew.h"

#include <algorithm>
#include <functional>
#include <set>
#include <utility>

namespace piewright::schedule {

namespace {

constexpr Node kNoGuard = static_cast<Node>(-1);
constexpr std::size_t kDeepest = 5000;  ///< decisions on one path; the stack ends somewhere
constexpr std::size_t kMostCrews = 500; ///< ways of staffing one mode

bool overlap(Tick from, Tick to, Tick otherFrom, Tick otherTo) { return from < otherTo && otherFrom < to; }

/// Times at which a resource is closed to a use of it, whatever else is placed.
void addClosed(const Resource& resource, const Use& use, std::vector<Span>& closed) {
    if (resource.machine) {
        closed.insert(closed.end(), resource.machine->away.begin(), resource.machine->away.end());
        if (!resource.machine->first.empty()) {
            closed.push_back({-kNever, resource.machine->first[at(use.family)]});
        }
        return;
    }
    if (use.amount == 0) {
        return;
    }
    const std::vector<Cumulative::Reserved>& reserved = resource.cumulative->reserved;
    std::vector<Tick> ticks;
    for (const Cumulative::Reserved& one : reserved) {
        ticks.push_back(one.span.from);
        ticks.push_back(one.span.to);
    }
    std::sort(ticks.begin(), ticks.end());
    for (std::size_t i = 0; i + 1 < ticks.size(); ++i) {
        std::int64_t level = use.amount;
        for (const Cumulative::Reserved& one : reserved) {
            if (one.span.from <= ticks[i] && ticks[i] < one.span.to) {
                level += one.amount;
            }
        }
        if (level > resource.cumulative->capacity && ticks[i] < ticks[i + 1]) {
            closed.push_back({ticks[i], ticks[i + 1]});
        }
    }
}

std::vector<Span> absences(const Worker& worker) {
    std::vector<Span> absent;
    Tick from = -kNever;
    for (const Span& span : worker.present) {
        absent.push_back({from, span.from});
        from = span.to;
    }
    absent.push_back({from, kNever + 1});
    return absent;
}

} // namespace

bool understands(const Problem& problem) {
    return problem.stays.empty() && problem.implications.empty() &&
           std::all_of(problem.resources.begin(), problem.resources.end(),
                       [](const Resource& resource) {
                           return !resource.reservoir && (!resource.machine || resource.machine->together == 1);
                       }) &&
           std::all_of(problem.activities.begin(), problem.activities.end(), [](const Activity& activity) {
               return !activity.isOptional &&
                      std::all_of(activity.modes.begin(), activity.modes.end(),
                                  [](const Mode& mode) { return mode.flows.empty() && mode.pauses.empty(); });
           });
}

Tree::Tree(const Model& model)
    : model_(model), isUnderstood_(understands(model.problem)), outgoing_(model.network.nodes()),
      incoming_(model.network.nodes()), isQueued_(model.network.nodes(), 0) {
    const Problem& problem = model.problem;
    closed_.resize(problem.activities.size());
    for (std::size_t a = 0; a < problem.activities.size(); ++a) {
        for (const Mode& mode : problem.activities[a].modes) {
            closed_[a].emplace_back();
            for (const Use& use : mode.uses) {
                const Resource& resource = problem.resources[at(use.resource)];
                if (resource.cumulative && mode.duration == 0) {
                    continue;
                }
                addClosed(resource, use, closed_[a].back());
            }
        }
    }
    std::vector<char> isNamed(problem.workers.size(), 0);
    for (const Activity& activity : problem.activities) {
        for (const Mode& mode : activity.modes) {
            for (const WorkerIndex worker : mode.team) {
                isNamed[at(worker)] = 1;
            }
        }
    }
    for (std::size_t w = 0; w < problem.workers.size(); ++w) {
        absent_.push_back(absences(problem.workers[w]));
        const auto skills = [&](std::size_t i) {
            return std::set<SkillIndex>(problem.workers[i].skills.begin(), problem.workers[i].skills.end());
        };
        alike_.push_back(w);
        for (std::size_t v = 0; v < w && isNamed[w] == 0; ++v) {
            if (isNamed[v] == 0 && problem.workers[v].present == problem.workers[w].present && skills(v) == skills(w)) {
                alike_[w] = v;
                break;
            }
        }
    }
}

const Mode& Tree::mode(std::size_t activity) const {
    return model_.problem.activities[activity].modes[static_cast<std::size_t>(mode_[activity])];
}

Tick Tree::setup(const Machine& machine, const User& from, const User& to) const {
    return machine.setup.empty() ? 0 : machine.setup[at(from.use.family)][at(to.use.family)];
}

void Tree::begin() {
    const Bounds open(model_.network, model_.problem, model_.presence, model_.lengths);
    lower_.clear();
    upper_.clear();
    for (Node node = 0; node < model_.network.nodes(); ++node) {
        lower_.push_back(open.lower(node));
        upper_.push_back(open.upper(node));
        outgoing_[node].clear();
        incoming_[node].clear();
    }
    const std::size_t activities = model_.problem.activities.size();
    lengths_ = model_.lengths;
    mode_.assign(activities, -1);
    crew_.assign(activities, {});
    users_.assign(model_.problem.resources.size(), {});
    tasks_.assign(model_.problem.workers.size(), {});
    trail_.clear();
    isSpent_ = false;
    work_ = checks_ = depth_ = 0;
}

TreeAnswer Tree::search(std::uint64_t work) {
    if (!isUnderstood_) return TreeAnswer::OutOfTime;
    begin();
    limit_ = work;
    // What there is no choice about comes first, so that it bounds the rest from the beginning.
    for (std::size_t a = 0; a < model_.problem.activities.size(); ++a) {
        if (model_.modes[a].size() > 1) {
            continue;
        }
        const Mode& only = model_.problem.activities[a].modes[static_cast<std::size_t>(model_.modes[a].front())];
        if (only.needs.empty() && !decide(a, {model_.modes[a].front(), only.team})) {
            return TreeAnswer::None;
        }
    }
    if (descend()) {
        return TreeAnswer::Found;
    }
    return isSpent_ ? TreeAnswer::OutOfTime : TreeAnswer::None;
}

bool Tree::spend() {
    ++work_;
    isSpent_ = isSpent_ || work() > limit_ || depth_ >= kDeepest;
    return !isSpent_;
}

bool Tree::descend() {
    if (!propagate()) {
        return false;
    }
    if (std::vector<Step> steps = worstConflict(); !steps.empty()) {
        std::stable_sort(steps.begin(), steps.end(), [](const Step& x, const Step& y) { return x.slack > y.slack; });
        for (const Step& step : steps) {
            if (step.slack < 0) {
                continue;
            } // impossible by the bounds
            if (!spend()) {
                return false;
            }
            const std::size_t mark = trail_.size();
            ++depth_;
            if (tryStep(step) && descend()) {
                return true;
            }
            --depth_;
            undo(mark);
        }
        return false;
    }
    const std::size_t activity = nextUndecided();
    if (activity == mode_.size()) {
        schedule_.placed.clear();
        for (std::size_t a = 0; a < mode_.size(); ++a) {
            schedule_.placed.push_back({lower_[startOf(a)], lower_[endOf(a)], mode_[a], crew_[a]});
        }
        return true;
    }
    for (const Option& option : optionsOf(activity)) {
        if (!spend()) {
            return false;
        }
        const std::size_t mark = trail_.size();
        ++depth_;
        if (decide(activity, option) && descend()) {
            return true;
        }
        --depth_;
        undo(mark);
    }
    return false;
}

bool Tree::tryStep(const Step& step) {
    if (step.from != step.to) {
        return addArc(step.from, step.to, step.value);
    }
    return step.isLower ? raise(step.from, step.value, kNoGuard) : reduce(step.from, step.value, kNoGuard);
}

void Tree::undo(std::size_t mark) {
    while (trail_.size() > mark) {
        const Change change = trail_.back();
        trail_.pop_back();
        switch (change.what) {
        case Change::What::Lower:
            lower_[change.index] = change.first;
            break;
        case Change::What::Upper:
            upper_[change.index] = change.first;
            break;
        case Change::What::Length:
            lengths_[change.index] = {change.first, change.second};
            break;
        case Change::What::Arc:
            incoming_[outgoing_[change.index].back().other].pop_back();
            outgoing_[change.index].pop_back();
            break;
        case Change::What::Decided:
            for (const Use& use : mode(change.index).uses) {
                users_[at(use.resource)].pop_back();
            }
            for (const WorkerIndex worker : crew_[change.index]) {
                tasks_[at(worker)].pop_back();
            }
            mode_[change.index] = -1;
            crew_[change.index].clear();
            break;
        }
    }
}

/// False when a window becomes empty, or when the raise comes round to `guard`: the arc that set it off, from there,
/// then closes a loop of positive length.
bool Tree::raise(Node node, std::int64_t value, Node guard) {
    queue_.clear();
    bool isFine = true;
    const auto reach = [&](Node target, std::int64_t least) {
        if (least <= lower_[target]) {
            return;
        }
        if (least > upper_[target] || target == guard) {
            isFine = false;
            return;
        }
        trail_.push_back({Change::What::Lower, target, lower_[target], 0});
        lower_[target] = static_cast<Tick>(least);
        if (std::exchange(isQueued_[target], char{1}) == 0) {
            queue_.push_back(target);
        }
    };
    reach(node, value);
    for (std::size_t i = 0; i < queue_.size(); ++i) {
        const Node from = queue_[i];
        isQueued_[from] = 0;
        if (!isFine) {
            continue;
        } // only clear the marks
        const std::int64_t time = lower_[from];
        const Length length = lengths_[from / 2];
        reach(from ^ 1U, from % 2 == 0 ? time + length.least : time - length.most);
        for (const Network::Arc& arc : model_.network.outgoing(from)) {
            reach(arc.other, time + arc.least);
        }
        for (const Network::Arc& arc : outgoing_[from]) {
            reach(arc.other, time + arc.least);
        }
    }
    return isFine;
}

bool Tree::reduce(Node node, std::int64_t value, Node guard) {
    queue_.clear();
    bool isFine = true;
    const auto reach = [&](Node target, std::int64_t most) {
        if (most >= upper_[target]) {
            return;
        }
        if (most < lower_[target] || target == guard) {
            isFine = false;
            return;
        }
        trail_.push_back({Change::What::Upper, target, upper_[target], 0});
        upper_[target] = static_cast<Tick>(most);
        if (std::exchange(isQueued_[target], char{1}) == 0) {
            queue_.push_back(target);
        }
    };
    reach(node, value);
    for (std::size_t i = 0; i < queue_.size(); ++i) {
        const Node to = queue_[i];
        isQueued_[to] = 0;
        if (!isFine) {
            continue;
        }
        const std::int64_t time = upper_[to];
        const Length length = lengths_[to / 2];
        reach(to ^ 1U, to % 2 == 1 ? time - length.least : time + length.most);
        for (const Network::Arc& arc : model_.network.incoming(to)) {
            reach(arc.other, time - arc.least);
        }
        for (const Network::Arc& arc : incoming_[to]) {
            reach(arc.other, time - arc.least);
        }
    }
    return isFine;
}

bool Tree::addArc(Node from, Node to, Tick least) {
    if (std::any_of(outgoing_[from].begin(), outgoing_[from].end(),
                    [&](const Network::Arc& arc) { return arc.other == to && arc.least >= least; })) {
        return true;
    }
    trail_.push_back({Change::What::Arc, from, 0, 0});
    outgoing_[from].push_back({to, least, true});
    incoming_[to].push_back({from, least, true});
    return raise(to, std::int64_t{lower_[from]} + least, from) && reduce(from, std::int64_t{upper_[to]} - least, to);
}

bool Tree::setLength(std::size_t activity, Tick duration) {
    const Length before = lengths_[activity];
    if (before.least == before.most) {
        return true;
    }
    const Node start = startOf(activity);
    const Node end = endOf(activity);
    // One arc after the other, as each is guarded by itself.
    trail_.push_back({Change::What::Length, activity, before.least, before.most});
    lengths_[activity].least = duration;
    if (!raise(end, std::int64_t{lower_[start]} + duration, start) ||
        !reduce(start, std::int64_t{upper_[end]} - duration, end)) {
        return false;
    }
    lengths_[activity].most = duration;
    return raise(start, std::int64_t{lower_[end]} - duration, end) &&
           reduce(end, std::int64_t{upper_[start]} + duration, start);
}

bool Tree::decide(std::size_t activity, const Option& option) {
    mode_[activity] = option.mode;
    crew_[activity] = option.crew;
    for (const Use& use : mode(activity).uses) {
        users_[at(use.resource)].push_back({activity, use});
    }
    for (const WorkerIndex worker : option.crew) {
        tasks_[at(worker)].push_back(activity);
    }
    trail_.push_back({Change::What::Decided, activity, 0, 0});
    return setLength(activity, mode(activity).duration);
}

/// Whatever follows without a choice, until nothing more does.
bool Tree::propagate() {
    for (std::size_t mark = trail_.size() + 1; mark != trail_.size();) {
        mark = trail_.size();
        for (std::size_t a = 0; a < mode_.size(); ++a) {
            if (mode_[a] >= 0 && !keepOpen(a)) {
                return false;
            }
        }
        for (std::size_t r = 0; r < users_.size(); ++r) {
            const Resource& resource = model_.problem.resources[r];
            for (std::size_t i = 0; i < users_[r].size(); ++i) {
                for (std::size_t j = i + 1; j < users_[r].size(); ++j) {
                    const User one = users_[r][i];
                    const User other = users_[r][j];
                    if (resource.machine) {
                        if (!orderPair(one.activity, other.activity, setup(*resource.machine, one, other),
                                       setup(*resource.machine, other, one))) {
                            return false;
                        }
                    } else if (std::int64_t{one.use.amount} + other.use.amount > resource.cumulative->capacity &&
                               mode(one.activity).duration > 0 && mode(other.activity).duration > 0 &&
                               !orderPair(one.activity, other.activity, 0, 0)) {
                        return false;
                    }
                }
            }
        }
        for (const std::vector<std::size_t>& tasks : tasks_) {
            for (std::size_t i = 0; i < tasks.size(); ++i) {
                for (std::size_t j = i + 1; j < tasks.size(); ++j) {
                    if (!orderPair(tasks[i], tasks[j], 0, 0)) {
                        return false;
                    }
                }
            }
        }
    }
    return true;
}

bool Tree::keepOpen(std::size_t activity) {
    const Tick duration = mode(activity).duration;
    const auto forClosed = [&](auto visit) {
        for (const Span& span : closed_[activity][static_cast<std::size_t>(mode_[activity])]) {
            visit(span);
        }
        for (const WorkerIndex worker : crew_[activity]) {
            for (const Span& span : absent_[at(worker)]) {
                visit(span);
            }
        }
    };
    Tick start = lower_[startOf(activity)];
    for (bool moved = true; moved && start <= upper_[startOf(activity)];) {
        moved = false;
        forClosed([&](const Span& span) {
            if (overlap(start, start + duration, span.from, span.to)) {
                start = span.to;
                moved = true;
            }
        });
    }
    if (!raise(startOf(activity), start, kNoGuard)) {
        return false;
    }
    Tick end = upper_[endOf(activity)];
    for (bool moved = true; moved && end >= lower_[endOf(activity)];) {
        moved = false;
        forClosed([&](const Span& span) {
            if (overlap(end - duration, end, span.from, span.to)) {
                end = span.from;
                moved = true;
            }
        });
    }
    return reduce(endOf(activity), end, kNoGuard);
}

bool Tree::orderPair(std::size_t one, std::size_t other, Tick there, Tick back) {
    ++checks_;
    const bool canGo = std::int64_t{lower_[endOf(one)]} + there <= upper_[startOf(other)];
    const bool canCome = std::int64_t{lower_[endOf(other)]} + back <= upper_[startOf(one)];
    if (canGo && canCome) {
        return true;
    }
    if (canGo) {
        return addArc(endOf(one), startOf(other), there);
    }
    if (canCome) {
        return addArc(endOf(other), startOf(one), back);
    }
    return false;
}

/// The ways on from the conflict of the earliest-start schedule that leaves the least choice; none when it has none.
std::vector<Tree::Step> Tree::worstConflict() {
    std::vector<Step> worst;
    for (std::size_t r = 0; r < users_.size(); ++r) {
        const Resource& resource = model_.problem.resources[r];
        if (!resource.machine) {
            considerLevel(r, worst);
            continue;
        }
        for (std::size_t i = 0; i < users_[r].size(); ++i) {
            for (std::size_t j = i + 1; j < users_[r].size(); ++j) {
                considerPair(users_[r][i].activity, users_[r][j].activity,
                             setup(*resource.machine, users_[r][i], users_[r][j]),
                             setup(*resource.machine, users_[r][j], users_[r][i]), worst);
            }
        }
    }
    for (const std::vector<std::size_t>& tasks : tasks_) {
        for (std::size_t i = 0; i < tasks.size(); ++i) {
            for (std::size_t j = i + 1; j < tasks.size(); ++j) {
                considerPair(tasks[i], tasks[j], 0, 0, worst);
            }
        }
    }
    return worst;
}

void Tree::considerPair(std::size_t one, std::size_t other, Tick there, Tick back, std::vector<Step>& worst) {
    ++checks_;
    if (lower_[endOf(one)] + there <= lower_[startOf(other)] || lower_[endOf(other)] + back <= lower_[startOf(one)]) {
        return;
    }
    const auto slack = [&](std::size_t first, std::size_t second, Tick between) {
        return std::int64_t{upper_[startOf(second)]} - lower_[endOf(first)] - between;
    };
    std::vector<Step> steps{{endOf(one), startOf(other), there, true, slack(one, other, there)},
                            {endOf(other), startOf(one), back, true, slack(other, one, back)}};
    keepWorse(steps, worst);
}

void Tree::considerLevel(std::size_t resource, std::vector<Step>& worst) {
    const Cumulative& cumulative = *model_.problem.resources[resource].cumulative;
    const std::vector<User>& users = users_[resource];
    struct Part {
        int amount;
        std::size_t activity; ///< or none: reserved
        Span reserved;
    };
    constexpr std::size_t kReserved = static_cast<std::size_t>(-1);
    const auto covers = [&](std::size_t activity, Tick tick) {
        return lower_[startOf(activity)] <= tick && tick < lower_[endOf(activity)];
    };
    std::vector<Tick> ticks;
    for (const User& user : users) {
        ticks.push_back(lower_[startOf(user.activity)]);
    }
    for (const Cumulative::Reserved& reserved : cumulative.reserved) {
        ticks.push_back(reserved.span.from);
    }
    std::sort(ticks.begin(), ticks.end());
    ticks.erase(std::unique(ticks.begin(), ticks.end()), ticks.end());
    std::vector<Part> parts;
    for (const Tick tick : ticks) {
        parts.clear();
        std::int64_t level = 0;
        std::int64_t used = 0;
        for (const User& user : users) {
            ++checks_;
            if (user.use.amount == 0 || !covers(user.activity, tick)) {
                continue;
            }
            parts.push_back({user.use.amount, user.activity, {}});
            level += user.use.amount;
            used += user.use.amount;
        }
        for (const Cumulative::Reserved& reserved : cumulative.reserved) {
            if (reserved.amount == 0 || tick < reserved.span.from || tick >= reserved.span.to) {
                continue;
            }
            parts.push_back({reserved.amount, kReserved, reserved.span});
            level += reserved.amount;
        }
        if (used == 0 || level <= cumulative.capacity) {
            continue;
        }
        // A least set that is too much: the largest first. Some two of it must not meet.
        std::stable_sort(parts.begin(), parts.end(), [](const Part& x, const Part& y) { return x.amount > y.amount; });
        std::int64_t sum = 0;
        std::size_t count = 0;
        while (sum <= cumulative.capacity) {
            sum += parts[count++].amount;
        }
        if (std::all_of(parts.begin(), parts.begin() + static_cast<std::ptrdiff_t>(count),
                        [](const Part& part) { return part.activity == kReserved; })) {
            // Reserved beyond the capacity: no one may be there at all. keepOpen has seen to it.
            continue;
        }
        std::vector<Step> steps;
        for (std::size_t i = 0; i < count; ++i) {
            for (std::size_t j = 0; j < count; ++j) {
                const Part& before = parts[i];
                const Part& after = parts[j];
                if (i == j || (before.activity == kReserved && after.activity == kReserved)) {
                    continue;
                }
                if (after.activity == kReserved) {
                    const Node end = endOf(before.activity);
                    steps.push_back(
                        {end, end, after.reserved.from, false, std::int64_t{after.reserved.from} - lower_[end]});
                } else if (before.activity == kReserved) {
                    const Node start = startOf(after.activity);
                    steps.push_back(
                        {start, start, before.reserved.to, true, std::int64_t{upper_[start]} - before.reserved.to});
                } else {
                    steps.push_back({endOf(before.activity), startOf(after.activity), 0, true,
                                     std::int64_t{upper_[startOf(after.activity)]} - lower_[endOf(before.activity)]});
                }
            }
        }
        keepWorse(steps, worst);
    }
}

void Tree::keepWorse(std::vector<Step>& steps, std::vector<Step>& worst) const {
    const auto choice = [](const std::vector<Step>& of) { // ways that are possible, and the slack they leave
        std::pair<std::size_t, std::int64_t> sum{0, 0};
        for (const Step& step : of) {
            if (step.slack < 0) {
                continue;
            }
            ++sum.first;
            sum.second += step.slack;
        }
        return sum;
    };
    if (worst.empty() || choice(steps) < choice(worst)) {
        worst = std::move(steps);
    }
}

std::size_t Tree::nextUndecided() const {
    std::size_t best = mode_.size();
    for (std::size_t a = 0; a < mode_.size(); ++a) {
        if (mode_[a] < 0 && (best == mode_.size() || lower_[startOf(a)] < lower_[startOf(best)])) {
            best = a;
        }
    }
    return best;
}

std::vector<Tree::Option> Tree::optionsOf(std::size_t activity) {
    std::vector<Option> options;
    for (const int mode : model_.modes[activity]) {
        gatherCrews(activity, mode, options);
    }
    return options;
}

void Tree::gatherCrews(std::size_t activity, int mode, std::vector<Option>& options) {
    const Mode& way = model_.problem.activities[activity].modes[static_cast<std::size_t>(mode)];
    const Tick start = lower_[startOf(activity)];
    const auto isBusy = [&](WorkerIndex worker) {
        return std::any_of(tasks_[at(worker)].begin(), tasks_[at(worker)].end(), [&](std::size_t other) {
            return overlap(start, start + way.duration, lower_[startOf(other)], lower_[endOf(other)]);
        });
    };
    std::vector<WorkerIndex> order;
    for (std::size_t w = 0; w < model_.problem.workers.size(); ++w) {
        if (std::find(way.team.begin(), way.team.end(), static_cast<WorkerIndex>(w)) == way.team.end()) {
            order.push_back(static_cast<WorkerIndex>(w));
        }
    }
    std::stable_sort(order.begin(), order.end(), [&](WorkerIndex x, WorkerIndex y) {
        return std::pair{isBusy(x), model_.versatility[at(x)]} < std::pair{isBusy(y), model_.versatility[at(y)]};
    });
    // Sets of people, whoever of them fills which place.
    std::set<std::vector<WorkerIndex>> seen;
    std::vector<WorkerIndex> crew;
    const std::function<void(std::size_t, int, std::size_t)> fill = [&](std::size_t need, int filled,
                                                                        std::size_t from) {
        if (seen.size() >= kMostCrews) {
            isSpent_ = true; // can't claim to have seen all
            return;
        }
        if (need == way.needs.size()) {
            std::vector<WorkerIndex> set = crew;
            std::sort(set.begin(), set.end());
            if (!seen.insert(set).second) {
                return;
            }
            // Of workers that can't be told apart and have nothing to do yet, only the first ones.
            for (const WorkerIndex worker : crew) {
                if (!tasks_[at(worker)].empty()) {
                    continue;
                }
                for (std::size_t w = alike_[at(worker)]; w < at(worker); ++w) {
                    if (alike_[w] == alike_[at(worker)] && tasks_[w].empty() &&
                        !std::binary_search(set.begin(), set.end(), static_cast<WorkerIndex>(w))) {
                        return;
                    }
                }
            }
            Option option{mode, crew};
            option.crew.insert(option.crew.end(), way.team.begin(), way.team.end());
            options.push_back(std::move(option));
            return;
        }
        if (filled == way.needs[need].count) {
            fill(need + 1, 0, 0);
            return;
        }
        for (std::size_t i = from; i < order.size(); ++i) {
            const std::vector<SkillIndex>& skills = model_.problem.workers[at(order[i])].skills;
            if (std::find(skills.begin(), skills.end(), way.needs[need].skill) == skills.end() ||
                std::find(crew.begin(), crew.end(), order[i]) != crew.end()) {
                continue;
            }
            crew.push_back(order[i]);
            fill(need, filled + 1, i + 1);
            crew.pop_back();
        }
    };
    fill(0, 0, 0);
}

} // namespace piewright::schedule
