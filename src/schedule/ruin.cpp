#include "schedule/ruin.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace piewright::schedule {

namespace {

constexpr std::size_t kHistory = 100;     ///< rounds an older cost may still be good enough for
constexpr std::size_t kMostRemoved = 10;  ///< units, before what goes with them
constexpr std::uint64_t kSegment = 64;    ///< rounds after which the worth of the ways is renewed
constexpr std::uint64_t kEachShift = 256; ///< rounds between two passes over the times alone
constexpr std::uint64_t kEachRound = 8;   ///< steps beside the placements

} // namespace

Ruin::Ruin(const Model& model, std::uint64_t seed) : model_(model), random_(seed) {
    if (model.hopeless) return;
    builder_.emplace(model, seed);
    weights_.assign(model.units.size(), 1);
    key_.assign(model.units.size(), 0);
    worth_.fill(1);
}

std::uint64_t Ruin::work() const { return (builder_ ? builder_->work() : 0) + (draft_ ? draft_->board().work() : 0); }

std::uint64_t Ruin::run(const Turn& turn, Standing& standing) {
    if (model_.hopeless || model_.units.empty() || standing.isSettled()) return 0;
    const std::uint64_t before = work();
    const auto done = [&] { return work() - before; };
    const auto tell = [&](Schedule schedule, Cost value) {
        if (turn.found) turn.found(schedule, value);
        standing.schedule = std::move(schedule);
        standing.value = value;
    };
    if (!draft_ && !standing.schedule) {
        std::optional<Schedule> built = builder_->run(before + turn.work, turn.cancelled);
        if (!built) return std::max<std::uint64_t>(1, done());
        load(*built);
        tell(*std::move(built), best_);
    } else if (standing.schedule && standing.value < best_) {
        load(*standing.schedule);
        if (best_ < standing.value) standing.value = best_; // the caller could not tell what it costs
    }
    if (draft_->tally().isIdle()) return done();
    const auto isCancelled = [&] {
        return turn.cancelled != nullptr && turn.cancelled->load(std::memory_order_relaxed);
    };
    while (done() < turn.work && !standing.isSettled() && !isCancelled()) {
        if (round()) tell(Schedule{draft_->board().placed()}, best_);
    }
    return done();
}

void Ruin::load(const Schedule& schedule) {
    const std::uint64_t sofar = draft_ ? draft_->board().work() : 0;
    draft_.emplace(model_);
    draft_->board().addWork(sofar);
    for (std::size_t u = 0; u < model_.units.size(); ++u) {
        std::vector<Placed> places;
        for (const std::size_t a : model_.units[u].members) places.push_back(schedule.placed[a]);
        if (places.front().mode == kAbsent) {
            draft_->leaveOut(u);
        } else {
            draft_->put(u, places);
        }
    }
    if (!ejection_) ejection_.emplace(model_, weights_);
    if (!shift_) shift_.emplace(model_);
    best_ = draft_->total();
    history_.assign(kHistory, best_);
}

Ruin::Way Ruin::choose() {
    double sum = 0;
    for (const double worth : worth_) sum += worth;
    double left = sum * static_cast<double>(draw(1U << 30U)) / static_cast<double>(1U << 30U);
    for (std::size_t way = 0; way + 1 < kWays; ++way) {
        left -= worth_[way];
        if (left < 0) return static_cast<Way>(way);
    }
    return Way::Anyhow;
}

