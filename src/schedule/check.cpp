// Looks at each limit by itself and shares no code with the search, so that a fault of the one is caught by the other.
#include "schedule/check.h"

#include <algorithm>

namespace piewright::schedule {

namespace {

using std::to_string;

std::string quoted(const std::string& name) { return '"' + name + '"'; }

std::string fromTo(Tick from, Tick to) { return "from " + to_string(from) + " to " + to_string(to); }

/// Half-open intervals share a tick, or an interval of no length lies strictly inside the other.
bool overlap(Tick from, Tick to, Tick otherFrom, Tick otherTo) { return from < otherTo && otherFrom < to; }

class Checker {
  public:
    Checker(const Problem& problem, const Schedule& schedule) : problem_(problem), schedule_(schedule) {}

    std::vector<Violation> check() && {
        checkShape();
        if (!violations_.empty()) {
            return std::move(violations_);
        } // the rest can't be told of what isn't there
        checkWindows();
        for (const Lag& lag : problem_.lags) {
            if (isDone(at(lag.from)) && isDone(at(lag.to))) {
                checkLag(lag);
            }
        }
        for (const Stay& stay : problem_.stays) {
            checkStay(stay);
        }
        for (const Implication& implication : problem_.implications) {
            checkImplication(implication);
        }
        for (std::size_t r = 0; r < problem_.resources.size(); ++r) {
            const Resource& resource = problem_.resources[r];
            const std::vector<Taken> taken = takers(r);
            if (resource.cumulative) {
                checkCumulative(resource.name, *resource.cumulative, taken);
            }
            if (resource.machine) {
                checkMachine(resource.name, *resource.machine, taken);
                checkLoads(resource.name, *resource.machine, taken);
            }
            if (resource.reservoir) {
                checkReservoir(r);
            }
        }
        checkPeople();
        return std::move(violations_);
    }

  private:
    struct Taken {
        std::size_t activity;
        Use use;
    };

    void breach(Limit limit, const std::vector<std::size_t>& activities, std::string what) {
        std::vector<ActivityIndex> indices;
        indices.reserve(activities.size());
        for (const std::size_t a : activities) {
            indices.push_back(static_cast<ActivityIndex>(a));
        }
        violations_.push_back({limit, std::move(indices), std::move(what)});
    }

    [[nodiscard]] std::string name(std::size_t activity) const { return quoted(problem_.activities[activity].name); }
    [[nodiscard]] const Placed& placed(std::size_t activity) const { return schedule_.placed[activity]; }
    [[nodiscard]] bool isDone(std::size_t activity) const { return placed(activity).mode != kAbsent; }
    [[nodiscard]] const Mode& mode(std::size_t activity) const {
        return problem_.activities[activity].modes[static_cast<std::size_t>(placed(activity).mode)];
    }

    void checkShape() {
        if (schedule_.placed.size() != problem_.activities.size()) {
            breach(Limit::Shape, {},
                   to_string(schedule_.placed.size()) + " activities are placed, there are " +
                       to_string(problem_.activities.size()));
            return;
        }
        for (std::size_t a = 0; a < problem_.activities.size(); ++a) {
            if (!isDone(a)) {
                checkAbsent(a);
                continue;
            }
            const int modes = static_cast<int>(problem_.activities[a].modes.size());
            if (placed(a).mode < 0 || placed(a).mode >= modes) {
                breach(Limit::Shape, {a},
                       name(a) + " is in mode " + to_string(placed(a).mode) + ", it has " + to_string(modes));
                continue;
            }
            checkDuration(a);
            checkCrewShape(a);
        }
    }

    void checkAbsent(std::size_t a) {
        if (!problem_.activities[a].isOptional) {
            breach(Limit::Shape, {a}, name(a) + " is left out, it must be done");
        }
        if (placed(a) != Placed{0, 0, kAbsent, {}}) {
            breach(Limit::Shape, {a},
                   name(a) + " is left out, but lasts " + fromTo(placed(a).start, placed(a).end) + " and has " +
                       to_string(placed(a).workers.size()) + " people");
        }
    }

