#include "schedule/draft.h"

#include <algorithm>
#include <cassert>
#include <utility>

namespace piewright::schedule {

Draft::Draft(const Model& model)
    : model_(model), board_(model), bounds_(model.network, model.problem, model.presence, model.lengths), tally_(model),
      now_(model.units.size(), Now::Open), place_(model.units.size()), journaled_(model.units.size(), 0) {
    for (std::size_t u = 0; u < model.units.size(); ++u) {
        place_[u] = u;
        open_.push_back(u);
    }
}

const Bounds& Draft::bounds() {
    if (isStale_) {
        loose_.clear();
        for (const std::vector<std::size_t>* const units : {&open_, &out_}) {
            for (const std::size_t unit : *units) {
                const Unit& one = model_.units[unit];
                loose_.insert(loose_.end(), one.members.begin(), one.members.end());
            }
        }
        bounds_.renew(loose_);
        board_.addWork(loose_.size() / 32);
        isStale_ = false;
    }
    return bounds_;
}

void Draft::setNow(std::size_t unit, Now now) {
    const auto listOf = [&](Now which) { return which == Now::Open ? &open_ : which == Now::Out ? &out_ : nullptr; };
    if (std::vector<std::size_t>* const list = listOf(now_[unit])) {
        place_[list->back()] = place_[unit];
        (*list)[place_[unit]] = list->back();
        list->pop_back();
    }
    now_[unit] = now;
    if (std::vector<std::size_t>* const list = listOf(now)) {
        place_[unit] = list->size();
        list->push_back(unit);
    }
}

void Draft::mark() {
    journal_.clear();
    ++marks_;
    isMarked_ = true;
}

void Draft::remember(std::size_t unit) {
    if (!isMarked_ || journaled_[unit] == marks_) return;
    journaled_[unit] = marks_;
    Past past{unit, now_[unit], {}};
    if (now_[unit] == Now::In) {
        for (const std::size_t a : model_.units[unit].members) past.places.push_back(board_.placed(a));
    }
    journal_.push_back(std::move(past));
}

void Draft::rollBack() {
    isMarked_ = false;
    for (const Past& past : journal_) {
        if (now_[past.unit] == Now::In) take(past.unit);
        if (now_[past.unit] == Now::Out) takeUp(past.unit);
    }
    for (Past& past : journal_) {
        if (past.now == Now::Out) leaveOut(past.unit);
        if (past.now != Now::In) continue;
        for (std::size_t i = 0; i < past.places.size(); ++i) {
            const std::size_t a = model_.units[past.unit].members[i];
            bounds_.set(a, past.places[i].start, past.places[i].end);
            tally_.put(board_, a, past.places[i]);
            board_.put(a, std::move(past.places[i]));
        }
        setNow(past.unit, Now::In);
    }
    isStale_ = true;
    journal_.clear();
}

void Draft::takeMember(std::size_t activity) {
    const Placed placed = board_.placed(activity);
    board_.take(activity);
    tally_.take(board_, activity, placed);
    bounds_.letGo(activity);
    isStale_ = true;
}

bool Draft::put(std::size_t unit, std::span<const Placed> places) {
    bounds();
    remember(unit);
    assert(now_[unit] == Now::Open);
    const Unit& coming = model_.units[unit];
    for (std::size_t i = 0; i < coming.members.size(); ++i) {
        const std::size_t a = coming.members[i];
        const bool isFine =
            isInWindow(a, places[i].start, places[i].end) && bounds_.fix(a, places[i].start, places[i].end);
        tally_.put(board_, a, places[i]);
        board_.put(a, places[i]);
        if (isFine) continue;
        for (std::size_t j = 0; j <= i; ++j) takeMember(coming.members[j]);
        return false;
    }
    setNow(unit, Now::In);
    return true;
}

bool Draft::putAt(std::size_t unit, Tick start, const std::vector<int>* modes) {
    bounds();
    remember(unit);
    const Unit& coming = model_.units[unit];
    for (std::size_t i = 0; i < coming.members.size(); ++i) {
        const std::size_t a = coming.members[i];
        const Tick when = start + coming.offsets[i];
        std::optional<Placed> found;
        for (const int mode : model_.modes[a]) {
            const Stretch stretch(model_.mode(a, mode));
            if ((modes != nullptr && (*modes)[i] != mode) || !isInWindow(a, when, stretch.end(when))) continue;
            found = board_.fit(a, mode, when);
            if (found) break;
        }
        bool isFine = found.has_value();
        if (found) {
            isFine = bounds_.fix(a, found->start, found->end);
            tally_.put(board_, a, *found);
            board_.put(a, *std::move(found));
        }
        if (isFine) continue;
        for (std::size_t j = 0; j <= i; ++j) { // members in each other's way
            if (board_.isPlaced(coming.members[j])) takeMember(coming.members[j]);
        }
        return false;
    }
    setNow(unit, Now::In);
    return true;
}

std::optional<Tick> Draft::earliest(std::size_t unit, Tick from, Tick upTo, bool isOpen) {
    const Unit& coming = model_.units[unit];
    for (Tick start = from; start <= upTo;) {
        Tick later = start;
        for (std::size_t i = 0; i < coming.members.size(); ++i) {
            const std::size_t a = coming.members[i];
            std::optional<Tick> best;
            const Tick lower = isOpen ? bounds_.openLower(endOf(a)) : bounds_.lower(endOf(a));
            const Tick upper = isOpen ? bounds_.openUpper(endOf(a)) : bounds_.upper(endOf(a));
            for (const int mode : model_.modes[a]) {
                const Stretch stretch(model_.mode(a, mode));
                const Tick first = std::max(start + coming.offsets[i], stretch.firstStart(lower));
                const Tick last =
                    std::min({upTo + coming.offsets[i], stretch.latestStart(upper), best ? *best - 1 : kNever});
                if (const std::optional<Tick> found = board_.earliest(a, mode, first, last)) best = found;
            }
            if (!best) return std::nullopt;
            later = *best - coming.offsets[i];
            if (later > start) break;
        }
        if (later == start) return start;
        start = later;
    }
    return std::nullopt;
}

bool Draft::putEarliest(std::size_t unit) {
    const Node leader = startOf(model_.units[unit].members.front());
    bounds();
    const std::int64_t last = bounds_.upper(leader);
    // Where each member has room for itself they may still be in each other's way, perhaps at any start: the steps
    // grow.
    std::int64_t step = 1;
    int stumbles = 0;
    for (std::int64_t start = bounds_.lower(leader); start <= last; start += step) {
        const std::optional<Tick> found = earliest(unit, static_cast<Tick>(start), static_cast<Tick>(last));
        if (!found) return false;
        start = *found;
        if (putAt(unit, *found)) return true;
        bounds();
        step = ++stumbles % 16 == 0 ? 2 * step : step;
    }
    return false;
}

void Draft::leaveOut(std::size_t unit) {
    remember(unit);
    for (const std::size_t a : model_.units[unit].members) tally_.leaveOut(a);
    setNow(unit, Now::Out);
}

void Draft::takeUp(std::size_t unit) {
    remember(unit);
    for (const std::size_t a : model_.units[unit].members) tally_.takeUp(a);
    setNow(unit, Now::Open);
}

void Draft::take(std::size_t unit) {
    remember(unit);
    for (const std::size_t a : model_.units[unit].members) takeMember(a);
    setNow(unit, Now::Open);
}

void Draft::takeAll(const std::vector<std::pair<std::size_t, std::vector<Placed>>>& units) {
    for (const auto& [unit, places] : units) take(unit);
}

bool Draft::isSound() const {
    return std::all_of(board_.stocks().begin(), board_.stocks().end(),
                       [](const Stock& stock) { return stock.isSound(); });
}

void Draft::takeGroup(std::size_t group) {
    for (const std::size_t unit : model_.groups[group].units) {
        if (now_[unit] == Now::In) take(unit);
    }
    for (const std::size_t other : model_.groups[group].impliedBy) {
        for (const std::size_t unit : model_.groups[other].units) {
            if (now_[unit] == Now::In) take(unit);
        }
    }
}

void Draft::remove(std::size_t unit) {
    if (now_[unit] != Now::In) return;
    if (model_.groups[model_.groupOf[unit]].isRequired) {
        take(unit);
    } else {
        takeGroup(model_.groupOf[unit]);
    }
    settle();
}

/// Where a stock is short now, or overflows, the last flow that way before that goes too.
void Draft::settle() {
    for (std::size_t i = 0; i < board_.stocks().size(); ++i) {
        const Stock& stock = board_.stocks()[i];
        if (stock.isSound()) continue;
        const Stock::Change beyond = stock.firstBeyond();
        const Stock::Booking* last = nullptr;
        for (const Stock::Booking& booking : stock.bookings()) {
            if (booking.when > beyond.when) break;
            if ((booking.amount < 0) == (beyond.amount < 0) && booking.amount != 0) last = &booking;
        }
        assert(last != nullptr);
        if (last == nullptr) return;           // cannot be: the initial level is within the limits
        remove(model_.unitOf[last->activity]); // settles the rest as well
        return;
    }
}

void Draft::gatherStarts(std::size_t unit, Tick from, Tick to) {
    starts_.clear();
    const Unit& coming = model_.units[unit];
    const auto add = [&](std::int64_t start) {
        if (start > from && start < to) starts_.push_back(static_cast<Tick>(start));
    };
    constexpr std::size_t kMostStarts = 256;
    for (std::size_t i = 0; i < coming.members.size(); ++i) {
        const std::size_t a = coming.members[i];
        const Tick offset = coming.offsets[i];
        Tick lastDuration = -1;
        const Mode* last = nullptr;
        for (const int m : model_.modes[a]) {
            const Mode& way = model_.mode(a, m);
            if (way.duration != lastDuration) {
                const std::size_t first = starts_.size();
                tally_.addCorners(a, way.duration, starts_);
                std::size_t kept = first;
                for (std::size_t c = first; c < starts_.size(); ++c) {
                    const Tick start = starts_[c] - offset;
                    if (start > from && start < to) starts_[kept++] = start;
                }
                starts_.resize(kept);
                lastDuration = way.duration;
            }
            const auto beside = [&](Tick start, Tick end, Tick before, Tick after) {
                add(std::int64_t{end} + after - offset);
                add(std::int64_t{start} - before - way.duration - offset);
            };
            const Tick earliest = from + offset;
            const Tick latest = to + offset + way.duration;
            for (const Use& use : way.uses) {
                if (starts_.size() > kMostStarts) break;
                if (model_.problem.resources[at(use.resource)].machine) {
                    const Line& line = board_.line(use.resource);
                    for (const Line::Booking& booking : line.bookings()) {
                        if (booking.end < earliest) continue;
                        if (booking.start > latest) break;
                        if (booking.family == use.family) add(std::int64_t{booking.start} - offset);
                        beside(booking.start, booking.end, line.setup(use.family, booking.family),
                               line.setup(booking.family, use.family));
                    }
                } else {
                    for (const Board::Booking& booking : board_.bookings(use.resource)) {
                        if (booking.end >= earliest && booking.start <= latest)
                            beside(booking.start, booking.end, 0, 0);
                    }
                }
            }
            for (const Flow& flow : way.flows) {
                for (const Stock::Booking& booking : board_.stock(flow.resource).bookings()) {
                    add(std::int64_t{booking.when} - offset - (flow.point == Point::End ? way.duration : 0));
                }
            }
            const auto addOf = [&](WorkerIndex worker) {
                if (starts_.size() > kMostStarts) return;
                for (const Span& span : model_.problem.workers[at(worker)].present) {
                    beside(span.to, span.from, 0, 0);
                }
                const std::vector<Diary::Booking>& bookings = board_.diary(worker).bookings();
                auto booking = std::partition_point(bookings.begin(), bookings.end(),
                                                    [&](const Diary::Booking& one) { return one.end < earliest; });
                for (; booking != bookings.end() && booking->start <= latest; ++booking) {
                    beside(booking->start, booking->end, 0, 0);
                }
            };
            // The same people for as long need not be looked at again.
            const bool isSeen = last != nullptr && last->duration == way.duration && last->team == way.team &&
                                std::equal(last->needs.begin(), last->needs.end(), way.needs.begin(), way.needs.end(),
                                           [](const SkillNeed& x, const SkillNeed& y) { return x.skill == y.skill; });
            last = &way;
            if (isSeen) continue;
            for (const WorkerIndex worker : way.team) addOf(worker);
            for (const SkillNeed& need : way.needs) {
                for (const WorkerIndex worker : model_.skilled[at(need.skill)]) addOf(worker);
            }
        }
    }
    std::sort(starts_.begin(), starts_.end());
    starts_.erase(std::unique(starts_.begin(), starts_.end()), starts_.end());
    starts_.push_back(from);
    if (to > from) starts_.push_back(to);
}

/// Each member in its cheapest mode; what was put for the trial is taken away again. False when one does not fit, or it
/// costs `limit` or more.
bool Draft::tryMembers(std::size_t unit, Tick start, Cost limit, Cost& cost) {
    const Unit& coming = model_.units[unit];
    trial_.clear();
    cost = 0;
    bool isFine = true;
    for (std::size_t i = 0; i < coming.members.size() && isFine; ++i) {
        const std::size_t a = coming.members[i];
        const Tick when = start + coming.offsets[i];
        std::optional<Placed> best;
        Cost bestCost = 0;
        for (const int mode : model_.modes[a]) {
            if (!isInWindow(a, when, Stretch(model_.mode(a, mode)).end(when))) continue;
            std::optional<Placed> found = board_.fit(a, mode, when, tally_.caresForPeople(a) ? &tally_ : nullptr);
            if (!found) continue;
            const Cost grows = tally_.put(board_, a, *found);
            tally_.take(board_, a, *found);
            if (best && grows >= bestCost) continue;
            bestCost = grows;
            best = std::move(found);
        }
        isFine = best.has_value();
        if (!isFine) break;
        cost += bestCost;
        trial_.push_back(*std::move(best));
        if (coming.members.size() == 1) break;
        tally_.put(board_, a, trial_.back());
        board_.put(a, trial_.back());
    }
    if (coming.members.size() > 1) {
        for (std::size_t i = trial_.size(); i-- > 0;) {
            board_.take(coming.members[i]);
            tally_.take(board_, coming.members[i], trial_[i]);
        }
    }
    return isFine && cost < limit;
}

bool Draft::putCheapest(std::size_t unit, const Search& search) {
    bounds();
    const Unit& coming = model_.units[unit];
    const std::size_t leader = coming.members.front();
    if (!bounds_.isOpen(leader)) return false;
    const Tick from = bounds_.lower(startOf(leader));
    const Tick to = bounds_.upper(startOf(leader));
    gatherStarts(unit, from, to);
    ordered_.clear();
    for (const Tick start : starts_) {
        Cost cost = 0;
        for (std::size_t i = 0; i < coming.members.size(); ++i) {
            const std::size_t a = coming.members[i];
            const Tick when = start + coming.offsets[i];
            cost += tally_.ofTime(a, when, when + model_.lengths[a].least);
        }
        ordered_.emplace_back(cost, search.isLateFirst ? -start : start);
    }
    std::sort(ordered_.begin(), ordered_.end());
    board_.addWork(ordered_.size() / 16);
    Cost bestCost = std::numeric_limits<Cost>::max();
    std::size_t found = 0;
    std::size_t tried = 0;
    for (const auto& [cost, signedStart] : ordered_) {
        if (found > 0 && (cost >= bestCost || tried >= search.tries)) break;
        if (tried > 4 * search.tries) break;
        if (search.random != nullptr && ((*search.random)() & 63U) == 0) continue;
        ++tried;
        Cost all = 0;
        if (!tryMembers(unit, search.isLateFirst ? -signedStart : signedStart, bestCost, all)) continue;
        bestCost = all;
        best_ = trial_;
        ++found;
    }
    if (found > 0 && put(unit, best_)) return true;
    return putEarliest(unit); // perhaps between the starts looked at
}

bool Draft::putNearest(std::size_t unit, Tick start) {
    bounds();
    const Unit& coming = model_.units[unit];
    const std::size_t leader = coming.members.front();
    if (!bounds_.isOpen(leader)) return false;
    const Tick from = bounds_.lower(startOf(leader));
    const Tick to = bounds_.upper(startOf(leader));
    const Tick middle = std::clamp(start, from, to);
    gatherStarts(unit, from, to);
    starts_.push_back(middle);
    if (const std::optional<Tick> next = earliest(unit, middle, to)) starts_.push_back(*next);
    ordered_.clear();
    for (const Tick one : starts_) ordered_.emplace_back(one < middle ? middle - one : one - middle, one);
    std::sort(ordered_.begin(), ordered_.end());
    board_.addWork(ordered_.size() / 16);
    constexpr std::size_t kTries = 96;
    for (std::size_t i = 0; i < ordered_.size() && i < kTries; ++i) {
        Cost cost = 0;
        if (tryMembers(unit, ordered_[i].second, std::numeric_limits<Cost>::max(), cost)) {
            best_ = trial_;
            if (put(unit, best_)) return true;
            bounds();
        }
    }
    return putEarliest(unit);
}

bool Draft::putIfFits(std::size_t unit, std::span<const Placed> places, bool isByStock) {
    bounds();
    const std::vector<std::size_t>& members = model_.units[unit].members;
    const std::vector<int>* modes = nullptr;
    bool isFine = true;
    for (std::size_t i = 0; i < members.size() && isFine; ++i) {
        modes = &model_.modes[members[i]];
        isFine = std::find(modes->begin(), modes->end(), places[i].mode) != modes->end() &&
                 board_.takes(members[i], places[i]);
        if (isFine) board_.put(members[i], places[i]); // the others must fit beside it
    }
    const bool isSoundThen = !isByStock || isSound();
    for (const std::size_t a : members) {
        if (board_.isPlaced(a)) board_.take(a);
    }
    return isFine && isSoundThen && put(unit, places);
}

bool Draft::putWorthwhile(std::size_t group, const Search& search) {
    const Group& coming = model_.groups[group];
    std::vector<std::size_t> units = coming.units;
    for (const std::size_t other : coming.implied) {
        for (const std::size_t unit : model_.groups[other].units) {
            if (now_[unit] == Now::In) continue;
            units.push_back(unit);
        }
    }
    Cost without = 0;
    bool isPossible = true;
    for (const std::size_t unit : units) {
        if (now_[unit] == Now::Out) takeUp(unit);
    }
    const Cost before = total();
    for (const std::size_t unit : units) {
        for (const std::size_t a : model_.units[unit].members) isPossible = isPossible && !model_.isNever(a);
        leaveOut(unit);
    }
    without = total() - before;
    for (const std::size_t unit : units) takeUp(unit);
    // In order of their windows, so that what comes first leaves room for the next.
    std::vector<std::size_t> order = units;
    const Bounds& windows = bounds();
    std::sort(order.begin(), order.end(), [&](std::size_t x, std::size_t y) {
        return std::pair{windows.upper(startOf(model_.units[x].members.front())), x} <
               std::pair{windows.upper(startOf(model_.units[y].members.front())), y};
    });
    for (std::size_t i = 0; i < order.size() && isPossible; ++i) isPossible = putCheapest(order[i], search);
    // A gain too small by rounds would go in and out for ever: only what is cheaper goes in.
    if (isPossible && total() - before < without) return true;
    for (const std::size_t unit : order) {
        if (now_[unit] == Now::In) take(unit);
    }
    for (const std::size_t unit : order) leaveOut(unit);
    settle();
    return false;
}

} // namespace piewright::schedule
