#include "schedule/crew.h"

#include <algorithm>

namespace piewright::schedule {

namespace {

class Matching {
  public:
    Matching(const Problem& problem, std::span<const SkillNeed> needs, std::size_t places)
        : problem_(problem), holder_(places), isHeld_(places), seen_(places) {
        skill_.reserve(places);
        for (const SkillNeed& need : needs) {
            skill_.insert(skill_.end(), static_cast<std::size_t>(need.count), need.skill);
        }
    }

    /// One more worker at work, the others perhaps at other places.
    bool add(WorkerIndex worker) {
        std::fill(seen_.begin(), seen_.end(), char{0});
        return seat(worker);
    }

    /// By place; every place must be held.
    [[nodiscard]] const std::vector<WorkerIndex>& holders() const { return holder_; }

  private:
    bool seat(WorkerIndex worker) {
        for (std::size_t place = 0; place < holder_.size(); ++place) { // a free place before another's
            if (isHeld_[place] == 0 && canFill(worker, place)) {
                isHeld_[place] = 1;
                holder_[place] = worker;
                return true;
            }
        }
        for (std::size_t place = 0; place < holder_.size(); ++place) {
            if (seen_[place] != 0 || isHeld_[place] == 0 || !canFill(worker, place)) {
                continue;
            }
            seen_[place] = 1;
            if (seat(holder_[place])) {
                holder_[place] = worker;
                return true;
            }
        }
        return false;
    }

    [[nodiscard]] bool canFill(WorkerIndex worker, std::size_t place) const {
        const std::vector<SkillIndex>& skills = problem_.workers[at(worker)].skills;
        return std::find(skills.begin(), skills.end(), skill_[place]) != skills.end();
    }

    const Problem& problem_;
    std::vector<SkillIndex> skill_;
    std::vector<WorkerIndex> holder_;
    std::vector<char> isHeld_;
    std::vector<char> seen_;
};

} // namespace

std::optional<std::vector<WorkerIndex>> crewFor(const Problem& problem, std::span<const SkillNeed> needs,
                                                std::span<const WorkerIndex> candidates) {
    std::size_t places = 0;
    for (const SkillNeed& need : needs) {
        places += static_cast<std::size_t>(need.count);
    }
    if (places > candidates.size()) {
        return std::nullopt;
    }
    Matching matching(problem, needs, places);
    std::size_t filled = 0;
    for (std::size_t i = 0; i < candidates.size() && filled < places; ++i) {
        if (matching.add(candidates[i])) {
            ++filled;
        }
    }
    if (filled < places) {
        return std::nullopt;
    }
    return matching.holders();
}

} // namespace piewright::schedule