    void checkDuration(std::size_t a) {
        const Placed& here = placed(a);
        std::int64_t ticks = std::int64_t{here.end} - here.start;
        for (const Span& pause : mode(a).pauses) {
            ticks -= std::max<std::int64_t>(0, std::int64_t{std::min(here.end, pause.to)} -
                                                   std::max(here.start, pause.from));
        }
        if (ticks != mode(a).duration) {
            breach(Limit::Shape, {a},
                   name(a) + " lasts " + fromTo(here.start, here.end) +
                       (mode(a).pauses.empty() ? "" : ", " + to_string(ticks) + " of it outside pauses") +
                       ", its duration is " + to_string(mode(a).duration));
            return;
        }
        for (const Span& pause : mode(a).pauses) {
            if (pause.from < here.end && here.end <= pause.to) {
                breach(Limit::Shape, {a},
                       name(a) + " ends at " + to_string(here.end) + ", it was done by " + to_string(pause.from));
            }
        }
    }

    void checkCrewShape(std::size_t a) {
        std::size_t places = 0;
        for (const SkillNeed& need : mode(a).needs) {
            places += static_cast<std::size_t>(need.count);
        }
        const std::vector<WorkerIndex>& crew = placed(a).workers;
        if (crew.size() != places + mode(a).team.size()) {
            breach(Limit::Shape, {a},
                   name(a) + " has " + to_string(crew.size()) + " people, it takes " +
                       to_string(places + mode(a).team.size()));
            return;
        }
        for (const WorkerIndex worker : crew) {
            if (static_cast<std::int32_t>(worker) < 0 || at(worker) >= problem_.workers.size()) {
                breach(Limit::Shape, {a},
                       name(a) + " has worker number " + to_string(static_cast<std::int32_t>(worker)) + ", there are " +
                           to_string(problem_.workers.size()));
            }
        }
        for (std::size_t i = 0; i < mode(a).team.size(); ++i) {
            if (crew[places + i] != mode(a).team[i]) {
                breach(Limit::Shape, {a},
                       name(a) + " has worker number " + to_string(static_cast<std::int32_t>(crew[places + i])) +
                           " where its team has number " + to_string(static_cast<std::int32_t>(mode(a).team[i])));
            }
        }
    }

    void checkWindows() {
        for (std::size_t a = 0; a < problem_.activities.size(); ++a) {
            const Activity& activity = problem_.activities[a];
            if (!isDone(a)) {
                continue;
            }
            for (const Span& pause : mode(a).pauses) {
                if (pause.from <= placed(a).start && placed(a).start < pause.to) {
                    breach(Limit::Pause, {a},
                           name(a) + " starts at " + to_string(placed(a).start) + ", within its pause " +
                               fromTo(pause.from, pause.to));
                }
            }
            if (placed(a).start < activity.release) {
                breach(Limit::Release, {a},
                       name(a) + " starts at " + to_string(placed(a).start) + ", may not before " +
                           to_string(activity.release));
            }
            if (placed(a).end > activity.due) {
                breach(Limit::Due, {a},
                       name(a) + " ends at " + to_string(placed(a).end) + ", is due at " + to_string(activity.due));
            }
            if (placed(a).end > problem_.horizon) {
                breach(Limit::Horizon, {a},
                       name(a) + " ends at " + to_string(placed(a).end) + ", everything must by " +
                           to_string(problem_.horizon));
            }
        }
    }

    void checkLag(const Lag& lag) {
        const auto time = [&](ActivityIndex activity, Point point) {
            const Placed& where = placed(at(activity));
            return std::int64_t{point == Point::Start ? where.start : where.end};
        };
        const auto told = [&](ActivityIndex activity, Point point) {
            return std::string(point == Point::Start ? "the start of " : "the end of ") + name(at(activity)) + " at " +
                   to_string(time(activity, point));
        };
        const std::int64_t distance = time(lag.to, lag.toPoint) - time(lag.from, lag.fromPoint);
        if (distance >= lag.least) {
            return;
        }
        const std::string reason = lag.reason.empty() ? "" : " (" + lag.reason + ")";
        if (lag.least < 0) { // a greatest distance the other way round
            breach(Limit::Lag, {at(lag.to), at(lag.from)},
                   told(lag.from, lag.fromPoint) + " is " + to_string(-distance) + " after " +
                       told(lag.to, lag.toPoint) + ", may be at most " + to_string(-lag.least) + reason);
        } else {
            breach(Limit::Lag, {at(lag.from), at(lag.to)},
                   told(lag.to, lag.toPoint) + " is " + to_string(distance) + " after " +
                       told(lag.from, lag.fromPoint) + ", must be at least " + to_string(lag.least) + reason);
        }
    }

