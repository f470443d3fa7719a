// Kolisch, Sprecher 1996, European Journal of Operational Research 96: resource-constrained project scheduling.
#include "instances/formats.h"

namespace piewright::bench {

std::optional<Instance> readProjectSm(std::string_view text) {
    const auto after = [&](std::string_view heading) -> std::string_view {
        const std::size_t at = text.find(heading);
        if (at == std::string_view::npos) return {};
        const std::size_t line = text.find('\n', at);
        return line == std::string_view::npos ? std::string_view{} : text.substr(line);
    };
    const std::size_t jobsAt = text.find("jobs (incl.");
    const std::size_t renewableAt = text.find("- renewable");
    if (jobsAt == std::string_view::npos || renewableAt == std::string_view::npos) return std::nullopt;
    const std::size_t jobs = Numbers(text.substr(text.find(':', jobsAt))).count();
    const std::size_t resources = Numbers(text.substr(text.find(':', renewableAt))).count(100);
    Instance instance{Format::ProjectSm, {}};
    schedule::Problem& problem = instance.problem;
    problem.activities.resize(jobs);
    Numbers relations(after("PRECEDENCE RELATIONS").substr(0));
    // The heading line of the table has "#modes" and "#successors" and no digits.
    for (std::size_t job = 0; job < jobs; ++job) {
        if (relations.next() != static_cast<int>(job) + 1 || relations.next() != 1) return std::nullopt;
        const std::size_t successors = relations.count();
        for (std::size_t s = 0; s < successors; ++s) {
            const int to = relations.next();
            if (to < 1 || static_cast<std::size_t>(to) > jobs) return std::nullopt;
            problem.lags.push_back({nth<schedule::ActivityIndex>(job), schedule::Point::End,
                                    nth<schedule::ActivityIndex>(static_cast<std::size_t>(to) - 1),
                                    schedule::Point::Start, 0, "succession"});
        }
    }
    std::string_view table = after("REQUESTS/DURATIONS");
    table = table.substr(std::min(table.size(), table.find("---"))); // below the names R 1, R 2, …
    table = table.substr(std::min(table.size(), table.find('\n')));
    Numbers requests(table);
    for (std::size_t job = 0; job < jobs; ++job) {
        if (requests.next() != static_cast<int>(job) + 1 || requests.next() != 1) return std::nullopt;
        schedule::Mode mode;
        mode.duration = requests.next();
        problem.horizon += mode.duration;
        for (std::size_t r = 0; r < resources; ++r) {
            const int amount = requests.next();
            if (amount > 0) mode.uses.push_back({nth<schedule::ResourceIndex>(r), amount, {}});
        }
        problem.activities[job].name = "activity " + std::to_string(job + 1);
        problem.activities[job].modes.push_back(std::move(mode));
    }
    std::string_view capacities = after("RESOURCEAVAILABILITIES");
    capacities = capacities.substr(std::min(capacities.size(), capacities.find('\n', 1))); // below the names
    Numbers available(capacities);
    for (std::size_t r = 0; r < resources; ++r) {
        problem.resources.push_back(
            {"resource " + std::to_string(r + 1), schedule::Cumulative{available.next(), {}}, {}});
    }
    if (relations.failed() || requests.failed() || available.failed() || jobs == 0) return std::nullopt;
    return instance;
}

} // namespace piewright::bench
