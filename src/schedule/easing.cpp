#include "schedule/easing.h"

#include <algorithm>
#include <utility>

namespace piewright::schedule {

namespace {

using Kind = NamedLimit::Kind;

Tick later(Tick t, Tick step) { return static_cast<Tick>(std::min<std::int64_t>(std::int64_t{t} + step, kNever)); }
Tick earlier(Tick t, Tick step) { return static_cast<Tick>(std::max<std::int64_t>(std::int64_t{t} - step, -kNever)); }

/// Each span longer by a step at both ends; those that meet become one.
void widen(std::vector<Span>& spans, Tick step) {
    std::vector<Span> wide;
    for (const Span& span : spans) {
        const Span one{earlier(span.from, step), later(span.to, step)};
        if (!wide.empty() && one.from <= wide.back().to) {
            wide.back().to = std::max(wide.back().to, one.to);
        } else {
            wide.push_back(one);
        }
    }
    spans = std::move(wide);
}

bool shrink(Span& span, Tick step) {
    span = {later(span.from, step), earlier(span.to, step)};
    return span.from < span.to;
}

/// Another machine like `r`, and for every mode on `r` one on the other.
void addTwin(Problem& problem, std::size_t r) {
    const auto twin = static_cast<ResourceIndex>(problem.resources.size());
    problem.resources.push_back(problem.resources[r]);
    for (std::size_t c = problem.costs.extents.size(); c-- > 0;) {
        if (problem.costs.extents[c].resource != static_cast<ResourceIndex>(r)) continue;
        problem.costs.extents.push_back(problem.costs.extents[c]);
        problem.costs.extents.back().resource = twin;
    }
    for (Activity& activity : problem.activities) {
        const std::size_t modes = activity.modes.size();
        for (std::size_t m = 0; m < modes; ++m) {
            const auto isHere = [&](const Use& use) { return at(use.resource) == r; };
            Mode mode = activity.modes[m];
            const auto use = std::find_if(mode.uses.begin(), mode.uses.end(), isHere);
            if (use == mode.uses.end()) continue;
            use->resource = twin;
            activity.modes.push_back(std::move(mode));
        }
    }
}

void shorten(Machine& machine, Tick step) {
    // A way by a third family is shortened twice; where it has become the shorter one it is the setup, or the triangle
    // would not hold.
    const auto less = [step](Tick& setup) { setup = std::max<Tick>(0, setup - step); };
    for (Tick& setup : machine.first) less(setup);
    for (std::vector<Tick>& row : machine.setup)
        for (Tick& setup : row) less(setup);
    const std::size_t n = machine.setup.size();
    for (std::size_t k = 0; k < n; ++k) {
        for (std::size_t i = 0; i < n; ++i) {
            for (std::size_t j = 0; j < n; ++j)
                machine.setup[i][j] = std::min(machine.setup[i][j], machine.setup[i][k] + machine.setup[k][j]);
            if (i < machine.first.size())
                machine.first[i] = std::min(machine.first[i], machine.first[k] + machine.setup[k][i]);
        }
    }
}

/// False where this limit cannot be eased by a little.
bool ease(Problem& problem, Kind kind, std::size_t i, Tick step) {
    switch (kind) {
    case Kind::Lag:
        problem.lags[i].least = earlier(problem.lags[i].least, step);
        return true;
    case Kind::Release:
        problem.activities[i].release = std::max<Tick>(0, problem.activities[i].release - step);
        return true;
    case Kind::Due:
        problem.activities[i].due = later(problem.activities[i].due, step);
        return true;
    case Kind::Horizon:
        problem.horizon = static_cast<Tick>(std::min<std::int64_t>(std::int64_t{problem.horizon} + step, kNever / 2));
        return true;
    case Kind::Presence:
        widen(problem.workers[i].present, step);
        return true;
    case Kind::Reserved:
        std::erase_if(problem.resources[i].cumulative->reserved,
                      [&](Cumulative::Reserved& one) { return !shrink(one.span, step); });
        return true;
    case Kind::Away:
        std::erase_if(problem.resources[i].machine->away, [&](Span& span) { return !shrink(span, step); });
        return true;
    case Kind::Setup:
        shorten(*problem.resources[i].machine, step);
        return true;
    case Kind::Capacity:
        if (problem.resources[i].cumulative) {
            ++problem.resources[i].cumulative->capacity;
        } else if (problem.resources[i].machine) {
            addTwin(problem, i);
        } else {
            return false;
        }
        return true;
    case Kind::Skill: {
        Worker more;
        more.skills = {static_cast<SkillIndex>(i)};
        more.present = {{-kNever, kNever}};
        problem.workers.push_back(std::move(more));
        return true;
    }
    default:
        return false;
    }
}

} // namespace

std::optional<Problem> eased(const Problem& problem, const NamedLimit& limit, Tick step) {
    Problem rest = problem;
    for (const std::size_t which : limit.which) {
        if (!ease(rest, limit.kind, which, step)) return std::nullopt;
    }
    return rest;
}

} // namespace piewright::schedule
