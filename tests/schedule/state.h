// Short ways to state a problem in a test.
#pragma once

#include "schedule/problem.h"

#include <string>
#include <utility>
#include <vector>

namespace piewright::schedule {

template <class Index> Index nth(std::size_t i) { return static_cast<Index>(i); }

/// A problem being written down; each call returns the index of what it added.
struct Statement {
    Problem problem;

    ActivityIndex activity(std::string name, std::vector<Mode> modes) {
        Activity activity;
        activity.name = std::move(name);
        activity.modes = std::move(modes);
        problem.activities.push_back(std::move(activity));
        return nth<ActivityIndex>(problem.activities.size() - 1);
    }
    ActivityIndex activity(std::string name, Mode mode) {
        return activity(std::move(name), std::vector<Mode>{std::move(mode)});
    }
    ActivityIndex activity(std::string name, Tick duration) {
        Mode mode;
        mode.duration = duration;
        return activity(std::move(name), std::move(mode));
    }
    Activity& operator[](ActivityIndex index) { return problem.activities[at(index)]; }

    ResourceIndex cumulative(std::string name, int capacity, std::vector<Cumulative::Reserved> reserved = {}) {
        problem.resources.push_back({std::move(name), Cumulative{capacity, std::move(reserved)}, {}});
        return nth<ResourceIndex>(problem.resources.size() - 1);
    }
    ResourceIndex machine(std::string name, Machine machine = {}) {
        problem.resources.push_back({std::move(name), {}, std::move(machine)});
        return nth<ResourceIndex>(problem.resources.size() - 1);
    }
    ResourceIndex reservoir(std::string name, Reservoir reservoir) {
        problem.resources.push_back({std::move(name), {}, {}, reservoir});
        return nth<ResourceIndex>(problem.resources.size() - 1);
    }
    SkillIndex skill(std::string name) {
        problem.skills.push_back(std::move(name));
        return nth<SkillIndex>(problem.skills.size() - 1);
    }
    FamilyIndex family(std::string name) {
        problem.families.push_back(std::move(name));
        return nth<FamilyIndex>(problem.families.size() - 1);
    }
    WorkerIndex worker(std::string name, std::vector<SkillIndex> skills, std::vector<Span> present) {
        problem.workers.push_back({std::move(name), std::move(skills), std::move(present)});
        return nth<WorkerIndex>(problem.workers.size() - 1);
    }

    /// `to` starts at least `least` after `from` ends.
    void after(ActivityIndex from, ActivityIndex to, Tick least, std::string reason = {}) {
        problem.lags.push_back({from, Point::End, to, Point::Start, least, std::move(reason)});
    }
    /// `to` starts at most `most` after `from` ends.
    void within(ActivityIndex from, ActivityIndex to, Tick most, std::string reason = {}) {
        problem.lags.push_back({to, Point::Start, from, Point::End, -most, std::move(reason)});
    }
    /// `to` starts the moment `from` ends.
    void atOnce(ActivityIndex from, ActivityIndex to, const std::string& reason = {}) {
        after(from, to, 0, reason);
        within(from, to, 0, reason);
    }
};

} // namespace piewright::schedule
