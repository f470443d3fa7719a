#include "schedule/twin.h"

#include "schedule/twin_cost.h"

#include <algorithm>
#include <functional>

namespace piewright::schedule {

namespace {

class Twin {
  public:
    Twin(const Problem& problem, std::uint64_t limit, bool isBestWanted)
        : p_(problem), left_(limit), isBestWanted_(isBestWanted) {}

    TwinAnswer run() {
        schedule_.placed.resize(p_.activities.size());
        if (from(0)) {
            return {true, schedule_, 0};
        }
        return {left_ > 0, left_ > 0 ? best_ : std::nullopt, least_};
    }

    bool keeps(const Schedule& schedule) {
        schedule_.placed.resize(p_.activities.size(), {0, 0, kAbsent, {}});
        for (std::size_t a = 0; a < p_.activities.size(); ++a) {
            const Placed& one = schedule.placed[a];
            if (one.mode == kAbsent) {
                if (!p_.activities[a].isOptional) {
                    return false;
                }
                continue;
            }
            schedule_.placed[a] = {one.start, one.end, one.mode, {}};
            if (one.start < p_.activities[a].release || one.end > std::min(p_.activities[a].due, p_.horizon) ||
                one.end != endOf(mode(a), one.start) || !timesKept(a) || !resourcesKept(a)) {
                return false;
            }
            std::vector<int> needs; // by place: the need
            for (std::size_t need = 0; need < mode(a).needs.size(); ++need) {
                needs.insert(needs.end(), static_cast<std::size_t>(mode(a).needs[need].count), static_cast<int>(need));
            }
            for (std::size_t i = 0; i < one.workers.size(); ++i) {
                if (i < needs.size()) {
                    const SkillIndex skill = mode(a).needs[static_cast<std::size_t>(needs[i])].skill;
                    const std::vector<SkillIndex>& skills = p_.workers[at(one.workers[i])].skills;
                    if (std::count(skills.begin(), skills.end(), skill) == 0) {
                        return false;
                    }
                }
                if (!isFree(a, one.workers[i])) {
                    return false;
                }
                schedule_.placed[a].workers.push_back(one.workers[i]);
            }
        }
        return whole();
    }

  private:
    bool from(std::size_t a) {
        if (a == p_.activities.size()) {
            return whole();
        }
        const Activity& activity = p_.activities[a];
        for (std::size_t m = 0; m < activity.modes.size(); ++m) {
            for (Tick start = activity.release; start <= std::min(activity.due, p_.horizon); ++start) {
                const Tick end = endOf(activity.modes[m], start);
                if (end > std::min(activity.due, p_.horizon)) {
                    continue;
                }
                schedule_.placed[a] = {start, end, static_cast<int>(m), {}};
                if (left_ == 0) {
                    return false;
                }
                --left_;
                if (!timesKept(a) || !resourcesKept(a)) {
                    continue;
                }
                if (crew(a, 0, 0)) {
                    return true;
                }
            }
        }
        schedule_.placed[a] = {0, 0, kAbsent, {}};
        return activity.isOptional && from(a + 1);
    }

    /// All are placed. True: looked at enough.
    bool whole() {
        for (std::size_t r = 0; r < p_.resources.size(); ++r) {
            if (p_.resources[r].reservoir && !stockKept(*p_.resources[r].reservoir, nthResource(r))) {
                return false;
            }
        }
        for (const Stay& stay : p_.stays) {
            for (const WorkerIndex worker : placed(stay.to).workers) {
                if (isDone(at(stay.from)) && !worksOn(stay.from, worker)) {
                    return false;
                }
            }
        }
        for (const Implication& one : p_.implications) {
            if (isDone(at(one.given)) && !isDone(at(one.also))) {
                return false;
            }
        }
        if (!isBestWanted_) {
            return true;
        }
        const Cost value = twinCost(p_, schedule_);
        if (!best_ || value < least_) {
            best_ = schedule_;
            least_ = value;
        }
        return false;
    }

