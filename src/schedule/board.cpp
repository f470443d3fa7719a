#include "schedule/board.h"

#include "schedule/crew.h"

#include <algorithm>
#include <cassert>
#include <tuple>
#include <utility>

namespace piewright::schedule {

Board::Board(const Model& model)
    : model_(&model), lineOf_(model.problem.resources.size(), 0), levelOf_(model.problem.resources.size(), 0),
      placed_(model.problem.activities.size()), isPlaced_(model.problem.activities.size(), 0),
      mark_(model.problem.workers.size(), 0) {
    for (std::size_t r = 0; r < model.problem.resources.size(); ++r) {
        const Resource& resource = model.problem.resources[r];
        if (resource.machine) {
            lineOf_[r] = lines_.size();
            lines_.emplace_back(*resource.machine);
        }
        if (resource.cumulative) {
            levelOf_[r] = levels_.size();
            levels_.emplace_back(*resource.cumulative);
        }
    }
    bookings_.resize(levels_.size());
    for (const Worker& worker : model.problem.workers) {
        diaries_.emplace_back(worker);
    }
}

std::optional<Tick> Board::earliest(std::size_t activity, int mode, Tick from, Tick upTo) {
    const Mode& way = model_->problem.activities[activity].modes[static_cast<std::size_t>(mode)];
    if (!way.needs.empty()) {
        gatherCandidates(way);
    }
    for (Tick start = from; start <= upTo;) {
        ++work_;
        Tick next = start;
        for (const Use& use : way.uses) {
            const std::size_t r = at(use.resource);
            next = model_->problem.resources[r].machine ? lines_[lineOf_[r]].nextFit(next, way.duration, use.family)
                                                        : levels_[levelOf_[r]].nextFit(next, way.duration, use.amount);
            if (next > upTo) {
                return std::nullopt;
            }
        }
        next = nextFreeOfCrew(way, next);
        if (next > upTo) {
            return std::nullopt;
        }
        if (!way.needs.empty()) {
            next = nextCrew(way, next, upTo);
            if (next > upTo) {
                return std::nullopt;
            }
        }
        if (next == start) {
            return start;
        }
        start = next;
    }
    return std::nullopt;
}

Tick Board::nextFreeOfCrew(const Mode& mode, Tick from) const {
    Tick start = from;
    for (const WorkerIndex worker : mode.team) {
        start = std::max(start, diaries_[at(worker)].nextFit(start, mode.duration));
        if (start >= kNever) {
            return kNever;
        }
    }
    return start;
}

void Board::gatherCandidates(const Mode& mode) {
    candidates_.clear();
    for (const WorkerIndex worker : mode.team) {
        mark_[at(worker)] = 1;
    }
    for (const SkillNeed& need : mode.needs) {
        for (const WorkerIndex worker : model_->skilled[at(need.skill)]) {
            if (std::exchange(mark_[at(worker)], char{1}) == 0) {
                candidates_.push_back(worker);
            }
        }
    }
    for (const WorkerIndex worker : mode.team) {
        mark_[at(worker)] = 0;
    }
    for (const WorkerIndex worker : candidates_) {
        mark_[at(worker)] = 0;
    }
}

Tick Board::nextCrew(const Mode& mode, Tick from, Tick upTo) {
    std::size_t places = 0;
    for (const SkillNeed& need : mode.needs) {
        places += static_cast<std::size_t>(need.count);
    }
    for (Tick start = from; start <= upTo;) {
        free_.clear();
        Tick next = kNever; // before it nobody more becomes free
        for (const WorkerIndex worker : candidates_) {
            const Tick when = diaries_[at(worker)].nextFit(start, mode.duration);
            if (when == start) {
                free_.push_back(worker);
            } else {
                next = std::min(next, when);
            }
        }
        if (free_.size() >= places && (mode.needs.size() == 1 || crewFor(model_->problem, mode.needs, free_))) {
            return start;
        }
        start = next;
    }
    return kNever;
}

/// The least versatile first, so that those who can do more stay free; then those who did what this is linked to.
void Board::rank(std::size_t activity, std::vector<WorkerIndex>& workers) {
    for (const std::size_t other : model_->linked[activity]) {
        if (!isPlaced(other)) {
            continue;
        }
        for (const WorkerIndex worker : placed_[other].workers) {
            mark_[at(worker)] = 1;
        }
    }
    std::sort(workers.begin(), workers.end(), [&](WorkerIndex x, WorkerIndex y) {
        return std::tuple{model_->versatility[at(x)], -mark_[at(x)], x} <
               std::tuple{model_->versatility[at(y)], -mark_[at(y)], y};
    });
    std::fill(mark_.begin(), mark_.end(), char{0});
}

std::optional<Placed> Board::fit(std::size_t activity, int mode, Tick start) {
    const Mode& way = model_->problem.activities[activity].modes[static_cast<std::size_t>(mode)];
    ++work_;
    for (const Use& use : way.uses) {
        const std::size_t r = at(use.resource);
        const Tick next = model_->problem.resources[r].machine
                              ? lines_[lineOf_[r]].nextFit(start, way.duration, use.family)
                              : levels_[levelOf_[r]].nextFit(start, way.duration, use.amount);
        if (next != start) {
            return std::nullopt;
        }
    }
    if (nextFreeOfCrew(way, start) != start) {
        return std::nullopt;
    }
    Placed placed{start, start + way.duration, mode, {}};
    if (!way.needs.empty()) {
        gatherCandidates(way);
        free_.clear();
        for (const WorkerIndex worker : candidates_) {
            if (diaries_[at(worker)].nextFit(start, way.duration) == start) {
                free_.push_back(worker);
            }
        }
        rank(activity, free_);
        std::optional<std::vector<WorkerIndex>> crew = crewFor(model_->problem, way.needs, free_);
        if (!crew) {
            return std::nullopt;
        }
        placed.workers = *std::move(crew);
    }
    placed.workers.insert(placed.workers.end(), way.team.begin(), way.team.end());
    return placed;
}

void Board::put(std::size_t activity, Placed placed) {
    assert(!isPlaced(activity));
    const Mode& way = model_->problem.activities[activity].modes[static_cast<std::size_t>(placed.mode)];
    for (const Use& use : way.uses) {
        const std::size_t r = at(use.resource);
        if (model_->problem.resources[r].machine) {
            lines_[lineOf_[r]].put({placed.start, placed.end, use.family, activity});
        } else {
            levels_[levelOf_[r]].put(placed.start, placed.end, use.amount);
            bookings_[levelOf_[r]].push_back({placed.start, placed.end, use.amount, activity});
        }
    }
    for (const WorkerIndex worker : placed.workers) {
        diaries_[at(worker)].put({placed.start, placed.end, activity});
    }
    placed_[activity] = std::move(placed);
    isPlaced_[activity] = 1;
}

void Board::take(std::size_t activity) {
    assert(isPlaced(activity));
    const Placed& placed = placed_[activity];
    const Mode& way = model_->problem.activities[activity].modes[static_cast<std::size_t>(placed.mode)];
    for (const Use& use : way.uses) {
        const std::size_t r = at(use.resource);
        if (model_->problem.resources[r].machine) {
            lines_[lineOf_[r]].take(activity, placed.start);
        } else {
            levels_[levelOf_[r]].take(placed.start, placed.end, use.amount);
            std::vector<Booking>& bookings = bookings_[levelOf_[r]];
            bookings.erase(std::find_if(bookings.begin(), bookings.end(),
                                        [&](const Booking& booking) { return booking.activity == activity; }));
        }
    }
    for (const WorkerIndex worker : placed.workers) {
        diaries_[at(worker)].take(activity, placed.start);
    }
    isPlaced_[activity] = 0;
}

} // namespace piewright::schedule
