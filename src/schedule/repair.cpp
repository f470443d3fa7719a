#include "schedule/repair.h"

#include <algorithm>
#include <utility>

namespace piewright::schedule {

Repair::Repair(const Model& model, const Schedule& previous, std::uint64_t seed)
    : model_(model), random_(seed), seed_(seed) {
    if (model.hopeless) return;
    before_.resize(model.units.size());
    failures_.assign(model.units.size(), 0);
    for (std::size_t u = 0; u < model.units.size() && previous.placed.size() == model.problem.activities.size(); ++u) {
        const std::vector<std::size_t>& members = model.units[u].members;
        if (std::any_of(members.begin(), members.end(), [&](std::size_t a) { return previous.placed[a].mode < 0; }))
            continue;
        for (const std::size_t a : members) before_[u].push_back(previous.placed[a]);
    }
}

std::uint64_t Repair::run(const Turn& turn, Standing& standing) {
    if (isDone_ || model_.hopeless || model_.units.empty() || standing.isSettled()) return 0;
    if (!draft_) {
        draft_.emplace(model_);
        keep();
    }
    const std::uint64_t begun = draft_->board().work();
    const std::uint64_t patience = 40'000 + 400 * static_cast<std::uint64_t>(model_.units.size());
    const auto isCancelled = [&] {
        return turn.cancelled != nullptr && turn.cancelled->load(std::memory_order_relaxed);
    };
    const auto done = [&] { return draft_->board().work() - begun; };
    const auto tell = [&](Schedule schedule, Cost value) {
        isDone_ = true;
        if (standing.schedule && standing.value <= value) return;
        if (turn.found) turn.found(schedule, value);
        standing.schedule = std::move(schedule);
        standing.value = value;
    };
    while (!draft_->open().empty() && done() < turn.work && !isCancelled()) {
        if (draft_->board().work() - since_ > patience) break;
        std::size_t unit = draft_->open()[draw(draft_->open().size())];
        if (!putBack(unit)) mendAround(unit);
        if (draft_->open().size() < least_) {
            least_ = draft_->open().size();
            since_ = draft_->board().work();
        }
    }
    if (draft_->open().empty()) {
        returnMoved();
        tell(Schedule{draft_->board().placed()}, draft_->total());
        return std::max<std::uint64_t>(1, done());
    }
    // It does not work out near to what was.
    if (draft_->board().work() - since_ > patience && done() < turn.work && !isCancelled()) {
        if (!builder_) builder_.emplace(model_, seed_);
        const std::uint64_t built = builder_->work();
        std::optional<Schedule> schedule = builder_->run(built + turn.work - done(), turn.cancelled);
        const std::uint64_t all = done() + builder_->work() - built;
        if (schedule) tell(*std::move(schedule), builder_->value());
        return std::max<std::uint64_t>(1, all);
    }
    return std::max<std::uint64_t>(1, done());
}

std::size_t Repair::moved() const {
    std::size_t moved = 0;
    for (std::size_t u = 0; draft_ && u < before_.size(); ++u) {
        const std::vector<std::size_t>& members = model_.units[u].members;
        for (std::size_t i = 0; i < members.size(); ++i) {
            const bool isIn = draft_->board().isPlaced(members[i]);
            if (before_[u].empty() ? isIn : !isIn || draft_->board().placed(members[i]) != before_[u][i]) ++moved;
        }
    }
    return moved;
}

bool Repair::isAsBefore(std::size_t unit) const {
    const std::vector<std::size_t>& members = model_.units[unit].members;
    if (draft_->now(unit) != Draft::Now::In) return before_[unit].empty();
    for (std::size_t i = 0; i < before_[unit].size(); ++i) {
        if (draft_->board().placed(members[i]) != before_[unit][i]) return false;
    }
    return !before_[unit].empty();
}

void Repair::leaveOutOptional() {
    const std::vector<std::size_t> open = draft_->open();
    for (const std::size_t u : open) {
        if (!model_.groups[model_.groupOf[u]].isRequired) draft_->leaveOut(u);
    }
}

/// All that fits just as it was, in order of time; stocks are looked at when all that fill and use them are there.
void Repair::keep() {
    std::vector<std::size_t> order;
    for (std::size_t u = 0; u < before_.size(); ++u) {
        if (!before_[u].empty()) order.push_back(u);
    }
    std::sort(order.begin(), order.end(), [&](std::size_t x, std::size_t y) {
        return std::pair{before_[x].front().start, x} < std::pair{before_[y].front().start, y};
    });
    for (const std::size_t u : order) draft_->putIfFits(u, before_[u], false);
    draft_->settle();
    // Groups that are there in part only, or without what they imply, stay out.
    const auto isIn = [&](std::size_t u) { return draft_->now(u) == Draft::Now::In; };
    const auto isAll = [&](const Group& group) { return std::all_of(group.units.begin(), group.units.end(), isIn); };
    for (bool isWhole = false; !isWhole;) {
        isWhole = true;
        for (const Group& group : model_.groups) {
            if (group.isRequired || std::none_of(group.units.begin(), group.units.end(), isIn)) continue;
            if (isAll(group) && std::all_of(group.implied.begin(), group.implied.end(),
                                            [&](std::size_t g) { return isAll(model_.groups[g]); }))
                continue;
            for (const std::size_t u : group.units) draft_->remove(u);
            isWhole = false;
        }
    }
    leaveOutOptional();
    least_ = draft_->open().size();
    since_ = draft_->board().work();
}

bool Repair::putBack(std::size_t unit) {
    if (before_[unit].empty()) return draft_->putCheapest(unit, {});
    if (draft_->putIfFits(unit, before_[unit])) return true;
    return draft_->putNearest(unit, before_[unit].front().start);
}

/// Takes out a few that may be in the way, and puts all back; undone where more is left over than before.
void Repair::mendAround(std::size_t unit) {
    Draft& draft = *draft_;
    ++failures_[unit];
    const Bounds& bounds = draft.bounds();
    const Node leader = startOf(model_.units[unit].members.front());
    // Where it was, or somewhere it may be; where its window is empty, it is what it is tied to that stands in the way.
    Tick when = before_[unit].empty() ? bounds.openUpper(leader) : before_[unit].front().start;
    Tick lower = bounds.lower(leader);
    Tick upper = bounds.upper(leader);
    if (draw(4) == 0) {
        lower = bounds.openLower(leader);
        upper = bounds.openUpper(leader);
    }
    if (lower < upper && draw(2) == 0)
        when = lower + static_cast<Tick>(draw(static_cast<std::uint64_t>(upper - lower) + 1));
    when = std::clamp(when, std::min(lower, upper), std::max(lower, upper));
    const Tick length =
        std::max<Tick>(1, model_.units[unit].offsets.back() + model_.lengths[model_.units[unit].members.back()].least);
    ranked_.clear();
    for (std::size_t u = 0; u < model_.units.size(); ++u) {
        if (draft.now(u) != Draft::Now::In) continue;
        const Tick start = draft.startOfUnit(u);
        const Tick end = draft.board().placed(model_.units[u].members.back()).end;
        const std::int64_t away = when + length < start ? std::int64_t{start} - when - length
                                  : when > end          ? when - end
                                                        : 0;
        ranked_.emplace_back(away * 4 + static_cast<std::int64_t>(draw(64)), u);
    }
    for (const std::size_t a : model_.units[unit].members) {
        for (const std::size_t other : model_.linked[a]) {
            for (auto& [key, u] : ranked_) {
                if (u == model_.unitOf[other]) key = static_cast<std::int64_t>(draw(48)) - 16;
            }
        }
    }
    draft.board().addWork(ranked_.size() / 32);
    const std::size_t most = std::min<std::size_t>({ranked_.size(), 24, 2 + failures_[unit]});
    const std::size_t count = most == 0 ? 0 : 1 + draw(most);
    std::partial_sort(ranked_.begin(), ranked_.begin() + static_cast<std::ptrdiff_t>(count), ranked_.end());
    // As guided ejection search has it: what was hard to place before is not left over for what was easy.
    const auto hardness = [&] {
        std::uint64_t sum = 0;
        for (const std::size_t u : draft.open()) sum += 1 + failures_[u];
        return sum;
    };
    const std::uint64_t hardBefore = hardness();
    const std::vector<std::size_t> others = draft.open();
    draft.mark();
    for (std::size_t i = 0; i < count; ++i) draft.remove(ranked_[i].second);
    leaveOutOptional();
    const bool isPut = putBack(unit);
    std::vector<std::size_t> order;
    for (const std::size_t u : draft.open()) {
        if (std::find(others.begin(), others.end(), u) == others.end()) order.push_back(u);
    }
    const bool isPressing = draw(2) == 0;
    while (isPut && !order.empty()) {
        std::size_t best = draw(order.size());
        if (isPressing) {
            const Bounds& now = draft.bounds();
            const auto latest = [&](std::size_t i) {
                return now.upper(startOf(model_.units[order[i]].members.front()));
            };
            for (std::size_t i = 0; i < order.size(); ++i) {
                if (latest(i) < latest(best)) best = i;
            }
        }
        if (draft.now(order[best]) == Draft::Now::Open) putBack(order[best]);
        order.erase(order.begin() + static_cast<std::ptrdiff_t>(best));
    }
    if (!isPut || hardness() > hardBefore) draft.rollBack();
}

/// What was moved on the way, and need not be.
void Repair::returnMoved() {
    constexpr int kRounds = 3;
    bool isMore = true;
    for (int round = 0; round < kRounds && isMore; ++round) {
        isMore = false;
        for (std::size_t u = 0; u < before_.size(); ++u) {
            if (isAsBefore(u) || before_[u].empty() || draft_->now(u) != Draft::Now::In) continue;
            draft_->mark();
            draft_->remove(u);
            if (draft_->open().size() == 1 && draft_->putIfFits(u, before_[u])) {
                isMore = true;
            } else {
                draft_->rollBack();
            }
        }
    }
}

} // namespace piewright::schedule