    void checkStay(const Stay& stay) {
        const std::size_t from = at(stay.from);
        const std::size_t to = at(stay.to);
        if (!isDone(from) || !isDone(to)) {
            return;
        }
        for (const WorkerIndex worker : placed(to).workers) {
            const std::vector<WorkerIndex>& those = placed(from).workers;
            if (std::find(those.begin(), those.end(), worker) == those.end()) {
                breach(Limit::Stay, {from, to},
                       quoted(problem_.workers[at(worker)].name) + " does " + name(to) + " and not " + name(from) +
                           (stay.reason.empty() ? "" : " (" + stay.reason + ")"));
            }
        }
    }

    void checkImplication(const Implication& implication) {
        if (isDone(at(implication.given)) && !isDone(at(implication.also))) {
            breach(Limit::Implication, {at(implication.given), at(implication.also)},
                   name(at(implication.given)) + " is done and " + name(at(implication.also)) + " is left out" +
                       (implication.reason.empty() ? "" : " (" + implication.reason + ")"));
        }
    }

    [[nodiscard]] std::vector<Taken> takers(std::size_t resource) const {
        std::vector<Taken> taken;
        for (std::size_t a = 0; a < problem_.activities.size(); ++a) {
            if (!isDone(a)) {
                continue;
            }
            for (const Use& use : mode(a).uses) {
                if (at(use.resource) == resource) {
                    taken.push_back({a, use});
                }
            }
        }
        return taken;
    }

    /// The level can rise only where something starts, so it is enough to add up what covers each of those ticks.
    void checkCumulative(const std::string& resource, const Cumulative& cumulative, const std::vector<Taken>& taken) {
        std::vector<Tick> starts;
        starts.reserve(taken.size() + cumulative.reserved.size());
        for (const Taken& one : taken) {
            starts.push_back(placed(one.activity).start);
        }
        for (const Cumulative::Reserved& reserved : cumulative.reserved) {
            starts.push_back(reserved.span.from);
        }
        std::sort(starts.begin(), starts.end());
        starts.erase(std::unique(starts.begin(), starts.end()), starts.end());
        for (const Tick tick : starts) {
            std::int64_t used = 0;
            std::int64_t reservedNow = 0;
            std::vector<std::size_t> here;
            for (const Taken& one : taken) {
                if (one.use.amount == 0 || tick < placed(one.activity).start || tick >= placed(one.activity).end) {
                    continue;
                }
                used += one.use.amount;
                here.push_back(one.activity);
            }
            for (const Cumulative::Reserved& reserved : cumulative.reserved) {
                if (reserved.span.from <= tick && tick < reserved.span.to) {
                    reservedNow += reserved.amount;
                }
            }
            if (used > 0 && used + reservedNow > cumulative.capacity) {
                breach(Limit::Capacity, here,
                       quoted(resource) + " has " + to_string(used + reservedNow) + " at " + to_string(tick) +
                           ", its capacity is " + to_string(cumulative.capacity));
            }
        }
    }

