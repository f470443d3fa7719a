// Brandimarte 1993, Annals of Operations Research 41: flexible job shop.
#include "instances/formats.h"

#include <algorithm>

namespace piewright::bench {

std::optional<Instance> readFlexibleShop(std::string_view text) {
    // The first line may hold a third number, an average, which need not be whole.
    const std::size_t line = text.find('\n');
    if (line == std::string_view::npos) return std::nullopt;
    Numbers head(text.substr(0, line));
    const std::size_t jobs = head.count();
    const std::size_t machines = head.count();
    if (head.failed() || jobs == 0 || machines == 0) return std::nullopt;
    Instance instance{Format::FlexibleShop, {}};
    schedule::Problem& problem = instance.problem;
    for (std::size_t m = 0; m < machines; ++m) {
        problem.resources.push_back({"machine " + std::to_string(m + 1), {}, schedule::Machine{}});
    }
    Numbers numbers(text.substr(line));
    for (std::size_t job = 0; job < jobs; ++job) {
        const std::size_t operations = numbers.count();
        for (std::size_t o = 0; o < operations; ++o) {
            schedule::Activity activity;
            activity.name = "job " + std::to_string(job + 1) + " operation " + std::to_string(o + 1);
            const std::size_t alternatives = numbers.count();
            schedule::Tick longest = 0;
            for (std::size_t a = 0; a < alternatives; ++a) {
                const std::size_t machine = numbers.count();
                schedule::Mode mode;
                mode.duration = numbers.next();
                if (machine < 1 || machine > machines) return std::nullopt;
                mode.uses.push_back({nth<schedule::ResourceIndex>(machine - 1), 1, {}});
                longest = std::max(longest, mode.duration);
                activity.modes.push_back(std::move(mode));
            }
            problem.horizon += longest;
            problem.activities.push_back(std::move(activity));
            if (o > 0) {
                problem.lags.push_back({nth<schedule::ActivityIndex>(problem.activities.size() - 2),
                                        schedule::Point::End,
                                        nth<schedule::ActivityIndex>(problem.activities.size() - 1),
                                        schedule::Point::Start, 0, "succession"});
            }
        }
    }
    if (numbers.failed() || problem.activities.empty()) return std::nullopt;
    return instance;
}

} // namespace piewright::bench