    static ResourceIndex nthResource(std::size_t r) { return static_cast<ResourceIndex>(r); }
    const Placed& placed(ActivityIndex a) const { return schedule_.placed[at(a)]; }
    bool isDone(std::size_t a) const { return schedule_.placed[a].mode != kAbsent; }
    bool worksOn(ActivityIndex a, WorkerIndex worker) const {
        return std::count(placed(a).workers.begin(), placed(a).workers.end(), worker) > 0;
    }

    static bool pausesAt(const Mode& mode, Tick tick) {
        return std::any_of(mode.pauses.begin(), mode.pauses.end(),
                           [&](const Span& pause) { return pause.from <= tick && tick < pause.to; });
    }

    /// Tick by tick; past the horizon where it may not start at all.
    Tick endOf(const Mode& mode, Tick start) const {
        if (pausesAt(mode, start)) {
            return p_.horizon + 1;
        }
        Tick end = start;
        for (Tick done = 0; done < mode.duration && end <= p_.horizon; ++end) {
            done += pausesAt(mode, end) ? 0 : 1;
        }
        return end;
    }

    /// The level at every tick.
    bool stockKept(const Reservoir& reservoir, ResourceIndex resource) const {
        for (Tick tick = 0; tick <= p_.horizon; ++tick) {
            std::int64_t level = reservoir.initial;
            for (std::size_t a = 0; a < p_.activities.size(); ++a) {
                if (!isDone(a)) {
                    continue;
                }
                for (const Flow& flow : mode(a).flows) {
                    const Placed& one = schedule_.placed[a];
                    if (flow.resource == resource && (flow.point == Point::End ? one.end : one.start) <= tick) {
                        level += flow.amount;
                    }
                }
            }
            if (level < reservoir.least || level > reservoir.most) {
                return false;
            }
        }
        return true;
    }

    const Mode& mode(std::size_t a) const {
        return p_.activities[a].modes[static_cast<std::size_t>(schedule_.placed[a].mode)];
    }

    /// Fills place after place of the needs, then the team.
    bool crew(std::size_t a, std::size_t need, int filled) {
        std::vector<WorkerIndex>& workers = schedule_.placed[a].workers;
        if (need == mode(a).needs.size()) {
            const std::size_t before = workers.size();
            for (const WorkerIndex worker : mode(a).team) {
                if (!isFree(a, worker)) {
                    workers.resize(before);
                    return false;
                }
                workers.push_back(worker);
            }
            if (from(a + 1)) {
                return true;
            }
            workers.resize(before);
            return false;
        }
        if (filled == mode(a).needs[need].count) {
            return crew(a, need + 1, 0);
        }
        for (std::size_t w = 0; w < p_.workers.size(); ++w) {
            const auto worker = static_cast<WorkerIndex>(w);
            // Within one need the order of people means nothing.
            if (filled > 0 && workers.back() >= worker) {
                continue;
            }
            const std::vector<SkillIndex>& skills = p_.workers[w].skills;
            if (std::count(skills.begin(), skills.end(), mode(a).needs[need].skill) == 0 || !isFree(a, worker)) {
                continue;
            }
            workers.push_back(worker);
            if (crew(a, need, filled + 1)) {
                return true;
            }
            workers.pop_back();
        }
        return false;
    }

    bool isFree(std::size_t a, WorkerIndex worker) const {
        const Placed& me = schedule_.placed[a];
        const std::vector<Span>& present = p_.workers[at(worker)].present;
        if (me.start == me.end && std::none_of(present.begin(), present.end(), [&](const Span& span) {
                return span.from <= me.start && me.start <= span.to;
            })) {
            return false;
        }
        for (Tick tick = me.start; tick < me.end; ++tick) {
            if (!pausesAt(mode(a), tick) && std::none_of(present.begin(), present.end(), [&](const Span& span) {
                    return span.from <= tick && tick < span.to;
                })) {
                return false;
            }
        }
        for (std::size_t b = 0; b <= a; ++b) {
            const Placed& other = schedule_.placed[b];
            if (std::count(other.workers.begin(), other.workers.end(), worker) == 0) {
                continue;
            }
            if (b == a || (other.end > me.start && me.end > other.start)) {
                return false;
            }
        }
        return true;
    }

