#include "schedule/twin.h"

#include <algorithm>
#include <functional>

namespace piewright::schedule {

namespace {

class Twin {
  public:
    Twin(const Problem& problem, std::uint64_t limit) : p_(problem), left_(limit) {}

    TwinAnswer run() {
        schedule_.placed.resize(p_.activities.size());
        const bool found = from(0);
        if (found) {
            return {true, schedule_};
        }
        return {left_ > 0, {}};
    }

  private:
    bool from(std::size_t a) {
        if (a == p_.activities.size()) {
            return true;
        }
        const Activity& activity = p_.activities[a];
        for (std::size_t m = 0; m < activity.modes.size(); ++m) {
            for (Tick start = activity.release;
                 start + activity.modes[m].duration <= std::min(activity.due, p_.horizon); ++start) {
                schedule_.placed[a] = {start, start + activity.modes[m].duration, static_cast<int>(m), {}};
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
        return false;
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
        bool isThere = false;
        for (const Span& span : p_.workers[at(worker)].present) {
            isThere = isThere || (me.start >= span.from && me.end <= span.to);
        }
        if (!isThere) {
            return false;
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
            return at(lag.from) > a || at(lag.to) > a ||
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
        for (std::size_t b = 0; b < a; ++b) {
            const Placed& other = schedule_.placed[b];
            for (const Use& use : mode(b).uses) {
                if (use.resource != mine.resource) {
                    continue;
                }
                const Tick there = machine.setup.empty() ? 0 : machine.setup[at(use.family)][at(mine.family)];
                const Tick back = machine.setup.empty() ? 0 : machine.setup[at(mine.family)][at(use.family)];
                if (!(other.end + there <= me.start || me.end + back <= other.start)) {
                    return false;
                }
            }
        }
        return true;
    }

    const Problem& p_;
    std::uint64_t left_;
    Schedule schedule_;
};

} // namespace

TwinAnswer twinSolve(const Problem& problem, std::uint64_t limit) { return Twin{problem, limit}.run(); }

} // namespace piewright::schedule
