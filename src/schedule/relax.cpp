#include "schedule/relax.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace piewright::schedule {

Relaxing::Relaxing(const Problem& problem) : linked_(problem.activities.size()) {
    for (const Lag& lag : problem.lags) {
        linked_[at(lag.from)].push_back(at(lag.to));
        linked_[at(lag.to)].push_back(at(lag.from));
    }
    all_.resize(problem.activities.size());
    std::iota(all_.begin(), all_.end(), std::size_t{0});
    std::vector<std::vector<std::size_t>> users(problem.resources.size() + problem.skills.size());
    for (const std::size_t a : all_) {
        const auto add = [&](std::size_t group) {
            if (users[group].empty() || users[group].back() != a) users[group].push_back(a);
        };
        for (const Mode& mode : problem.activities[a].modes) {
            for (const Use& use : mode.uses) add(at(use.resource));
            for (const SkillNeed& need : mode.needs) add(problem.resources.size() + at(need.skill));
        }
    }
    for (std::vector<std::size_t>& group : users) {
        if (group.size() > 1) users_.push_back(std::move(group));
    }
}

void Relaxing::nearest(Tick time, std::size_t count, const Schedule& schedule, const std::vector<std::size_t>& among,
                       std::vector<char>& isPicked) const {
    std::vector<std::pair<Tick, std::size_t>> away;
    away.reserve(among.size());
    for (const std::size_t a : among) {
        const Placed& placed = schedule.placed[a];
        away.emplace_back(std::max({0, placed.start - time, time - placed.end}), a);
    }
    const std::size_t last = std::min(count, away.size());
    std::nth_element(away.begin(), away.begin() + static_cast<std::ptrdiff_t>(last), away.end());
    for (std::size_t i = 0; i < last; ++i) isPicked[away[i].second] = 1;
}

std::vector<char> Relaxing::pick(Relax how, std::size_t count, const Schedule& schedule, Dice& dice) const {
    std::vector<char> isPicked(all_.size(), 0);
    if (all_.empty()) return isPicked;
    // A moment at which something begins or ends, so that busy times come up more often.
    const auto moment = [&] {
        const Placed& placed = schedule.placed[dice.below(all_.size())];
        return dice.chance(50) ? placed.start : placed.end;
    };
    switch (how) {
    case Relax::Window:
        nearest(moment(), count, schedule, all_, isPicked);
        break;
    case Relax::Two:
        nearest(moment(), count / 2, schedule, all_, isPicked);
        nearest(moment(), count - count / 2, schedule, all_, isPicked);
        break;
    case Relax::Peak:
        nearest(moment(), count, schedule, users_.empty() ? all_ : users_[dice.below(users_.size())], isPicked);
        break;
    case Relax::Linked: {
        std::vector<std::size_t> edge{dice.below(all_.size())};
        for (std::size_t picked = 0; picked < count && !edge.empty();) {
            const std::size_t place = dice.below(edge.size());
            const std::size_t a = edge[place];
            edge[place] = edge.back();
            edge.pop_back();
            if (isPicked[a] != 0) continue;
            isPicked[a] = 1;
            ++picked;
            for (const std::size_t other : linked_[a]) {
                if (isPicked[other] == 0) edge.push_back(other);
            }
        }
        break;
    }
    case Relax::Scattered:
        for (std::size_t i = 0; i < count; ++i) isPicked[dice.below(all_.size())] = 1;
        break;
    }
    return isPicked;
}

} // namespace piewright::schedule
