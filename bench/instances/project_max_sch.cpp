// Schwindt 1998 (ProGen/max): project scheduling with least and greatest lags between starts.
#include "instances/formats.h"

#include <algorithm>

namespace piewright::bench {

std::optional<Instance> readProjectMaxSch(std::string_view text) {
    Numbers numbers(text);
    const std::size_t tasks = numbers.count() + 2;
    const std::size_t resources = numbers.count(100);
    numbers.next();
    numbers.next();
    Instance instance{Format::ProjectMaxSch, {}};
    schedule::Problem& problem = instance.problem;
    problem.activities.resize(tasks);
    std::vector<schedule::Tick> longest(tasks, 0);
    for (std::size_t task = 0; task < tasks; ++task) {
        if (numbers.next() != static_cast<int>(task) || numbers.next() != 1) return std::nullopt;
        const std::size_t arcs = numbers.count();
        std::vector<std::size_t> targets;
        for (std::size_t a = 0; a < arcs; ++a) {
            targets.push_back(numbers.count());
            if (targets.back() >= tasks) return std::nullopt;
        }
        for (const std::size_t target : targets) {
            const schedule::Tick lag = numbers.next();
            longest[task] = std::max(longest[task], lag);
            problem.lags.push_back({nth<schedule::ActivityIndex>(task), schedule::Point::Start,
                                    nth<schedule::ActivityIndex>(target), schedule::Point::Start, lag,
                                    "lag " + std::to_string(task) + " to " + std::to_string(target)});
        }
    }
    for (std::size_t task = 0; task < tasks; ++task) {
        if (numbers.next() != static_cast<int>(task) || numbers.next() != 1) return std::nullopt;
        schedule::Mode mode;
        mode.duration = numbers.next();
        for (std::size_t r = 0; r < resources; ++r) {
            const int amount = numbers.next();
            if (amount > 0) mode.uses.push_back({nth<schedule::ResourceIndex>(r), amount, {}});
        }
        problem.horizon += std::max(longest[task], mode.duration);
        problem.activities[task].name = "activity " + std::to_string(task);
        problem.activities[task].modes.push_back(std::move(mode));
    }
    for (std::size_t r = 0; r < resources; ++r) {
        problem.resources.push_back({"resource " + std::to_string(r), schedule::Cumulative{numbers.next(), {}}, {}});
    }
    if (numbers.failed()) return std::nullopt;
    return instance;
}

} // namespace piewright::bench
