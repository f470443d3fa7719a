#include "schedule/energy.h"

#include <algorithm>
#include <functional>
#include <vector>

namespace piewright::schedule {

namespace {

/// One way of asking for something: so much of it for so long.
struct Ask {
    Tick duration;
    std::int64_t amount;
};

/// An activity that asks for it whichever way it is done.
struct Job {
    Tick earliestStart, latestStart, earliestEnd, latestEnd;
    std::vector<Ask> asks; ///< by mode

    /// Least amount x time inside [from, to): pushed to the left or to the right as far as its window lets it.
    [[nodiscard]] std::int64_t least(Tick from, Tick to) const {
        std::int64_t best = -1;
        for (const Ask& ask : asks) {
            const std::int64_t left =
                std::int64_t{std::max(earliestStart, earliestEnd - ask.duration)} + ask.duration - from;
            const std::int64_t right = std::int64_t{to} - std::min(latestStart, latestEnd - ask.duration);
            const std::int64_t inside =
                std::max<std::int64_t>(0, std::min({left, right, std::int64_t{ask.duration}, std::int64_t{to} - from}));
            best = best < 0 ? inside * ask.amount : std::min(best, inside * ask.amount);
        }
        return best;
    }
};

class Meter {
    static constexpr std::size_t kMostTicks = 48; ///< interval ends looked at, each side

  public:
    explicit Meter(const Model& model)
        : model_(model), bounds_(model.network, model.problem, model.presence, model.lengths) {}

    bool isOverloaded() {
        const Problem& problem = model_.problem;
        for (std::size_t r = 0; r < problem.resources.size(); ++r) {
            const auto asked = [&](const Mode& mode) {
                for (const Use& use : mode.uses) {
                    if (at(use.resource) == r) {
                        return std::int64_t{use.amount};
                    }
                }
                return std::int64_t{0};
            };
            const Resource& resource = problem.resources[r];
            // Of loads and stocks it knows nothing.
            if (resource.reservoir || (resource.machine && resource.machine->together > 1)) continue;
            if (tooMuch(asked, [&](Tick from, Tick to) { return room(resource, from, to); })) {
                return true;
            }
        }
        return arePeopleOverloaded();
    }

  private:
    using Asked = std::function<std::int64_t(const Mode&)>;
    using Room = std::function<std::int64_t(Tick, Tick)>;

    static std::int64_t shared(const Span& span, Tick from, Tick to) {
        return std::max<std::int64_t>(0, std::int64_t{std::min(span.to, to)} - std::max(span.from, from));
    }

    static std::int64_t room(const Resource& resource, Tick from, Tick to) {
        if (resource.machine) {
            Tick open = from;
            if (!resource.machine->first.empty()) {
                open =
                    std::max(open, *std::min_element(resource.machine->first.begin(), resource.machine->first.end()));
            }
            std::vector<Span> away = resource.machine->away;
            std::sort(away.begin(), away.end());
            std::int64_t left = 0;
            for (const Span& span : away) {
                if (span.from > open) {
                    left += std::max<std::int64_t>(0, std::int64_t{std::min(span.from, to)} - open);
                }
                open = std::max(open, span.to);
            }
            return left + std::max<std::int64_t>(0, std::int64_t{to} - open);
        }
        if (!resource.cumulative) {
            return 0;
        }
        // Tick spans between changes of what is reserved; nobody can use less than nothing.
        const Cumulative& cumulative = *resource.cumulative;
        std::vector<Tick> ticks{from, to};
        for (const Cumulative::Reserved& reserved : cumulative.reserved) {
            for (const Tick tick : {reserved.span.from, reserved.span.to}) {
                if (from < tick && tick < to) {
                    ticks.push_back(tick);
                }
            }
        }
        std::sort(ticks.begin(), ticks.end());
        std::int64_t sum = 0;
        for (std::size_t i = 0; i + 1 < ticks.size(); ++i) {
            std::int64_t free = cumulative.capacity;
            for (const Cumulative::Reserved& reserved : cumulative.reserved) {
                if (reserved.span.from <= ticks[i] && ticks[i] < reserved.span.to) {
                    free -= reserved.amount;
                }
            }
            sum += std::max<std::int64_t>(0, free) * (std::int64_t{ticks[i + 1]} - ticks[i]);
        }
        return sum;
    }