    bool timesKept(std::size_t a) const {
        const auto when = [&](ActivityIndex activity, Point point) {
            const Placed& placed = schedule_.placed[at(activity)];
            return point == Point::End ? placed.end : placed.start;
        };
        return std::all_of(p_.lags.begin(), p_.lags.end(), [&](const Lag& lag) {
            return at(lag.from) > a || at(lag.to) > a || !isDone(at(lag.from)) || !isDone(at(lag.to)) ||
                   when(lag.from, lag.fromPoint) + lag.least <= when(lag.to, lag.toPoint);
        });
    }

    bool resourcesKept(std::size_t a) const {
        return std::all_of(mode(a).uses.begin(), mode(a).uses.end(), [&](const Use& use) {
            const Resource& resource = p_.resources[at(use.resource)];
            return resource.machine ? machineKept(*resource.machine, a, use)
                                    : levelKept(*resource.cumulative, a, use.resource);
        });
    }

    /// Tick by tick.
    bool levelKept(const Cumulative& cumulative, std::size_t a, ResourceIndex resource) const {
        for (Tick tick = schedule_.placed[a].start; tick < schedule_.placed[a].end; ++tick) {
            int total = 0;
            int mine = 0;
            for (std::size_t b = 0; b <= a; ++b) {
                if (!isDone(b)) {
                    continue;
                }
                for (const Use& use : mode(b).uses) {
                    if (use.resource != resource || schedule_.placed[b].start > tick ||
                        schedule_.placed[b].end <= tick) {
                        continue;
                    }
                    total += use.amount;
                    if (b == a) {
                        mine = use.amount;
                    }
                }
            }
            for (const Cumulative::Reserved& reserved : cumulative.reserved) {
                if (tick >= reserved.span.from && tick < reserved.span.to) {
                    total += reserved.amount;
                }
            }
            if (mine > 0 && total > cumulative.capacity) {
                return false;
            }
        }
        return true;
    }

    bool machineKept(const Machine& machine, std::size_t a, const Use& mine) const {
        const Placed& me = schedule_.placed[a];
        if (!machine.first.empty() && me.start < machine.first[at(mine.family)]) {
            return false;
        }
        for (const Span& away : machine.away) {
            if (!(me.end <= away.from || me.start >= away.to)) {
                return false;
            }
        }
        int load = 0;
        for (std::size_t b = 0; b <= a; ++b) {
            if (!isDone(b)) {
                continue;
            }
            const Placed& other = schedule_.placed[b];
            for (const Use& use : mode(b).uses) {
                if (use.resource != mine.resource) {
                    continue;
                }
                if (machine.together > 1 && use.family == mine.family && other.start == me.start) {
                    load += other.end > other.start ? use.amount : 0;
                    continue;
                }
                if (b == a) {
                    continue;
                }
                const Tick there = machine.setup.empty() ? 0 : machine.setup[at(use.family)][at(mine.family)];
                const Tick back = machine.setup.empty() ? 0 : machine.setup[at(mine.family)][at(use.family)];
                if (!(other.end + there <= me.start || me.end + back <= other.start)) {
                    return false;
                }
            }
        }
        return load <= machine.together;
    }

    const Problem& p_;
    std::uint64_t left_;
    bool isBestWanted_;
    Schedule schedule_;
    std::optional<Schedule> best_;
    Cost least_ = 0;
};

} // namespace

TwinAnswer twinSolve(const Problem& problem, std::uint64_t limit) { return Twin{problem, limit, false}.run(); }
bool twinKeeps(const Problem& problem, const Schedule& schedule) { return Twin{problem, 0, false}.keeps(schedule); }
TwinAnswer twinBest(const Problem& problem, std::uint64_t limit) { return Twin{problem, limit, true}.run(); }

} // namespace piewright::schedule