bool Ruin::round() {
    ++rounds_;
    if (rounds_ % kEachShift == 1 && shift_->run(*draft_) && draft_->total() < best_) {
        best_ = draft_->total();
        return true;
    }
    const Cost now = draft_->total();
    const std::uint64_t before = draft_->board().work();
    const Way way = choose();
    const std::size_t most = std::min(kMostRemoved, std::max<std::size_t>(2, model_.units.size() / 2));
    draft_->mark();
    ruin(way, 1 + draw(most));
    const bool isWhole = recreate();
    draft_->board().addWork(kEachRound);
    const Cost then = draft_->total();
    Cost& old = history_[at_];
    const bool isTaken = isWhole && (then <= now || then <= old);
    const bool isBest = isWhole && then < best_;
    if (isTaken) {
        best_ = std::min(best_, then);
    } else {
        draft_->rollBack();
    }
    old = std::min(old, draft_->total());
    at_ = (at_ + 1) % history_.size();
    // What a way is worth is what it gains for its work.
    gained_[static_cast<std::size_t>(way)] += isBest ? 8 : isTaken && then < now ? 3 : isTaken && then != now ? 1 : 0;
    tried_[static_cast<std::size_t>(way)] += static_cast<double>(draft_->board().work() - before);
    if (rounds_ % kSegment == 0) {
        double gained = 0;
        double tried = 0;
        for (std::size_t i = 0; i < kWays; ++i) {
            gained += gained_[i];
            tried += tried_[i];
        }
        for (std::size_t i = 0; i < kWays && gained > 0; ++i) {
            if (tried_[i] == 0) continue;
            const double rate = gained_[i] / tried_[i] * tried / gained; // 1: as good as all together
            worth_[i] = std::clamp(0.8 * worth_[i] + 0.2 * rate, 0.15, 4.0);
        }
        gained_.fill(0);
        tried_.fill(0);
    }
    return isBest && isTaken;
}

std::size_t Ruin::anyIn() {
    for (int tries = 0; tries < 16; ++tries) {
        const std::size_t unit = draw(model_.units.size());
        if (draft_->now(unit) == Draft::Now::In) return unit;
    }
    return draw(model_.units.size());
}

/// Of a few, the one whose time costs most.
std::size_t Ruin::dearest() {
    std::size_t best = anyIn();
    Cost bestCost = std::numeric_limits<Cost>::min();
    for (int i = 0; i < 12; ++i) {
        const std::size_t unit = anyIn();
        if (draft_->now(unit) != Draft::Now::In) continue;
        Cost cost = 0;
        for (const std::size_t a : model_.units[unit].members) {
            const Placed& placed = draft_->board().placed(a);
            cost += draft_->tally().ofTime(a, placed.start, placed.end) + model_.mode(a, placed.mode).cost;
        }
        if (cost <= bestCost) continue;
        bestCost = cost;
        best = unit;
    }
    return best;
}

void Ruin::ruin(Way way, std::size_t count) {
    const auto whenOf = [&](std::size_t unit) {
        return draft_->now(unit) == Draft::Now::In ? draft_->startOfUnit(unit) : 0;
    };
    switch (way) {
    case Way::NearInTime:
        ruinNear(whenOf(anyIn()), count);
        break;
    case Way::OfWorker:
        ruinOfWorker(count);
        break;
    case Way::OfResource:
        ruinOfResource(count);
        break;
    case Way::Dear: {
        const std::size_t unit = dearest();
        const Tick when = whenOf(unit);
        ruinLinked(unit, 1 + draw(count));
        // And somewhere else it could have been.
        if (draft_->now(unit) == Draft::Now::Open && draft_->open().size() < count) {
            const Bounds& bounds = draft_->bounds();
            const Node leader = startOf(model_.units[unit].members.front());
            const Tick lower = bounds.lower(leader);
            const Tick upper = bounds.upper(leader);
            const Tick to = chance(2) || upper <= lower
                                ? when
                                : lower + static_cast<Tick>(draw(static_cast<std::uint64_t>(upper - lower) + 1));
            ruinNear(to, count - draft_->open().size());
        }
        break;
    }
    case Way::Linked:
        ruinLinked(anyIn(), count);
        break;
    case Way::Anyhow:
        for (std::size_t i = 0; i < count; ++i) draft_->remove(anyIn());
        break;
    }
    if (draft_->open().empty()) draft_->remove(anyIn());
}