    bool arePeopleOverloaded() {
        const Problem& problem = model_.problem;
        // People with any of one or two skills, everyone, and each alone.
        std::vector<std::vector<char>> groups;
        const auto add = [&](std::vector<char> group) {
            if (std::find(groups.begin(), groups.end(), group) == groups.end()) {
                groups.push_back(std::move(group));
            }
        };
        for (std::size_t s = 0; s < problem.skills.size(); ++s) {
            for (std::size_t t = s; t < problem.skills.size(); ++t) {
                std::vector<char> group(problem.workers.size(), 0);
                for (const WorkerIndex worker : model_.skilled[s]) {
                    group[at(worker)] = 1;
                }
                for (const WorkerIndex worker : model_.skilled[t]) {
                    group[at(worker)] = 1;
                }
                add(std::move(group));
            }
        }
        add(std::vector<char>(problem.workers.size(), 1));
        for (std::size_t w = 0; w < problem.workers.size(); ++w) {
            std::vector<char> group(problem.workers.size(), 0);
            group[w] = 1;
            add(std::move(group));
        }
        return std::any_of(groups.begin(), groups.end(), [&](const std::vector<char>& group) {
            // A place that only the group can fill is work for the group.
            std::vector<char> isTheirs;
            isTheirs.reserve(model_.skilled.size());
            for (const std::vector<WorkerIndex>& skilled : model_.skilled) {
                isTheirs.push_back(std::all_of(skilled.begin(), skilled.end(),
                                               [&](WorkerIndex worker) { return group[at(worker)] != 0; })
                                       ? 1
                                       : 0);
            }
            const auto asked = [&](const Mode& mode) {
                std::int64_t places = 0;
                for (const SkillNeed& need : mode.needs) {
                    if (isTheirs[at(need.skill)] != 0) {
                        places += need.count;
                    }
                }
                for (const WorkerIndex worker : mode.team) {
                    places += group[at(worker)];
                }
                return places;
            };
            return tooMuch(asked, [&](Tick from, Tick to) {
                std::int64_t sum = 0;
                for (std::size_t w = 0; w < group.size(); ++w) {
                    if (group[w] == 0) {
                        continue;
                    }
                    for (const Span& span : problem.workers[w].present) {
                        sum += shared(span, from, to);
                    }
                }
                return sum;
            });
        });
    }

    /// Some of them, evenly; the ends always.
    static void thin(std::vector<Tick>& ticks) {
        if (ticks.size() <= kMostTicks) {
            return;
        }
        for (std::size_t i = 0; i < kMostTicks; ++i) {
            ticks[i] = ticks[i * (ticks.size() - 1) / (kMostTicks - 1)];
        }
        ticks.resize(kMostTicks);
    }

    bool tooMuch(const Asked& asked, const Room& room) {
        std::vector<Job> jobs;
        for (std::size_t a = 0; a < model_.problem.activities.size(); ++a) {
            // What may be left out, and what pauses, may ask for less than it seems to.
            const std::vector<Mode>& ways = model_.problem.activities[a].modes;
            if (!model_.presence.isRequired(a) ||
                std::any_of(ways.begin(), ways.end(), [](const Mode& mode) { return !mode.pauses.empty(); }))
                continue;
            Job job{bounds_.lower(startOf(a)),
                    bounds_.upper(startOf(a)),
                    bounds_.lower(endOf(a)),
                    bounds_.upper(endOf(a)),
                    {}};
            for (const int m : model_.modes[a]) {
                const Mode& mode = model_.problem.activities[a].modes[static_cast<std::size_t>(m)];
                job.asks.push_back({mode.duration, asked(mode)});
            }
            if (std::all_of(job.asks.begin(), job.asks.end(),
                            [](const Ask& ask) { return ask.duration > 0 && ask.amount > 0; })) {
                jobs.push_back(std::move(job));
            }
        }
        std::vector<Tick> froms;
        std::vector<Tick> tos;
        for (const Job& job : jobs) {
            froms.push_back(job.earliestStart);
            tos.push_back(job.latestEnd);
            if (jobs.size() > kMostTicks / 3) {
                continue;
            }
            froms.insert(froms.end(), {job.latestStart, job.earliestEnd});
            tos.insert(tos.end(), {job.earliestEnd, job.latestStart});
        }
        for (std::vector<Tick>* ticks : {&froms, &tos}) {
            std::sort(ticks->begin(), ticks->end());
            ticks->erase(std::unique(ticks->begin(), ticks->end()), ticks->end());
            thin(*ticks);
        }
        for (const Tick from : froms) {
            for (const Tick to : tos) {
                if (to <= from) {
                    continue;
                }
                std::int64_t sum = 0;
                for (const Job& job : jobs) {
                    sum += job.least(from, to);
                }
                if (sum > 0 && sum > room(from, to)) {
                    return true;
                }
            }
        }
        return false;
    }

    const Model& model_;
    Bounds bounds_;
};

} // namespace

bool isOverloaded(const Model& model) { return Meter{model}.isOverloaded(); }

} // namespace piewright::schedule