    /// Every two activities, not only neighbours: by the triangle inequality it comes to the same.
    void checkMachine(const std::string& resource, const Machine& machine, const std::vector<Taken>& taken) {
        const auto setup = [&](const Taken& before, const Taken& after) {
            return machine.setup.empty() ? Tick{0} : machine.setup[at(before.use.family)][at(after.use.family)];
        };
        for (std::size_t i = 0; i < taken.size(); ++i) {
            const Placed& one = placed(taken[i].activity);
            const Tick first = machine.first.empty() ? 0 : machine.first[at(taken[i].use.family)];
            if (one.start < first) {
                breach(Limit::Setup, {taken[i].activity},
                       quoted(resource) + " is set up first at " + to_string(first) + " for " +
                           name(taken[i].activity) + ", which starts at " + to_string(one.start));
            }
            for (const Span& away : machine.away) {
                if (overlap(one.start, one.end, away.from, away.to)) {
                    breach(Limit::Away, {taken[i].activity},
                           quoted(resource) + " can't be used " + fromTo(away.from, away.to) + ", " +
                               name(taken[i].activity) + " takes it " + fromTo(one.start, one.end));
                }
            }
            for (std::size_t j = i + 1; j < taken.size(); ++j) {
                const Placed& other = placed(taken[j].activity);
                if (machine.together > 1 && one.start == other.start && taken[i].use.family == taken[j].use.family) {
                    continue; // of one load
                }
                if (overlap(one.start, one.end, other.start, other.end)) {
                    breach(Limit::Capacity, {taken[i].activity, taken[j].activity},
                           quoted(resource) + " does one " + (machine.together > 1 ? "load " : "") + "at a time, " +
                               name(taken[i].activity) + " takes it " + fromTo(one.start, one.end) + " and " +
                               name(taken[j].activity) + " " + fromTo(other.start, other.end));
                    continue;
                }
                const std::int64_t gap = std::int64_t{other.start} - one.end;
                const std::int64_t gapBack = std::int64_t{one.start} - other.end;
                if (gap >= setup(taken[i], taken[j]) || gapBack >= setup(taken[j], taken[i])) {
                    continue;
                }
                const bool forward = gap >= gapBack;
                breach(Limit::Setup, {taken[i].activity, taken[j].activity},
                       quoted(resource) + " needs " +
                           to_string(forward ? setup(taken[i], taken[j]) : setup(taken[j], taken[i])) + " between " +
                           name(taken[forward ? i : j].activity) + " and " + name(taken[forward ? j : i].activity) +
                           ", there is " + to_string(forward ? gap : gapBack));
            }
        }
    }

    void checkLoads(const std::string& resource, const Machine& machine, const std::vector<Taken>& taken) {
        if (machine.together == 1) {
            return;
        }
        for (std::size_t i = 0; i < taken.size(); ++i) {
            std::int64_t amount = 0;
            std::vector<std::size_t> load;
            bool isFirst = true;
            for (std::size_t j = 0; j < taken.size(); ++j) {
                const Placed& other = placed(taken[j].activity);
                if (other.start == placed(taken[i].activity).start && other.start < other.end) {
                    isFirst = isFirst && j >= i;
                    amount += taken[j].use.amount;
                    load.push_back(taken[j].activity);
                }
            }
            if (isFirst && amount > machine.together) {
                breach(Limit::Capacity, load,
                       quoted(resource) + " has a load of " + to_string(amount) + " at " +
                           to_string(placed(load.front()).start) + ", takes " + to_string(machine.together) +
                           " together");
            }
        }
    }

    /// Moment by moment, all that has flowed by then added up anew.
    void checkReservoir(std::size_t r) {
        const Reservoir& reservoir = *problem_.resources[r].reservoir;
        struct Moment {
            Tick time;
            int amount;
            std::size_t activity;
        };
        std::vector<Moment> moments;
        for (std::size_t a = 0; a < problem_.activities.size(); ++a) {
            if (!isDone(a)) {
                continue;
            }
            for (const Flow& flow : mode(a).flows) {
                if (at(flow.resource) == r) {
                    moments.push_back({flow.point == Point::Start ? placed(a).start : placed(a).end, flow.amount, a});
                }
            }
        }
        for (std::size_t i = 0; i < moments.size(); ++i) {
            std::int64_t level = reservoir.initial;
            std::vector<std::size_t> here;
            bool isFirst = true;
            for (std::size_t j = 0; j < moments.size(); ++j) {
                level += moments[j].time <= moments[i].time ? moments[j].amount : 0;
                if (moments[j].time == moments[i].time) {
                    isFirst = isFirst && j >= i;
                    if (here.empty() || here.back() != moments[j].activity) {
                        here.push_back(moments[j].activity);
                    }
                }
            }
            if (isFirst && (level < reservoir.least || level > reservoir.most)) {
                breach(Limit::Level, here,
                       quoted(problem_.resources[r].name) + " holds " + to_string(level) + " at " +
                           to_string(moments[i].time) + ", must hold " +
                           (level < reservoir.least ? "at least " + to_string(reservoir.least)
                                                    : "at most " + to_string(reservoir.most)));
            }
        }
    }

