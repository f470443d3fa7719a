#include "schedule/board.h"

#include "schedule/crew.h"
#include "schedule/tally.h"

#include <algorithm>
#include <cassert>
#include <utility>

namespace piewright::schedule {

namespace {

const Placed kLeftOut{0, 0, kAbsent, {}};

bool has(const std::vector<WorkerIndex>& workers, WorkerIndex worker) {
    return std::find(workers.begin(), workers.end(), worker) != workers.end();
}

} // namespace

Board::Board(const Model& model)
    : model_(&model), placeOf_(model.problem.resources.size(), 0), placed_(model.problem.activities.size(), kLeftOut),
      isPlaced_(model.problem.activities.size(), 0), mark_(model.problem.workers.size(), 0) {
    for (std::size_t r = 0; r < model.problem.resources.size(); ++r) {
        const Resource& resource = model.problem.resources[r];
        if (resource.machine) {
            placeOf_[r] = lines_.size();
            lines_.emplace_back(*resource.machine);
        }
        if (resource.cumulative) {
            placeOf_[r] = levels_.size();
            levels_.emplace_back(*resource.cumulative);
        }
        if (resource.reservoir) {
            placeOf_[r] = stocks_.size();
            stocks_.emplace_back(*resource.reservoir);
        }
    }
    bookings_.resize(levels_.size());
    for (const Worker& worker : model.problem.workers) diaries_.emplace_back(worker);
}

bool Board::isWith(std::size_t activity, WorkerIndex worker) const { return has(placed_[activity].workers, worker); }

/// At or after `from`: where the resources and those named outright are free. Past `upTo` when there is none.
Tick Board::nextRoom(const Mode& way, const Stretch& stretch, Tick from, Tick upTo, bool isByStock) {
    Tick next = stretch.start(from);
    for (const Use& use : way.uses) {
        const std::size_t place = placeOf_[at(use.resource)];
        next = model_->problem.resources[at(use.resource)].machine
                   ? lines_[place].nextFit(next, stretch, use.family, use.amount)
                   : levels_[place].nextFit(next, stretch, use.amount);
        if (next > upTo) return next;
    }
    if (isByStock && !way.flows.empty()) {
        next = nextFlow(way, stretch, next);
        if (next > upTo) return next;
    }
    for (const WorkerIndex worker : way.team) {
        next = diaries_[at(worker)].nextFit(next, stretch);
        if (next > upTo) return next;
    }
    return next;
}

Tick Board::nextFlow(const Mode& way, const Stretch& stretch, Tick start) {
    const auto when = [&](const Flow& flow) { return flow.point == Point::Start ? start : stretch.end(start); };
    for (std::size_t i = 0; i < way.flows.size(); ++i) {
        const Flow& flow = way.flows[i];
        const auto isSame = [&](const Flow& other) { return other.resource == flow.resource; };
        const auto here = way.flows.begin() + static_cast<std::ptrdiff_t>(i);
        if (std::any_of(way.flows.begin(), here, isSame)) continue;
        const Stock& stock = stocks_[placeOf_[at(flow.resource)]];
        if (std::none_of(here + 1, way.flows.end(), isSame)) {
            const Tick now = when(flow);
            const Tick next = stock.nextFit(now, flow.amount);
            if (next >= kNever) return kNever;
            if (next > now)
                start = stretch.start(flow.point == Point::End && stretch.pauses() ? start + 1 : start + (next - now));
            continue;
        }
        changes_.clear();
        for (const Flow& other : way.flows) {
            if (isSame(other)) changes_.push_back({when(other), other.amount});
        }
        if (stock.fits(changes_)) continue;
        const Tick wait = stretch.pauses() ? 1 : stock.wait(changes_);
        if (wait >= kNever) return kNever;
        start = stretch.start(start + wait);
    }
    return start;
}

std::optional<Tick> Board::earliest(std::size_t activity, int mode, Tick from, Tick upTo) {
    const Mode& way = model_->problem.activities[activity].modes[static_cast<std::size_t>(mode)];
    const Stretch stretch(way);
    if (!gatherCandidates(activity, way)) return std::nullopt;
    for (Tick start = from; start <= upTo;) {
        ++work_;
        Tick next = nextRoom(way, stretch, start, upTo);
        if (next > upTo) return std::nullopt;
        if (!way.needs.empty()) {
            next = nextCrew(way, stretch, next, upTo);
            if (next > upTo) return std::nullopt;
        }
        if (next == start) return start;
        start = next;
    }
    return std::nullopt;
}

bool Board::gatherCandidates(std::size_t activity, const Mode& way) {
    candidates_.clear();
    forced_ = 0;
    const std::vector<std::size_t>& among = model_->staysAmong[activity];
    const std::vector<std::size_t>& with = model_->staysWith[activity];
    const auto may = [&](WorkerIndex worker) {
        return std::all_of(among.begin(), among.end(),
                           [&](std::size_t other) { return !isPlaced(other) || isWith(other, worker); });
    };
    for (const WorkerIndex worker : way.team) {
        if (!among.empty() && !may(worker)) return false;
        mark_[at(worker)] = 1;
    }
    // Who must: first, and marked with 2 until seen.
    std::size_t missing = 0;
    for (const std::size_t other : with) {
        if (!isPlaced(other)) continue;
        for (const WorkerIndex worker : placed_[other].workers) {
            if (mark_[at(worker)] != 0) continue;
            mark_[at(worker)] = 2;
            ++missing;
            candidates_.push_back(worker);
        }
    }
    forced_ = candidates_.size();
    for (const SkillNeed& need : way.needs) {
        for (const WorkerIndex worker : model_->skilled[at(need.skill)]) {
            char& mark = mark_[at(worker)];
            if (mark == 2) --missing;
            if (mark == 0 && (among.empty() || may(worker))) candidates_.push_back(worker);
            mark = 1;
        }
    }
    const bool isFine = missing == 0 && std::all_of(candidates_.begin(),
                                                    candidates_.begin() + static_cast<std::ptrdiff_t>(forced_), may);
    std::fill(mark_.begin(), mark_.end(), char{0});
    return isFine;
}

Tick Board::nextCrew(const Mode& way, const Stretch& stretch, Tick from, Tick upTo) {
    std::size_t places = 0;
    for (const SkillNeed& need : way.needs) places += static_cast<std::size_t>(need.count);
    if (forced_ > places) return kNever;
    for (Tick start = from; start <= upTo;) {
        free_.clear();
        Tick next = kNever; // before it nobody more becomes free
        bool isForcedFree = true;
        for (std::size_t i = 0; i < candidates_.size(); ++i) {
            const Tick when = diaries_[at(candidates_[i])].nextFit(start, stretch);
            if (when == start) {
                free_.push_back(candidates_[i]);
            } else {
                isForcedFree = isForcedFree && i >= forced_;
                next = std::min(next, when);
            }
        }
        if (isForcedFree && free_.size() >= places) {
            if (way.needs.size() == 1) return start;
            const std::optional<std::vector<WorkerIndex>> crew = crewFor(model_->problem, way.needs, free_);
            if (crew && std::all_of(candidates_.begin(), candidates_.begin() + static_cast<std::ptrdiff_t>(forced_),
                                    [&](WorkerIndex worker) { return has(*crew, worker); }))
                return start;
        }
        start = next;
    }
    return kNever;
}

/// Those who must take part first; then who costs least; the least versatile, so that those who can do more stay free;
/// those who did what this is linked to.
void Board::rank(std::size_t activity, const Tally* tally, const Placed& placed, std::vector<WorkerIndex>& workers) {
    for (std::size_t i = 0; i < forced_; ++i) mark_[at(candidates_[i])] = 2;
    for (const std::size_t other : model_->linked[activity]) {
        if (!isPlaced(other)) continue;
        for (const WorkerIndex worker : placed_[other].workers)
            mark_[at(worker)] = std::max(mark_[at(worker)], char{1});
    }
    ranked_.clear();
    for (const WorkerIndex worker : workers) {
        const int mark = mark_[at(worker)];
        Cost cost = 0;
        if (mark == 2) {
            cost = std::numeric_limits<Cost>::min();
        } else if (tally != nullptr) {
            cost = tally->ofPerson(activity, placed, worker);
        }
        ranked_.push_back({cost, model_->versatility[at(worker)], -mark, worker});
    }
    std::fill(mark_.begin(), mark_.end(), char{0});
    std::sort(ranked_.begin(), ranked_.end());
    for (std::size_t i = 0; i < workers.size(); ++i) workers[i] = ranked_[i].worker;
}

std::optional<Placed> Board::fit(std::size_t activity, int mode, Tick start, const Tally* tally) {
    const Mode& way = model_->problem.activities[activity].modes[static_cast<std::size_t>(mode)];
    const Stretch stretch(way);
    ++work_;
    if (nextRoom(way, stretch, start, start) != start || !gatherCandidates(activity, way)) return std::nullopt;
    Placed placed{start, stretch.end(start), mode, {}};
    if (!way.needs.empty()) {
        free_.clear();
        for (std::size_t i = 0; i < candidates_.size(); ++i) {
            if (diaries_[at(candidates_[i])].nextFit(start, stretch) == start) {
                free_.push_back(candidates_[i]);
            } else if (i < forced_) {
                return std::nullopt;
            }
        }
        std::size_t places = 0;
        for (const SkillNeed& need : way.needs) places += static_cast<std::size_t>(need.count);
        if (free_.size() < places || forced_ > places) return std::nullopt;
        rank(activity, tally, placed, free_);
        if (way.needs.size() == 1) {
            placed.workers.assign(free_.begin(), free_.begin() + static_cast<std::ptrdiff_t>(places));
        } else {
            std::optional<std::vector<WorkerIndex>> crew = crewFor(model_->problem, way.needs, free_);
            if (!crew) return std::nullopt;
            placed.workers = *std::move(crew);
            for (std::size_t i = 0; i < forced_; ++i) {
                if (!has(placed.workers, candidates_[i])) return std::nullopt;
            }
        }
    }
    placed.workers.insert(placed.workers.end(), way.team.begin(), way.team.end());
    return placed;
}

bool Board::takes(std::size_t activity, const Placed& placed) {
    const Mode& way = model_->problem.activities[activity].modes[static_cast<std::size_t>(placed.mode)];
    const Stretch stretch(way);
    ++work_;
    if (nextRoom(way, stretch, placed.start, placed.start, false) != placed.start ||
        stretch.end(placed.start) != placed.end)
        return false;
    const std::vector<WorkerIndex>& crew = placed.workers;
    std::size_t place = 0;
    for (const SkillNeed& need : way.needs) {
        for (int i = 0; i < need.count; ++i, ++place) {
            if (place >= crew.size() || at(crew[place]) >= model_->problem.workers.size()) return false;
            const std::vector<SkillIndex>& skills = model_->problem.workers[at(crew[place])].skills;
            if (std::find(skills.begin(), skills.end(), need.skill) == skills.end()) return false;
        }
    }
    if (crew.size() != place + way.team.size() ||
        !std::equal(way.team.begin(), way.team.end(), crew.begin() + static_cast<std::ptrdiff_t>(place)))
        return false;
    for (std::size_t i = 0; i < crew.size(); ++i) {
        const auto here = crew.begin() + static_cast<std::ptrdiff_t>(i);
        if (std::find(crew.begin(), here, crew[i]) != here) return false;
        if (diaries_[at(crew[i])].nextFit(placed.start, stretch) != placed.start) return false;
    }
    for (const std::size_t other : model_->staysAmong[activity]) {
        if (!isPlaced(other)) continue;
        for (const WorkerIndex worker : crew) {
            if (!isWith(other, worker)) return false;
        }
    }
    for (const std::size_t other : model_->staysWith[activity]) {
        if (!isPlaced(other)) continue;
        for (const WorkerIndex worker : placed_[other].workers) {
            if (!has(crew, worker)) return false;
        }
    }
    return true;
}

void Board::put(std::size_t activity, Placed placed) {
    assert(!isPlaced(activity));
    const Mode& way = model_->problem.activities[activity].modes[static_cast<std::size_t>(placed.mode)];
    for (const Use& use : way.uses) {
        const std::size_t place = placeOf_[at(use.resource)];
        if (model_->problem.resources[at(use.resource)].machine) {
            lines_[place].put({placed.start, placed.end, use.family, activity, use.amount});
        } else {
            levels_[place].put(placed.start, placed.end, use.amount);
            bookings_[place].push_back({placed.start, placed.end, use.amount, activity});
        }
    }
    for (const Flow& flow : way.flows) {
        const Tick when = flow.point == Point::Start ? placed.start : placed.end;
        stocks_[placeOf_[at(flow.resource)]].put({when, flow.amount, activity});
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
        const std::size_t place = placeOf_[at(use.resource)];
        if (model_->problem.resources[at(use.resource)].machine) {
            lines_[place].take(activity, placed.start);
        } else {
            levels_[place].take(placed.start, placed.end, use.amount);
            std::vector<Booking>& bookings = bookings_[place];
            const auto it = std::find_if(bookings.begin(), bookings.end(),
                                         [&](const Booking& booking) { return booking.activity == activity; });
            *it = bookings.back();
            bookings.pop_back();
        }
    }
    for (const Flow& flow : way.flows) {
        const Tick when = flow.point == Point::Start ? placed.start : placed.end;
        stocks_[placeOf_[at(flow.resource)]].take(activity, when, flow.amount);
    }
    for (const WorkerIndex worker : placed.workers) diaries_[at(worker)].take(activity, placed.start);
    placed_[activity] = kLeftOut;
    isPlaced_[activity] = 0;
}

} // namespace piewright::schedule
