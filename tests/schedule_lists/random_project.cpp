#include "schedule_lists/random_project.h"

#include <algorithm>
#include <random>
#include <string>

namespace piewright::schedule {

Problem randomProject(std::uint64_t seed, const Features& features) {
    std::mt19937_64 engine(seed);
    const auto roll = [&](int from, int to) {
        return from + static_cast<int>(engine() % (static_cast<std::uint64_t>(to - from) + 1));
    };
    Problem p;
    p.horizon = std::max(40, 8 * features.activities);
    const int cumulatives = roll(1, 3);
    for (int r = 0; r < cumulatives; ++r) {
        Cumulative cumulative{roll(2, 4), {}};
        if (roll(0, 2) == 0) {
            const Tick from = roll(0, 8);
            cumulative.reserved.push_back({{from, from + roll(1, 5)}, roll(1, 3)});
        }
        p.resources.push_back({"room " + std::to_string(r), std::move(cumulative), {}});
    }
    Machine machine;
    if (roll(0, 1) == 0) machine.away.push_back({roll(2, 6), roll(7, 9)});
    p.resources.push_back({"machine", {}, std::move(machine)});
    if (features.people) {
        p.skills = {"paste", "lids"};
        const int people = roll(2, 4);
        for (int w = 0; w < people; ++w) {
            Worker worker{"hand " + std::to_string(w), {static_cast<SkillIndex>(w % 2)}, {{0, p.horizon}}};
            if (roll(0, 1) == 0) worker.skills = {SkillIndex{0}, SkillIndex{1}};
            if (roll(0, 2) == 0) worker.present = {{roll(0, 2), 11}, {13, p.horizon}};
            p.workers.push_back(std::move(worker));
        }
    }
    for (int a = 0; a < features.activities; ++a) {
        Activity activity;
        activity.name = "activity " + std::to_string(a);
        const int modes = features.modes ? roll(1, 3) : 1;
        for (int m = 0; m < modes; ++m) {
            Mode mode;
            mode.duration = roll(0, 9) == 0 ? 0 : roll(1, 5);
            for (int r = 0; r < cumulatives; ++r) {
                const int capacity = p.resources[static_cast<std::size_t>(r)].cumulative->capacity;
                if (roll(0, 1) == 0) mode.uses.push_back({static_cast<ResourceIndex>(r), roll(1, capacity), {}});
            }
            if (mode.duration > 0 && roll(0, 2) == 0) {
                mode.uses.push_back({static_cast<ResourceIndex>(cumulatives), 1, {}});
            }
            if (features.people && mode.duration > 0 && roll(0, 3) > 0) {
                mode.needs.push_back({SkillIndex{0}, 1});
                if (roll(0, 2) == 0) mode.needs.push_back({SkillIndex{1}, 1});
            }
            activity.modes.push_back(std::move(mode));
        }
        if (roll(0, 4) == 0) activity.release = roll(1, 6);
        if (features.greatestLags && roll(0, 4) == 0) activity.due = roll(12, 25);
        p.activities.push_back(std::move(activity));
    }
    const auto point = [&] { return roll(0, 1) == 0 ? Point::Start : Point::End; };
    for (int l = 0; l < features.activities; ++l) {
        const int from = roll(0, features.activities - 2);
        const int to = roll(from + 1, features.activities - 1);
        const bool isUsual = roll(0, 1) == 0;
        const Lag lag{static_cast<ActivityIndex>(from), isUsual ? Point::End : point(), static_cast<ActivityIndex>(to),
                      isUsual ? Point::Start : point(), isUsual ? 0 : roll(-2, 4),      "lag " + std::to_string(l)};
        p.lags.push_back(lag);
        if (features.greatestLags && roll(0, 1) == 0) {
            p.lags.push_back({lag.to, lag.toPoint, lag.from, lag.fromPoint, -std::max(lag.least, 0) - roll(0, 6),
                              "greatest lag " + std::to_string(l)});
        }
    }
    return p;
}

} // namespace piewright::schedule
