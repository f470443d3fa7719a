#include "schedule/working_time.h"

#include <algorithm>

namespace piewright::schedule {

Tick WorkingTime::next(Tick t) const {
    for (const Span& pause : pauses_) {
        if (pause.from <= t && t < pause.to) return pause.to;
    }
    return t;
}

Tick WorkingTime::previous(Tick t) const {
    for (const Span& pause : pauses_) {
        if (pause.from <= t && t < pause.to) return std::max(pause.from - 1, -1);
    }
    return std::max(t, -1);
}

std::int64_t WorkingTime::ticksBefore(Tick t) const {
    std::int64_t ticks = std::max(t, 0);
    for (const Span& pause : pauses_) ticks -= std::max(0, std::min(pause.to, t) - std::max(pause.from, 0));
    return ticks;
}

Tick WorkingTime::tickAt(std::int64_t index) const {
    std::int64_t t = index;
    for (const Span& pause : pauses_) {
        if (pause.to > 0 && std::max(pause.from, 0) <= t) t += pause.to - std::max(pause.from, 0);
    }
    return static_cast<Tick>(std::min<std::int64_t>(t, kNever));
}

Tick WorkingTime::endOf(Tick start) const {
    return std::min(tickAt(ticksBefore(start) + duration_ - 1), kNever - 1) + 1;
}

Tick WorkingTime::latestStart(Tick end) const {
    const std::int64_t index = ticksBefore(end) - duration_;
    return index < 0 ? -1 : tickAt(index);
}

Tick WorkingTime::earliestStart(Tick end) const {
    return tickAt(std::max<std::int64_t>(0, ticksBefore(end - 1) - duration_ + 1));
}

} // namespace piewright::schedule