void Ruin::ruinNear(Tick when, std::size_t count) {
    ranked_.clear();
    for (std::size_t u = 0; u < model_.units.size(); ++u) {
        if (draft_->now(u) != Draft::Now::In) continue;
        const Tick start = draft_->startOfUnit(u);
        const Tick end = draft_->board().placed(model_.units[u].members.back()).end;
        const std::int64_t away = when < start ? start - when : when > end ? when - end : 0;
        // A little by chance, so that it is not the same few each time.
        ranked_.emplace_back(away * 4 + static_cast<std::int64_t>(draw(32)), u);
    }
    count = std::min(count, ranked_.size());
    std::nth_element(ranked_.begin(), ranked_.begin() + static_cast<std::ptrdiff_t>(count), ranked_.end());
    draft_->board().addWork(ranked_.size() / 64);
    for (std::size_t i = 0; i < count; ++i) draft_->remove(ranked_[i].second);
}

/// Some in a row of what one person does; perhaps what another does at the same time as well.
void Ruin::ruinOfWorker(std::size_t count) {
    const std::size_t workers = model_.problem.workers.size();
    if (workers == 0) {
        ruinNear(draft_->startOfUnit(anyIn()), count);
        return;
    }
    std::vector<std::size_t> theirs;
    const auto gather = [&](WorkerIndex worker, Tick from, std::size_t most) {
        const std::vector<Diary::Booking>& bookings = draft_->board().diary(worker).bookings();
        auto first = std::partition_point(bookings.begin(), bookings.end(),
                                          [&](const Diary::Booking& booking) { return booking.start < from; });
        for (; first != bookings.end() && most > 0; ++first, --most) theirs.push_back(first->activity);
    };
    const auto one = static_cast<WorkerIndex>(draw(workers));
    const std::vector<Diary::Booking>& bookings = draft_->board().diary(one).bookings();
    if (bookings.empty()) return;
    const Tick from = bookings[draw(bookings.size())].start;
    const bool isPair = workers > 1 && chance(2);
    gather(one, from, isPair ? (count + 1) / 2 : count);
    if (isPair) gather(static_cast<WorkerIndex>(draw(workers)), from, count / 2 + 1);
    for (const std::size_t a : theirs) removeActivity(a);
}

void Ruin::ruinOfResource(std::size_t count) {
    const std::size_t resources = model_.problem.resources.size();
    if (resources == 0) {
        ruinLinked(anyIn(), count);
        return;
    }
    std::vector<std::size_t> theirs;
    const auto gather = [&](std::size_t r, std::optional<Tick> from, std::size_t most) {
        const Resource& resource = model_.problem.resources[r];
        const auto index = static_cast<ResourceIndex>(r);
        ranked_.clear();
        if (resource.machine) {
            for (const Line::Booking& booking : draft_->board().line(index).bookings())
                ranked_.emplace_back(booking.start, booking.activity);
        } else if (resource.cumulative) {
            for (const Board::Booking& booking : draft_->board().bookings(index))
                ranked_.emplace_back(booking.start, booking.activity);
        } else {
            for (const Stock::Booking& booking : draft_->board().stock(index).bookings())
                ranked_.emplace_back(booking.when, booking.activity);
        }
        if (ranked_.empty()) return from;
        if (!resource.machine) std::sort(ranked_.begin(), ranked_.end());
        const std::int64_t since = from ? std::int64_t{*from} : ranked_[draw(ranked_.size())].first;
        for (const auto& [when, activity] : ranked_) {
            if (when >= since && most > 0) {
                theirs.push_back(activity);
                --most;
            }
        }
        return std::optional<Tick>(static_cast<Tick>(since));
    };
    const bool isPair = resources > 1 && chance(2);
    const std::optional<Tick> from = gather(draw(resources), std::nullopt, isPair ? (count + 1) / 2 : count);
    if (isPair) gather(draw(resources), from, count / 2 + 1);
    for (const std::size_t a : theirs) removeActivity(a);
}

/// What shares lags or people with the seed, and with those, and so on.
void Ruin::ruinLinked(std::size_t seed, std::size_t count) {
    std::vector<std::size_t> units{seed};
    for (std::size_t i = 0; i < units.size() && units.size() < count; ++i) {
        for (const std::size_t a : model_.units[units[i]].members) {
            for (const std::size_t other : model_.linked[a]) {
                const std::size_t unit = model_.unitOf[other];
                if (units.size() < count && std::find(units.begin(), units.end(), unit) == units.end())
                    units.push_back(unit);
            }
        }
    }
    for (const std::size_t unit : units) draft_->remove(unit);
}

