// A problem made ready for the search: what never changes while it runs.
#pragma once

#include "schedule/network.h"
#include "schedule/problem.h"

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

struct Model {
    explicit Model(const Problem& stated);

    const Problem& problem;
    std::vector<std::vector<int>> modes; ///< by activity: those that can be staffed and timed at all
    std::vector<Length> lengths;         ///< by activity, over these modes
    Network network;
    std::vector<std::vector<WorkerIndex>> skilled; ///< by skill
    std::vector<int> versatility;                  ///< by worker: skills that some activity asks for
    std::vector<std::vector<std::size_t>> linked;  ///< by activity: those it shares a lag with
    std::vector<Unit> units;
    std::vector<std::size_t> unitOf; ///< by activity
    /// No schedule at all: an activity without people, or rules on time that contradict each other. The units are then
    /// not there.
    bool hopeless = false;
    /// When the rules on time contradict each other whatever the modes: their reasons, in order.
    std::optional<std::vector<std::string>> loop;

  private:
    void keepStaffedModes();
    void measure(std::size_t activity);
    void keepTimelyModes();
    void findUnits();
};

} // namespace piewright::schedule
