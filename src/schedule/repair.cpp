#include "schedule/repair.h"

#include <algorithm>
#include <utility>

namespace piewright::schedule {

Repair::Repair(const Model& model, const Schedule& previous, std::uint64_t seed)
    : model_(model), previous_(previous), seed_(seed) {}

std::uint64_t Repair::run(const Turn& turn, Standing& standing) {
    if (isDone_ || model_.hopeless || standing.isSettled()) return 0;
    if (!builder_) {
        builder_.emplace(model_, seed_);
        builder_->keep(previous_);
    }
    const std::uint64_t before = builder_->work();
    std::optional<Schedule> schedule = builder_->run(before + turn.work, turn.cancelled);
    if (schedule) {
        isDone_ = true;
        if (!standing.schedule || builder_->value() < standing.value) {
            standing.value = builder_->value();
            if (turn.found) turn.found(*schedule, standing.value);
            standing.schedule = std::move(schedule);
        }
    }
    return std::max<std::uint64_t>(1, builder_->work() - before);
}

} // namespace piewright::schedule