/// Puts everything back that is open; false when some of it found no place.
bool Ruin::recreate() {
    Draft& draft = *draft_;
    Draft::Search search;
    enum class Order { Pressing, Narrow, Random, Early, Late, Long, Count };
    const auto order = static_cast<Order>(draw(static_cast<std::uint64_t>(Order::Count)));
    // From the end of the day backwards what is put goes late, so that it is just in time for what is there.
    search.isLateFirst = order == Order::Late ? !chance(4) : chance(order == Order::Random ? 2 : 5);
    search.random = &random_;
    // Sometimes something that was left out is thought of first, sometimes last.
    const bool isOutFirst = chance(2);
    const auto tryOut = [&] {
        if (draft.out().empty() || !chance(3)) return;
        const std::size_t group = model_.groupOf[draft.out()[draw(draft.out().size())]];
        const bool isAll = std::all_of(model_.groups[group].units.begin(), model_.groups[group].units.end(),
                                       [&](std::size_t unit) { return draft.now(unit) == Draft::Now::Out; });
        if (isAll) draft.putWorthwhile(group, search);
    };
    if (isOutFirst) tryOut();
    const auto keyOf = [&](std::size_t unit) -> std::int64_t {
        const Bounds& bounds = draft.bounds();
        const Unit& one = model_.units[unit];
        const Node leader = startOf(one.members.front());
        switch (order) {
        case Order::Pressing:
            return bounds.upper(leader);
        case Order::Narrow:
            return bounds.upper(leader) - bounds.lower(leader);
        case Order::Early:
            return bounds.lower(leader);
        case Order::Late:
            return -bounds.upper(leader);
        case Order::Long:
            return -(one.offsets.back() + model_.lengths[one.members.back()].least);
        case Order::Random:
        case Order::Count:
            break;
        }
        return static_cast<std::int64_t>(draw(1U << 20U));
    };
    const std::size_t patience = 3 * draft.open().size() + 8;
    std::size_t forced = 0;
    for (std::size_t turn = 0; !draft.open().empty(); ++turn) {
        if (turn > patience) return false;
        std::size_t unit = draft.open().front();
        std::int64_t least = std::numeric_limits<std::int64_t>::max();
        for (const std::size_t other : draft.open()) {
            const std::int64_t key = keyOf(other);
            if (key > least || (key == least && other > unit)) continue;
            least = key;
            unit = other;
        }
        const std::size_t group = model_.groupOf[unit];
        if (!model_.groups[group].isRequired) {
            draft.putWorthwhile(group, search);
        } else if (!draft.putCheapest(unit, search)) {
            if (++forced > 3 || !force(unit)) return false;
        }
    }
    if (!isOutFirst) tryOut();
    return draft.open().empty();
}

/// Puts it in at the expense of the fewest others.
bool Ruin::force(std::size_t unit) {
    Draft& draft = *draft_;
    const Bounds& bounds = draft.bounds();
    const Node leader = startOf(model_.units[unit].members.front());
    std::optional<Ejection::Plan> best;
    Tick bestStart = 0;
    const auto attempt = [&](Tick start) {
        draft.board().addWork(1 + model_.units[unit].members.size());
        const std::uint64_t limit = best ? best->cost : 4;
        if (auto plan = ejection_->plan(draft.board(), bounds, unit, start, limit)) {
            best = std::move(plan);
            bestStart = start;
        }
    };
    const auto some = [&](Tick from, Tick to) {
        if (from <= to) attempt(from + static_cast<Tick>(draw(static_cast<std::uint64_t>(to - from) + 1)));
    };
    for (int i = 0; i < 4; ++i) {
        some(bounds.lower(leader), bounds.upper(leader));
        some(bounds.openLower(leader), bounds.openUpper(leader));
    }
    if (!best) return false;
    for (const std::size_t other : best->units) draft.remove(other);
    return draft.putAt(unit, bestStart, &best->modes);
}

} // namespace piewright::schedule
