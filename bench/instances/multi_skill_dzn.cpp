// Young, Feydy, Schutt 2017 (CP): multi-skill project scheduling. Everyone who takes part does so for the whole task.
#include "instances/formats.h"

namespace piewright::bench {

std::optional<Instance> readMultiSkillDzn(std::string_view text) {
    const auto value = [&](std::string_view name) -> std::string_view {
        for (std::size_t at = text.find(name); at != std::string_view::npos; at = text.find(name, at + 1)) {
            const std::size_t after = text.find_first_not_of(" \t", at + name.size());
            const bool isWord = at == 0 || text[at - 1] == '\n' || text[at - 1] == ' ' || text[at - 1] == ';';
            if (isWord && after != std::string_view::npos && text[after] == '=') {
                return text.substr(after, text.find(';', after) - after);
            }
        }
        return {};
    };
    const std::size_t tasks = Numbers(value("nActs")).count();
    const std::size_t skills = Numbers(value("nSkills")).count(100);
    const std::size_t people = Numbers(value("nResources")).count(1000);
    const std::size_t pairs = Numbers(value("nPrecs")).count(1'000'000);
    if (tasks == 0 || skills == 0) return std::nullopt;
    Instance instance{Format::MultiSkillDzn, {}};
    schedule::Problem& problem = instance.problem;
    Numbers durations(value("dur"));
    Numbers required(value("sreq"));
    for (std::size_t s = 0; s < skills; ++s) problem.skills.push_back("skill " + std::to_string(s + 1));
    for (std::size_t task = 0; task < tasks; ++task) {
        schedule::Mode mode;
        mode.duration = durations.next();
        problem.horizon += mode.duration;
        for (std::size_t s = 0; s < skills; ++s) {
            const int count = required.next();
            if (count > 0) mode.needs.push_back({nth<schedule::SkillIndex>(s), count});
        }
        problem.activities.push_back(
            {"activity " + std::to_string(task + 1), {std::move(mode)}, 0, schedule::kNever, {}, {}});
    }
    std::string_view mastery = value("mastery");
    for (std::size_t person = 0; person < people; ++person) {
        schedule::Worker worker;
        worker.name = "person " + std::to_string(person + 1);
        worker.present = {{0, problem.horizon}};
        for (std::size_t s = 0; s < skills; ++s) {
            const std::size_t yes = mastery.find("true");
            const std::size_t no = mastery.find("false");
            if (yes == no) return std::nullopt;
            if (yes < no) worker.skills.push_back(nth<schedule::SkillIndex>(s));
            mastery.remove_prefix(std::min(yes, no) + 4);
        }
        problem.workers.push_back(std::move(worker));
    }
    Numbers before(value("pred"));
    Numbers after(value("succ"));
    for (std::size_t p = 0; p < pairs; ++p) {
        const int from = before.next();
        const int to = after.next();
        if (from < 1 || to < 1 || static_cast<std::size_t>(std::max(from, to)) > tasks) return std::nullopt;
        problem.lags.push_back({nth<schedule::ActivityIndex>(static_cast<std::size_t>(from) - 1), schedule::Point::End,
                                nth<schedule::ActivityIndex>(static_cast<std::size_t>(to) - 1), schedule::Point::Start,
                                0, "succession"});
    }
    if (durations.failed() || required.failed() || before.failed() || after.failed()) return std::nullopt;
    return instance;
}

} // namespace piewright::bench
