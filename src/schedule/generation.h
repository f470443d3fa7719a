// Schedules of a project built from lists, as fast as can be.
#pragma once

#include "schedule/project.h"

#include <cstdint>
#include <span>
#include <vector>

namespace piewright::schedule {

using Item = std::uint32_t;     ///< an activity in a list
using List = std::vector<Item>; ///< every activity once, none before one that it comes after

/// Builds into tables that it keeps from one schedule to the next. Not shared between threads.
class Generator {
  public:
    /// `project` must outlive it.
    explicit Generator(const Project& project);

    /// Serial schedule generation (Kelley 1963; Kolisch 1996, EJOR 90): each activity of the list in turn as early as
    /// lags, resources and people allow, `floor` at the earliest, in the ways of `plan` and by its people, as far
    /// as they are free. Where greatest lags or windows
    /// leave no room, what holds the activity back is taken out again and may start only later ("unscheduling", Franck,
    /// Neumann, Schwindt 2001, OR Spektrum 23; "bulldozing", Smith, Pyle 2004, AAAI). False: given up. All ends are at
    /// `limit` or before. O(n) placements and, with greatest lags, O(n^2) for each.
    bool serial(std::span<const Item> list, Tick floor, Tick limit, Plan& plan);

    /// Parallel schedule generation (Kolisch 1996): time goes on, and whatever is ready and fits starts, smallest key
    /// first. Acyclic projects only.
    bool parallel(std::span<const double> keys, Plan& plan);

    /// The list by ascending keys, put right where a key speaks against an arc. O(n + the range of keys).
    void listBy(std::span<const Tick> keys, List& list);

    /// After a failed serial(): the activity that found no place.
    [[nodiscard]] std::size_t culprit() const { return culprit_; }
    /// Steps of about a microsecond since the beginning.
    [[nodiscard]] std::uint64_t steps() const { return effort_ / kEffortOfStep; }

  private:
    Tick fit(Tick from, Tick last, const Project::Way& way, People& crew);
    void occupy(Tick start, const Project::Way& way, People crew);
    void vacate(Tick start, const Project::Way& way, People crew);
    void clear();
    bool acyclic(std::span<const Item> list, Tick floor, Tick limit, Plan& plan);
    bool bulldoze(std::span<const Item> list, Tick floor, Tick limit, Plan& plan);
    void narrow(std::size_t activity, Tick start);

    const Project& project_;
    std::vector<std::vector<std::uint64_t>> room_;
    std::vector<People> busy_;
    Tick touchedFrom_ = kNever, touchedTo_ = 0;
    static constexpr std::uint64_t kEffortOfStep = 1024;
    std::uint64_t effort_ = 0; ///< ticks and lags looked at, about
    std::size_t culprit_ = 0;
    // Of bulldoze.
    std::vector<Tick> soonest_, latest_;    ///< besides what is placed
    std::vector<Tick> earliest_, furthest_; ///< with what is placed
    std::vector<char> isPlaced_;
    std::vector<std::size_t> position_;
    std::vector<Item> byRank_;
    std::vector<Tick> keys_;
    std::vector<Item> bucket_;
};

} // namespace piewright::schedule
