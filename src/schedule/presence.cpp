#include "schedule/presence.h"

#include <algorithm>

namespace piewright::schedule {

Presence::Presence(const Problem& problem)
    : isRequired_(problem.activities.size(), 0), implied_(problem.activities.size()) {
    std::vector<std::vector<std::size_t>> asks(problem.activities.size());
    for (const Implication& implication : problem.implications)
        asks[at(implication.given)].push_back(at(implication.also));
    std::vector<std::size_t> reached;
    for (std::size_t a = 0; a < isRequired_.size(); ++a) {
        if (problem.activities[a].isOptional) continue;
        isRequired_[a] = 1;
        reached.push_back(a);
    }
    while (!reached.empty()) {
        const std::size_t a = reached.back();
        reached.pop_back();
        for (const std::size_t also : asks[a]) {
            if (isRequired_[also] != 0) continue;
            isRequired_[also] = 1;
            reached.push_back(also);
        }
    }
    std::vector<char> isSeen(isRequired_.size(), 0);
    for (std::size_t a = 0; a < isRequired_.size(); ++a) {
        if (isRequired_[a] != 0) continue;
        std::vector<std::size_t>& implied = implied_[a];
        implied.push_back(a);
        isSeen[a] = 1;
        for (std::size_t i = 0; i < implied.size(); ++i) {
            for (const std::size_t also : asks[implied[i]]) {
                if (isRequired_[also] != 0 || isSeen[also] != 0) continue;
                isSeen[also] = 1;
                implied.push_back(also);
            }
        }
        for (const std::size_t also : implied) isSeen[also] = 0;
        std::sort(implied.begin(), implied.end());
    }
}

bool Presence::follows(std::size_t given, std::size_t also) const {
    return isRequired(also) || given == also ||
           std::binary_search(implied_[given].begin(), implied_[given].end(), also);
}

} // namespace piewright::schedule
