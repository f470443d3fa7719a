#include "day/hands.h"

#include <algorithm>
#include <iterator>

namespace piewright::day {

Crew::Crew(const book::Book& book, Date date) : book_(book) {
    for (const auto& [id, hand] : book.hands)
        if (const book::Shift* shift = shiftOn(hand, date)) present_.push_back({&hand, shift});
}

std::vector<schedule::SkillIndex> Crew::skillsOf(const book::Hand& hand) const {
    std::vector<schedule::SkillIndex> skills;
    int index = 0;
    for (const auto& [id, name] : book_.skills) {
        if (hand.skills.contains(id)) skills.push_back(static_cast<schedule::SkillIndex>(index));
        ++index;
    }
    skills.push_back(static_cast<schedule::SkillIndex>(index));
    return skills;
}

std::vector<Crew::Team> Crew::teamsFor(const SkillId& skill, int hands) const {
    std::vector<std::size_t> able;
    std::vector<double> pace(present_.size(), 0.0);
    for (std::size_t w = 0; w < present_.size(); ++w) {
        const auto found = present_[w].hand->skills.find(skill);
        if (found == present_[w].hand->skills.end()) continue;
        pace[w] = asFraction(found->second);
        able.push_back(w);
    }
    const auto wanted = static_cast<std::size_t>(std::max(1, hands));
    if (able.size() < wanted) return {};

    std::vector<Team> teams;
    std::vector<bool> chosen(able.size(), false);
    std::fill_n(chosen.begin(), wanted, true);
    do {
        Team team;
        team.pace = 0;
        for (std::size_t i = 0; i < able.size(); ++i) {
            if (!chosen[i]) continue;
            team.pace += pace[able[i]];
            team.workers.push_back(static_cast<schedule::WorkerIndex>(able[i]));
        }
        teams.push_back(std::move(team));
    } while (teams.size() <= kMostTeams && std::prev_permutation(chosen.begin(), chosen.end()));

    double slowest = pace[able.front()];
    double fastest = slowest;
    for (const std::size_t w : able) {
        slowest = std::min(slowest, pace[w]);
        fastest = std::max(fastest, pace[w]);
    }
    if (slowest < fastest && teams.size() <= kMostTeams) {
        std::stable_sort(teams.begin(), teams.end(), [](const Team& a, const Team& b) { return a.pace > b.pace; });
        return teams;
    }
    const auto index = static_cast<schedule::SkillIndex>(std::distance(book_.skills.begin(), book_.skills.find(skill)));
    Team anyone;
    anyone.pace = slowest * static_cast<double>(wanted);
    anyone.needs = {{index, static_cast<int>(wanted)}};
    return {anyone};
}

} // namespace piewright::day
