#include "schedule/eject.h"

#include "schedule/crew.h"

#include <algorithm>
#include <tuple>

namespace piewright::schedule {

Ejection::Ejection(const Model& model, const Bounds& open, const std::vector<std::uint64_t>& weights)
    : model_(model), open_(open), weights_(weights), isChosen_(model.units.size(), 0), distances_(model) {}

void Ejection::add(std::size_t activity) {
    const std::size_t unit = model_.unitOf[activity];
    if (isChosen_[unit] != 0) {
        return;
    }
    isChosen_[unit] = 1;
    chosen_.push_back(unit);
    cost_ += weights_[unit];
}

std::optional<Ejection::Plan> Ejection::plan(const Board& board, std::size_t unit, Tick start, std::uint64_t limit) {
    for (const std::size_t old : chosen_) {
        isChosen_[old] = 0;
    }
    chosen_.clear();
    cost_ = 0;
    Plan plan;
    const Unit& coming = model_.units[unit];
    std::vector<std::size_t> blockers;
    std::vector<std::size_t> best;
    for (std::size_t i = 0; i < coming.members.size(); ++i) {
        const std::size_t activity = coming.members[i];
        const Tick when = start + coming.offsets[i];
        int bestMode = -1;
        std::uint64_t bestCost = 0;
        for (const int mode : model_.modes[activity]) {
            const Tick end = when + model_.problem.activities[activity].modes[static_cast<std::size_t>(mode)].duration;
            if (when < open_.lower(startOf(activity)) || when > open_.upper(startOf(activity)) ||
                end < open_.lower(endOf(activity)) || end > open_.upper(endOf(activity))) {
                continue;
            }
            blockers.clear();
            if (!gatherBlockers(board, activity, mode, when, blockers)) {
                continue;
            }
            const std::uint64_t cost = newCost(blockers);
            if (bestMode >= 0 && cost >= bestCost) {
                continue;
            }
            bestMode = mode;
            bestCost = cost;
            best = blockers;
        }
        if (bestMode < 0) {
            return std::nullopt;
        }
        plan.modes.push_back(bestMode);
        for (const std::size_t blocker : best) {
            add(model_.units[blocker].members.front());
        }
        if (cost_ >= limit) {
            return std::nullopt;
        }
    }
    gatherTemporal(board, unit, start, plan.modes);
    if (cost_ >= limit) {
        return std::nullopt;
    }
    plan.cost = cost_;
    plan.units = chosen_;
    return plan;
}

std::uint64_t Ejection::newCost(const std::vector<std::size_t>& units) {
    std::uint64_t cost = 0;
    for (std::size_t i = 0; i < units.size(); ++i) {
        const auto here = units.begin() + static_cast<std::ptrdiff_t>(i);
        if (isChosen_[units[i]] == 0 && std::find(units.begin(), here, units[i]) == here) {
            cost += weights_[units[i]];
        }
    }
    return cost;
}

bool Ejection::gatherBlockers(const Board& board, std::size_t activity, int mode, Tick start,
                              std::vector<std::size_t>& units) {
    const Mode& way = model_.problem.activities[activity].modes[static_cast<std::size_t>(mode)];
    const Tick end = start + way.duration;
    for (const Use& use : way.uses) {
        if (model_.problem.resources[at(use.resource)].machine) {
            const Line& line = board.line(use.resource);
            if (!line.open(start, end, use.family)) {
                return false;
            }
            line.forBlockers(start, end, use.family,
                             [&](const Line::Booking& booking) { units.push_back(model_.unitOf[booking.activity]); });
        } else if (!gatherOnLevel(board, use, start, end, units)) {
            return false;
        }
    }
    return gatherPeople(board, way, start, end, units);
}

bool Ejection::gatherOnLevel(const Board& board, const Use& use, Tick start, Tick end,
                             std::vector<std::size_t>& units) {
    const std::optional<Cumulative>& held = model_.problem.resources[at(use.resource)].cumulative;
    if (start == end || use.amount == 0 || !held) {
        return true;
    }
    const Cumulative& cumulative = *held;
    const auto goes = [&](const Board::Booking& booking) {
        const std::size_t unit = model_.unitOf[booking.activity];
        return isChosen_[unit] != 0 || std::find(units.begin(), units.end(), unit) != units.end();
    };
    std::vector<Board::Booking> here;
    std::vector<Tick> ticks{start}; // where the level can rise
    for (const Board::Booking& booking : board.bookings(use.resource)) {
        if (booking.start >= end || booking.end <= start || booking.amount == 0) {
            continue;
        }
        here.push_back(booking);
        if (booking.start > start) {
            ticks.push_back(booking.start);
        }
    }
    for (const Cumulative::Reserved& reserved : cumulative.reserved) {
        if (reserved.span.from > start && reserved.span.from < end) {
            ticks.push_back(reserved.span.from);
        }
    }
    std::sort(ticks.begin(), ticks.end());
    for (const Tick tick : ticks) {
        std::int64_t room = std::int64_t{cumulative.capacity} - use.amount;
        for (const Cumulative::Reserved& reserved : cumulative.reserved) {
            if (reserved.span.from <= tick && tick < reserved.span.to) {
                room -= reserved.amount;
            }
        }
        if (room < 0) {
            return false;
        }
        for (const Board::Booking& booking : here) {
            if (booking.start <= tick && tick < booking.end && !goes(booking)) {
                room -= booking.amount;
            }
        }
        while (room < 0) {
            const Board::Booking* cheapest = nullptr;
            for (const Board::Booking& booking : here) {
                if (booking.start > tick || tick >= booking.end || goes(booking)) {
                    continue;
                }
                const auto key = [&](const Board::Booking& b) {
                    return std::tuple{weights_[model_.unitOf[b.activity]], -b.amount, b.activity};
                };
                if (cheapest == nullptr || key(booking) < key(*cheapest)) {
                    cheapest = &booking;
                }
            }
            const std::size_t unit = model_.unitOf[cheapest->activity];
            for (const Board::Booking& booking : here) {
                if (booking.start <= tick && tick < booking.end && model_.unitOf[booking.activity] == unit) {
                    room += booking.amount;
                }
            }
            units.push_back(unit);
        }
    }
    return true;
}

bool Ejection::gatherPeople(const Board& board, const Mode& mode, Tick start, Tick end,
                            std::vector<std::size_t>& units) {
    for (const WorkerIndex worker : mode.team) {
        const Diary& diary = board.diary(worker);
        if (!diary.present(start, end)) {
            return false;
        }
        diary.forBlockers(start, end,
                          [&](const Diary::Booking& booking) { units.push_back(model_.unitOf[booking.activity]); });
    }
    if (mode.needs.empty()) {
        return true;
    }
    struct Candidate {
        std::uint64_t cost;
        int versatility;
        WorkerIndex worker;
    };
    std::vector<Candidate> candidates;
    std::vector<std::size_t> theirs;
    const auto blockersOf = [&](WorkerIndex worker) {
        theirs.clear();
        board.diary(worker).forBlockers(start, end, [&](const Diary::Booking& booking) {
            const std::size_t unit = model_.unitOf[booking.activity];
            if (std::find(units.begin(), units.end(), unit) == units.end()) {
                theirs.push_back(unit);
            }
        });
    };
    for (std::size_t w = 0; w < model_.problem.workers.size(); ++w) {
        const auto worker = static_cast<WorkerIndex>(w);
        const std::vector<SkillIndex>& skills = model_.problem.workers[w].skills;
        const bool useful = std::any_of(mode.needs.begin(), mode.needs.end(), [&](const SkillNeed& need) {
            return std::find(skills.begin(), skills.end(), need.skill) != skills.end();
        });
        if (!useful || std::find(mode.team.begin(), mode.team.end(), worker) != mode.team.end() ||
            !board.diary(worker).present(start, end)) {
            continue;
        }
        blockersOf(worker);
        candidates.push_back({newCost(theirs), model_.versatility[w], worker});
    }
    std::sort(candidates.begin(), candidates.end(), [](const Candidate& x, const Candidate& y) {
        return std::tie(x.cost, x.versatility, x.worker) < std::tie(y.cost, y.versatility, y.worker);
    });
    std::vector<WorkerIndex> order;
    order.reserve(candidates.size());
    for (const Candidate& candidate : candidates) {
        order.push_back(candidate.worker);
    }
    const std::optional<std::vector<WorkerIndex>> crew = crewFor(model_.problem, mode.needs, order);
    if (!crew) {
        return false;
    }
    for (const WorkerIndex worker : *crew) {
        blockersOf(worker);
        units.insert(units.end(), theirs.begin(), theirs.end());
    }
    return true;
}

/// What is placed and cannot stay where it is once the unit is fixed there: too near by a path of lags over what is not
/// placed.
void Ejection::gatherTemporal(const Board& board, std::size_t unit, Tick start, const std::vector<int>& modes) {
    const std::vector<Distances::Mark>& marks = distances_.marks();
    const auto timeOfPlaced = [&](const Distances::Mark& mark) {
        const Placed& placed = board.placed(mark.node / 2);
        return std::int64_t{mark.node % 2 == 0 ? placed.start : placed.end};
    };
    const auto timeOfComing = [&](const Distances::Mark& mark) {
        if (mark.node % 2 == 0) {
            return std::int64_t{start};
        }
        const Unit& coming = model_.units[unit];
        std::size_t i = 0;
        while (coming.members[i] != mark.node / 2) {
            ++i;
        }
        const Activity& activity = model_.problem.activities[coming.members[i]];
        return std::int64_t{start} + coming.offsets[i] + activity.modes[static_cast<std::size_t>(modes[i])].duration;
    };
    const auto [first, last] = distances_.marksOf(unit);
    for (std::size_t mine = first; mine < last; ++mine) {
        const std::int64_t time = timeOfComing(marks[mine]);
        for (const bool forward : {true, false}) {
            const std::span<const Tick> row = forward ? distances_.after(mine) : distances_.before(mine);
            for (std::size_t i = 0; i < marks.size(); ++i) {
                const Distances::Mark& mark = marks[i];
                if (row[i] == Distances::kNone || mark.unit == unit || isChosen_[mark.unit] != 0 ||
                    !board.isPlaced(mark.node / 2)) {
                    continue;
                }
                const std::int64_t gap = forward ? timeOfPlaced(mark) - time : time - timeOfPlaced(mark);
                if (gap < row[i]) {
                    add(mark.node / 2);
                }
            }
        }
    }
}

} // namespace piewright::schedule
