#include "schedule/eject.h"

#include "schedule/crew.h"

#include <algorithm>
#include <tuple>

namespace piewright::schedule {

Ejection::Ejection(const Model& model, const std::vector<std::uint64_t>& weights)
    : model_(model), weights_(weights), isChosen_(model.units.size(), 0), distances_(model) {}

void Ejection::add(std::size_t activity) {
    const std::size_t unit = model_.unitOf[activity];
    if (isChosen_[unit] != 0) {
        return;
    }
    isChosen_[unit] = 1;
    chosen_.push_back(unit);
    cost_ += weights_[unit];
}

std::optional<Ejection::Plan> Ejection::plan(const Board& board, const Bounds& bounds, std::size_t unit, Tick start,
                                             std::uint64_t limit) {
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
            const Stretch stretch(model_.mode(activity, mode));
            const Tick end = stretch.end(when);
            if (stretch.start(when) != when || when < bounds.openLower(startOf(activity)) ||
                when > bounds.openUpper(startOf(activity)) || end < bounds.openLower(endOf(activity)) ||
                end > bounds.openUpper(endOf(activity))) {
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
    if (isChosen_[unit] != 0) return std::nullopt; // it would be in its own way
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
    const Mode& way = model_.mode(activity, mode);
    const Stretch stretch(way);
    const Tick end = stretch.end(start);
    for (const Use& use : way.uses) {
        const bool isFine = model_.problem.resources[at(use.resource)].machine
                                ? gatherOnLine(board, use, start, stretch, units)
                                : gatherOnLevel(board, use, start, end, units);
        if (!isFine) return false;
    }
    return gatherAtStocks(board, way, start, end, units) && gatherPeople(board, activity, way, start, units);
}

bool Ejection::isGone(std::size_t activity, const std::vector<std::size_t>& units) const {
    const std::size_t unit = model_.unitOf[activity];
    return isChosen_[unit] != 0 || std::find(units.begin(), units.end(), unit) != units.end();
}

/// Of the load it would be of, the cheapest; of other loads, all.
bool Ejection::gatherOnLine(const Board& board, const Use& use, Tick start, const Stretch& stretch,
                            std::vector<std::size_t>& units) {
    const Line& line = board.line(use.resource);
    if (!line.open(start, stretch, use.family)) return false;
    std::vector<Line::Booking> load;
    line.forBlockers(start, stretch.end(start), use.family, [&](const Line::Booking& booking) {
        if (line.joins(booking, start, use.family)) {
            load.push_back(booking);
        } else {
            units.push_back(model_.unitOf[booking.activity]);
        }
    });
    std::int64_t room = std::int64_t{model_.problem.resources[at(use.resource)].machine->together} - use.amount;
    for (const Line::Booking& booking : load) {
        if (booking.end > booking.start && !isGone(booking.activity, units)) room -= booking.amount;
    }
    while (room < 0 && stretch.duration() > 0) {
        const Line::Booking* cheapest = nullptr;
        for (const Line::Booking& booking : load) {
            if (booking.end == booking.start || isGone(booking.activity, units)) continue;
            const auto key = [&](const Line::Booking& b) {
                return std::tuple{weights_[model_.unitOf[b.activity]], -b.amount, b.activity};
            };
            if (cheapest == nullptr || key(booking) < key(*cheapest)) cheapest = &booking;
        }
        if (cheapest == nullptr) return false;
        const std::size_t unit = model_.unitOf[cheapest->activity];
        for (const Line::Booking& booking : load) {
            if (model_.unitOf[booking.activity] == unit && !isGone(booking.activity, units)) room += booking.amount;
        }
        units.push_back(unit);
    }
    return true;
}

/// Flows of the same way that come no later than the moment at which it would be too much.
bool Ejection::gatherAtStocks(const Board& board, const Mode& mode, Tick start, Tick end,
                              std::vector<std::size_t>& units) {
    std::vector<Stock::Change> changes;
    for (std::size_t i = 0; i < mode.flows.size(); ++i) {
        const ResourceIndex resource = mode.flows[i].resource;
        const auto here = mode.flows.begin() + static_cast<std::ptrdiff_t>(i);
        if (std::any_of(mode.flows.begin(), here, [&](const Flow& flow) { return flow.resource == resource; }))
            continue;
        const Stock& stock = board.stock(resource);
        changes.clear();
        for (const Flow& flow : mode.flows) {
            if (flow.resource == resource) changes.push_back({flow.point == Point::Start ? start : end, flow.amount});
        }
        for (const Stock::Booking& booking : stock.bookings()) {
            if (isGone(booking.activity, units)) changes.push_back({booking.when, -booking.amount});
        }
        for (Stock::Change beyond = stock.firstBeyond(changes); beyond.amount != 0;
             beyond = stock.firstBeyond(changes)) {
            const Stock::Booking* cheapest = nullptr;
            for (const Stock::Booking& booking : stock.bookings()) {
                if (booking.when > beyond.when) break;
                if (booking.amount == 0 || (booking.amount < 0) != (beyond.amount < 0) ||
                    isGone(booking.activity, units))
                    continue;
                const auto key = [&](const Stock::Booking& b) {
                    return std::tuple{weights_[model_.unitOf[b.activity]], -b.when, b.activity};
                };
                if (cheapest == nullptr || key(booking) < key(*cheapest)) cheapest = &booking;
            }
            if (cheapest == nullptr) return false;
            const std::size_t unit = model_.unitOf[cheapest->activity];
            for (const Stock::Booking& booking : stock.bookings()) {
                if (model_.unitOf[booking.activity] == unit) changes.push_back({booking.when, -booking.amount});
            }
            units.push_back(unit);
        }
    }
    return true;
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

bool Ejection::gatherPeople(const Board& board, std::size_t activity, const Mode& mode, Tick start,
                            std::vector<std::size_t>& units) {
    const Stretch stretch(mode);
    const Tick end = stretch.end(start);
    for (const WorkerIndex worker : mode.team) {
        const Diary& diary = board.diary(worker);
        if (!diary.present(start, stretch)) return false;
        diary.forBlockers(start, end,
                          [&](const Diary::Booking& booking) { units.push_back(model_.unitOf[booking.activity]); });
    }
    const auto isOn = [](const std::vector<WorkerIndex>& workers, WorkerIndex worker) {
        return std::find(workers.begin(), workers.end(), worker) != workers.end();
    };
    // Whom it must share people with, and cannot, goes.
    for (const std::size_t other : model_.staysAmong[activity]) {
        if (!board.isPlaced(other) || isGone(other, units)) continue;
        if (!std::all_of(mode.team.begin(), mode.team.end(),
                         [&](WorkerIndex worker) { return isOn(board.placed(other).workers, worker); }))
            units.push_back(model_.unitOf[other]);
    }
    struct Candidate {
        std::uint64_t cost;
        int versatility;
        WorkerIndex worker;
    };
    std::vector<std::size_t> theirs;
    const auto blockersOf = [&](WorkerIndex worker) {
        theirs.clear();
        board.diary(worker).forBlockers(start, end, [&](const Diary::Booking& booking) {
            if (!isGone(booking.activity, units)) theirs.push_back(model_.unitOf[booking.activity]);
        });
    };
    const auto find = [&](bool shares) -> std::optional<std::vector<WorkerIndex>> {
        std::vector<WorkerIndex> forced;
        for (const std::size_t other : model_.staysWith[activity]) {
            if (!shares || !board.isPlaced(other) || isGone(other, units)) continue;
            for (const WorkerIndex worker : board.placed(other).workers) {
                if (!isOn(mode.team, worker) && !isOn(forced, worker)) forced.push_back(worker);
            }
        }
        std::vector<Candidate> candidates;
        for (std::size_t w = 0; w < model_.problem.workers.size(); ++w) {
            const auto worker = static_cast<WorkerIndex>(w);
            const std::vector<SkillIndex>& skills = model_.problem.workers[w].skills;
            const bool useful = std::any_of(mode.needs.begin(), mode.needs.end(), [&](const SkillNeed& need) {
                return std::find(skills.begin(), skills.end(), need.skill) != skills.end();
            });
            if (!useful || isOn(mode.team, worker) || !board.diary(worker).present(start, stretch)) continue;
            if (shares && std::any_of(model_.staysAmong[activity].begin(), model_.staysAmong[activity].end(),
                                      [&](std::size_t other) {
                                          return board.isPlaced(other) && !isGone(other, units) &&
                                                 !isOn(board.placed(other).workers, worker);
                                      }))
                continue;
            if (isOn(forced, worker)) {
                candidates.push_back({0, -1, worker});
                continue;
            }
            blockersOf(worker);
            candidates.push_back({newCost(theirs), model_.versatility[w], worker});
        }
        // Those it must have come first, whatever else costs nothing.
        std::sort(candidates.begin(), candidates.end(), [](const Candidate& x, const Candidate& y) {
            return std::tuple{x.versatility >= 0, x.cost, x.versatility, x.worker} <
                   std::tuple{y.versatility >= 0, y.cost, y.versatility, y.worker};
        });
        std::vector<WorkerIndex> order;
        order.reserve(candidates.size());
        for (const Candidate& candidate : candidates) order.push_back(candidate.worker);
        std::optional<std::vector<WorkerIndex>> crew = crewFor(model_.problem, mode.needs, order);
        if (crew && !std::all_of(forced.begin(), forced.end(), [&](WorkerIndex worker) { return isOn(*crew, worker); }))
            return std::nullopt;
        return crew;
    };
    const bool isTied = !model_.staysAmong[activity].empty() || !model_.staysWith[activity].empty();
    if (mode.needs.empty() && !isTied) return true;
    std::optional<std::vector<WorkerIndex>> crew = find(true);
    if (!crew && isTied) {
        for (const std::vector<std::size_t>* const others :
             {&model_.staysAmong[activity], &model_.staysWith[activity]}) {
            for (const std::size_t other : *others) {
                if (board.isPlaced(other) && !isGone(other, units)) units.push_back(model_.unitOf[other]);
            }
        }
        crew = find(false);
    }
    if (!crew) return false;
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
        return std::int64_t{Stretch(model_.mode(coming.members[i], modes[i])).end(start + coming.offsets[i])};
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
