// How long an activity takes from a given start on: its duration, and the pauses that fall into it.
#pragma once

#include "schedule/problem.h"

#include <algorithm>
#include <vector>

namespace piewright::schedule {

class Stretch {
  public:
    /// Of no pauses.
    explicit Stretch(Tick duration) : duration_(duration) {}
    /// `mode` must outlive it.
    explicit Stretch(const Mode& mode)
        : duration_(mode.duration), pauses_(mode.pauses.empty() ? nullptr : &mode.pauses) {}

    [[nodiscard]] Tick duration() const { return duration_; }
    [[nodiscard]] bool pauses() const { return pauses_ != nullptr; }

    /// Earliest start at or after `from`: not within a pause.
    [[nodiscard]] Tick start(Tick from) const {
        if (pauses_ == nullptr) return from;
        for (auto pause = after(from); pause != pauses_->end() && pause->from <= from; ++pause) {
            from = std::max(from, pause->to);
        }
        return from;
    }
    /// Of something that starts then, not within a pause. Never earlier for a later start.
    [[nodiscard]] Tick end(Tick start) const {
        if (pauses_ == nullptr) return start + duration_;
        std::int64_t end = std::int64_t{start} + duration_;
        for (auto pause = after(start); pause != pauses_->end() && pause->from < end; ++pause) {
            end += pause->to - pause->from;
        }
        return static_cast<Tick>(std::min<std::int64_t>(end, kNever));
    }
    /// Latest start that ends by `by`; some time before 0 when there is none.
    [[nodiscard]] Tick latestStart(Tick by) const {
        if (pauses_ == nullptr) return by - duration_;
        // Back from `by`, over the pauses: no later start ends in time.
        std::int64_t start = by;
        std::int64_t left = duration_;
        for (auto pause = pauses_->rbegin(); pause != pauses_->rend() && left > 0; ++pause) {
            if (pause->from >= start) continue;
            const std::int64_t between = std::max<std::int64_t>(0, start - pause->to);
            if (between >= left) break;
            left -= between;
            start = pause->from;
        }
        return static_cast<Tick>(start - left);
    }
    /// Earliest start, perhaps within a pause, that ends at `by` or later.
    [[nodiscard]] Tick firstStart(Tick by) const {
        if (pauses_ == nullptr) return by - duration_;
        Tick before = by - std::min(most(), kNever - 1) - 1;
        Tick start = by - duration_;
        while (start - before > 1) {
            const Tick middle = before + (start - before) / 2;
            (end(middle) >= by ? start : before) = middle;
        }
        return start;
    }
    /// Longest it may take.
    [[nodiscard]] Tick most() const {
        std::int64_t most = duration_;
        if (pauses_ != nullptr) {
            for (const Span& pause : *pauses_) most += pause.to - pause.from;
        }
        return static_cast<Tick>(std::min<std::int64_t>(most, kNever));
    }

    /// Each part from `start` to end(start) between pauses, until `visit(from, to)` says false.
    template <class Visit> void forParts(Tick start, Visit visit) const {
        const Tick last = end(start);
        if (pauses_ == nullptr) {
            visit(start, last);
            return;
        }
        for (auto pause = after(start); pause != pauses_->end() && pause->from < last; ++pause) {
            if (pause->from > start && !visit(start, pause->from)) return;
            start = pause->to;
        }
        if (start < last) visit(start, last);
    }

  private:
    /// First pause that ends after `tick`.
    [[nodiscard]] std::vector<Span>::const_iterator after(Tick tick) const {
        return std::partition_point(pauses_->begin(), pauses_->end(),
                                    [&](const Span& pause) { return pause.to <= tick; });
    }

    Tick duration_;
    const std::vector<Span>* pauses_ = nullptr;
};

} // namespace piewright::schedule
