// A problem made ready for the search: what never changes while it runs.
#pragma once

#include "schedule/network.h"
#include "schedule/presence.h"
#include "schedule/problem.h"
#include "schedule/stretch.h"

#include <optional>
#include <string>
#include <vector>

namespace piewright::schedule {

/// Activities whose starts lie at fixed distances from each other (lags of the same length both ways): they are placed
/// and moved as one.
struct Unit {
    std::vector<std::size_t> members; ///< in order of offset
    std::vector<Tick> offsets;        ///< start of the member - start of the unit
};

/// Units that are all done or all left out: an optional activity and all that it implies and is implied by, or one unit
/// that is required.
struct Group {
    std::vector<std::size_t> units;
    bool isRequired = true;
    std::vector<std::size_t> implied;   ///< other optional groups done wherever this one is
    std::vector<std::size_t> impliedBy; ///< and the other way round
};

struct Model {
    explicit Model(const Problem& stated);
    Model(const Model&) = delete;
    Model& operator=(const Model&) = delete;
    Model(Model&&) = delete;
    Model& operator=(Model&&) = delete;
    ~Model() = default;

    const Problem& problem;
    Presence presence;
    std::vector<std::vector<int>> modes; ///< by activity: those that can be staffed and timed at all
    std::vector<Length> lengths;         ///< by activity, over these modes: least and most from start to end
    Network network;
    std::vector<std::vector<WorkerIndex>> skilled; ///< by skill
    std::vector<int> versatility;                  ///< by worker: skills that some activity asks for
    std::vector<std::vector<std::size_t>> linked;  ///< by activity: those it shares a lag, a stay or a hand-over with
    std::vector<std::vector<std::size_t>> staysAmong; ///< by activity: its people are among those of these
    std::vector<std::vector<std::size_t>> staysWith;  ///< by activity: its people include those of these
    std::vector<Unit> units;
    std::vector<std::size_t> unitOf; ///< by activity
    std::vector<Group> groups;
    std::vector<std::size_t> groupOf; ///< by unit
    /// No schedule at all: an activity without people, or rules on time that contradict each other. The units are then
    /// not there.
    bool hopeless = false;
    /// When the rules on time contradict each other whatever the modes: their reasons, in order.
    std::optional<std::vector<std::string>> loop;

    [[nodiscard]] const Mode& mode(std::size_t activity, int mode) const {
        return problem.activities[activity].modes[static_cast<std::size_t>(mode)];
    }
    /// An optional activity for which there is no way at all.
    [[nodiscard]] bool isNever(std::size_t activity) const { return modes[activity].empty(); }

  private:
    void keepStaffedModes();
    void measure(std::size_t activity);
    void keepTimelyModes();
    void findUnits();
    void findGroups();
};

} // namespace piewright::schedule