    void checkPeople() {
        for (std::size_t a = 0; a < problem_.activities.size(); ++a) {
            if (!isDone(a)) {
                continue;
            }
            checkSkills(a);
            for (std::size_t i = 0; i < placed(a).workers.size(); ++i) {
                const WorkerIndex worker = placed(a).workers[i];
                checkPresence(a, worker);
                for (std::size_t j = i + 1; j < placed(a).workers.size(); ++j) {
                    if (placed(a).workers[j] == worker) {
                        breach(Limit::DoubleBooked, {a},
                               quoted(problem_.workers[at(worker)].name) + " fills 2 places of " + name(a) +
                                   ", may fill 1");
                    }
                }
                for (std::size_t b = a + 1; b < problem_.activities.size(); ++b) {
                    const std::vector<WorkerIndex>& others = placed(b).workers;
                    if (std::find(others.begin(), others.end(), worker) != others.end() &&
                        overlap(placed(a).start, placed(a).end, placed(b).start, placed(b).end)) {
                        breach(Limit::DoubleBooked, {a, b},
                               quoted(problem_.workers[at(worker)].name) + " does " + name(a) + " " +
                                   fromTo(placed(a).start, placed(a).end) + " and " + name(b) + " " +
                                   fromTo(placed(b).start, placed(b).end));
                    }
                }
            }
        }
    }

    void checkSkills(std::size_t a) {
        std::size_t place = 0;
        for (const SkillNeed& need : mode(a).needs) {
            std::string without;
            int skilled = 0;
            for (int i = 0; i < need.count; ++i) {
                const Worker& worker = problem_.workers[at(placed(a).workers[place++])];
                if (std::find(worker.skills.begin(), worker.skills.end(), need.skill) != worker.skills.end()) {
                    ++skilled;
                } else {
                    without += ", not " + quoted(worker.name);
                }
            }
            if (skilled < need.count) {
                breach(Limit::Skill, {a},
                       name(a) + " needs " + to_string(need.count) + " people for " +
                           quoted(problem_.skills[at(need.skill)]) + ", has " + to_string(skilled) + without);
            }
        }
    }

    /// Each stretch between pauses by itself.
    void checkPresence(std::size_t a, WorkerIndex index) {
        const Worker& worker = problem_.workers[at(index)];
        Tick from = placed(a).start;
        for (const Span& pause : mode(a).pauses) {
            if (from < pause.from && pause.from < placed(a).end) {
                checkPresence(a, worker, {from, pause.from});
            }
            if (pause.from < placed(a).end) {
                from = std::max(from, pause.to);
            }
        }
        checkPresence(a, worker, {from, placed(a).end});
    }

    void checkPresence(std::size_t a, const Worker& worker, Span works) {
        std::string spans;
        for (const Span& span : worker.present) {
            if (span.from <= works.from && works.to <= span.to) {
                return;
            }
            spans += (spans.empty() ? "only " : " and ") + fromTo(span.from, span.to);
        }
        breach(Limit::Presence, {a},
               quoted(worker.name) + " does " + name(a) + " " + fromTo(works.from, works.to) + ", is there " +
                   (spans.empty() ? "at no time" : spans));
    }

    const Problem& problem_;
    const Schedule& schedule_;
    std::vector<Violation> violations_;
};

} // namespace

std::vector<Violation> check(const Problem& problem, const Schedule& schedule) {
    return Checker{problem, schedule}.check();
}

} // namespace piewright::schedule
