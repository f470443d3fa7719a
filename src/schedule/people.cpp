// Which people fill which needs.
#include "schedule/project.h"

#include <algorithm>
#include <bit>

namespace piewright::schedule {

int People::count() const { return std::popcount(bits[0]) + std::popcount(bits[1]); }

std::size_t People::first() const {
    const std::size_t word = bits[0] != 0 ? 0 : 1;
    return word * 64 + static_cast<std::size_t>(std::countr_zero(bits[word]));
}

namespace {

struct Matching {
    const Project& project;
    const Project::Way& way;
    People preferred;
    People free;                     ///< and not yet chosen
    std::array<People, 64> filled{}; ///< by need
    std::array<bool, 64> seen{};     ///< needs asked in this search

    /// One person more for `need`, by moving others if it must be.
    bool add(std::size_t need) {
        const People able = project.skilled[way.needs[need].skill];
        if (const People open = able & free; !open.isEmpty()) {
            const People wished = open & preferred;
            const std::size_t person = wished.isEmpty() ? open.first() : wished.first();
            free.remove(person);
            filled[need].add(person);
            return true;
        }
        seen[need] = true;
        for (std::size_t other = 0; other < way.needs.size(); ++other) {
            if (seen[other]) continue;
            const People movable = able & filled[other];
            if (movable.isEmpty() || !add(other)) continue;
            const std::size_t person = movable.first();
            filled[other].remove(person);
            filled[need].add(person);
            return true;
        }
        return false;
    }
    bool fill() {
        for (std::size_t need = 0; need < way.needs.size(); ++need) {
            for (int i = 0; i < way.needs[need].count; ++i) {
                seen.fill(false);
                if (!add(need)) return false;
            }
        }
        return true;
    }
};

} // namespace

bool choosePeople(const Project& project, const Project::Way& way, People free, People& crew) {
    if (!(way.team - free).isEmpty()) return false;
    const People open = free - way.team;
    for (const Project::Way::Need& need : way.needs) {
        if ((project.skilled[need.skill] & open).count() < need.count) return false;
    }
    Matching matching{project, way, crew, open};
    if (!matching.fill()) return false;
    crew = way.team | (open - matching.free);
    return true;
}

std::vector<WorkerIndex> inPlaces(const Project& project, const Project::Way& way, People crew, const Mode& mode) {
    std::vector<WorkerIndex> workers;
    Matching matching{project, way, {}, crew - way.team};
    if (!matching.fill()) return workers;
    for (std::size_t need = 0; need < way.needs.size(); ++need) {
        for (People& left = matching.filled[need]; !left.isEmpty(); left.remove(left.first())) {
            workers.push_back(project.who[left.first()]);
        }
    }
    workers.insert(workers.end(), mode.team.begin(), mode.team.end());
    return workers;
}

} // namespace piewright::schedule
