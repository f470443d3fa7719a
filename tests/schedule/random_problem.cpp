#include "schedule/random_problem.h"

#include "schedule/state.h"

#include <algorithm>
#include <random>

namespace piewright::schedule {

namespace {

class Maker {
  public:
    Maker(std::uint64_t seed, const Size& size) : size_(size), random_(seed) {}

    Problem make() {
        s_.problem.horizon = size_.horizon;
        for (const char* name : {"paste", "oven", "kettle"}) {
            s_.skill(name);
        }
        for (const char* name : {"hot", "mild"}) {
            s_.family(name);
        }
        for (int r = 0; r < size_.resources; ++r) {
            resource(r);
        }
        for (int w = 0; w < size_.workers; ++w) {
            worker(w);
        }
        for (int a = 0; a < size_.activities; ++a) {
            activity(a);
        }
        for (int l = 0; l < size_.lags && size_.activities > 1; ++l) {
            lag(l);
        }
        pairs();
        costs();
        return s_.problem;
    }

  private:
    int draw(int from, int to) {
        return from + static_cast<int>(random_() % static_cast<std::uint64_t>(to - from + 1));
    }
    bool chance(int percent) { return draw(1, 100) <= percent; }
    bool strict(int percent) { return chance(percent * size_.strictness / 100); }
    std::string numbered(const char* word, int i) { return word + (" " + std::to_string(i)); }

    Span span() {
        const Tick from = draw(0, size_.horizon - 1);
        return {from, draw(from + 1, size_.horizon)};
    }

    [[nodiscard]] bool has(Feature feature) const { return (size_.features & feature) != 0; }
    bool has(Feature feature, int percent) { return has(feature) && chance(percent); }

    void resource(int r) {
        if (has(kReservoirs, 35)) {
            const int initial = draw(0, 3);
            s_.reservoir(numbered("stock", r), {initial, draw(0, initial), initial + draw(0, 4)});
            return;
        }
        if (chance(50)) {
            Cumulative cumulative{draw(1, 4), {}};
            while (strict(25)) {
                cumulative.reserved.push_back({span(), draw(0, 3)});
            }
            s_.cumulative(numbered("shelf", r), cumulative.capacity, cumulative.reserved);
            return;
        }
        Machine machine;
        if (chance(70)) {
            const Tick longest = size_.longest;
            machine.first = {draw(0, longest / 2), draw(0, longest / 2)};
            machine.setup = {{chance(20) ? 1 : 0, draw(0, longest)}, {draw(0, longest), chance(20) ? 1 : 0}};
            // Two families: only these can break the triangle inequality.
            machine.first[1] = std::min(machine.first[1], machine.first[0] + machine.setup[0][1]);
            machine.first[0] = std::min(machine.first[0], machine.first[1] + machine.setup[1][0]);
            for (const int f : {0, 1}) {
                Tick& same = machine.setup[static_cast<std::size_t>(f)][static_cast<std::size_t>(f)];
                same = std::min(same, machine.setup[0][1] + machine.setup[1][0]);
            }
        }
        while (strict(20)) {
            machine.away.push_back(span());
        }
        if (has(kLoads, 60)) {
            machine.together = draw(2, 4);
        }
        if (has(kSetupCosts, 60)) {
            machine.firstCost = {draw(0, 3), draw(0, 3)};
            machine.setupCost = {{draw(0, 2), draw(0, 9)}, {draw(0, 9), draw(0, 2)}};
        }
        s_.machine(numbered("machine", r), machine);
    }

    void worker(int w) {
        std::vector<SkillIndex> skills;
        for (std::size_t i = 0; i < s_.problem.skills.size(); ++i) {
            if (chance(50)) {
                skills.push_back(nth<SkillIndex>(i));
            }
        }
        std::vector<Span> present{{0, size_.horizon}};
        if (strict(40)) {
            const Tick from = draw(0, size_.horizon / 2);
            const Tick leave = draw(from + 1, size_.horizon);
            present = {{from, leave}};
            if (leave + 2 < size_.horizon && chance(50)) {
                present.push_back({leave + 2, size_.horizon});
            }
        }
        s_.worker(numbered("worker", w), std::move(skills), std::move(present));
    }

    Mode mode() {
        Mode mode;
        mode.duration = chance(10) ? 0 : draw(1, size_.longest);
        for (std::size_t r = 0; r < s_.problem.resources.size(); ++r) {
            if (!chance(150 / size_.resources)) {
                continue;
            }
            const Resource& resource = s_.problem.resources[r];
            if (resource.reservoir) {
                flows(mode, r);
                continue;
            }
            if (resource.machine && !resource.machine->firstCost.empty() && mode.duration == 0) {
                continue;
            }
            const int amount = !resource.machine                ? draw(0, resource.cumulative->capacity)
                               : resource.machine->together > 1 ? draw(0, resource.machine->together)
                                                                : 1;
            mode.uses.push_back(
                {nth<ResourceIndex>(r), amount, nth<FamilyIndex>(static_cast<std::size_t>(draw(0, 1)))});
        }
        if (mode.duration > 0 && has(kPauses, 35)) {
            pauses(mode);
        }
        if (has(kModeCosts, 60)) {
            mode.cost = draw(-2, 8);
        }
        if (!s_.problem.workers.empty()) {
            for (std::size_t skill = 0; skill < s_.problem.skills.size(); ++skill) {
                if (chance(20)) {
                    mode.needs.push_back({nth<SkillIndex>(skill), strict(25) ? 2 : 1});
                }
            }
            if (strict(15)) {
                mode.team.push_back(nth<WorkerIndex>(
                    static_cast<std::size_t>(draw(0, static_cast<int>(s_.problem.workers.size()) - 1))));
            }
        }
        return mode;
    }

    void flows(Mode& mode, std::size_t r) {
        for (const Point point : {Point::Start, Point::End}) {
            if (chance(50)) {
                mode.flows.push_back({nth<ResourceIndex>(r), point, draw(-2, 2)});
            }
        }
    }

    void pauses(Mode& mode) {
        Tick from = draw(0, size_.horizon / 2);
        mode.pauses.push_back({from, from + draw(1, 3)});
        if (chance(50)) {
            from = mode.pauses.back().to + draw(1, 3);
            mode.pauses.push_back({from, from + draw(1, 3)});
        }
    }

    void activity(int a) {
        std::vector<Mode> modes{mode()};
        while (modes.size() < 3 && chance(25)) {
            modes.push_back(mode());
        }
        const ActivityIndex index = s_.activity(numbered("activity", a), std::move(modes));
        if (strict(20)) {
            s_[index].release = draw(0, size_.horizon / 2);
            s_[index].releaseReason = numbered("release", a);
        }
        if (strict(20)) {
            s_[index].due = draw(size_.horizon / 2, size_.horizon);
            s_[index].dueReason = numbered("due", a);
        }
        if (has(kOptional, 40)) {
            s_[index].isOptional = true;
            if (has(kModeCosts, 80)) {
                s_[index].absentCost = draw(-2, 12);
            }
        }
    }

    void lag(int l) {
        const int first = draw(0, size_.activities - 1);
        const int second = draw(0, size_.activities - 1);
        const auto from = nth<ActivityIndex>(static_cast<std::size_t>(std::min(first, second)));
        const auto to = nth<ActivityIndex>(static_cast<std::size_t>(std::max(first, second)));
        if (first == second) {
            return;
        }
        if (chance(25)) {
            s_.atOnce(from, to, numbered("at once", l));
            return;
        }
        const Point fromPoint = chance(70) ? Point::End : Point::Start;
        const Point toPoint = chance(70) ? Point::Start : Point::End;
        const Tick least = draw(-1, size_.longest / 2);
        s_.problem.lags.push_back({from, fromPoint, to, toPoint, least, numbered("least", l)});
        if (chance(50)) {
            s_.problem.lags.push_back(
                {to, toPoint, from, fromPoint, -(least + draw(0, size_.longest)), numbered("most", l)});
        }
    }

    ActivityIndex anActivity() { return nth<ActivityIndex>(static_cast<std::size_t>(draw(0, size_.activities - 1))); }
    ResourceIndex aResource() { return nth<ResourceIndex>(static_cast<std::size_t>(draw(0, size_.resources - 1))); }
    WorkerIndex aWorker() { return nth<WorkerIndex>(static_cast<std::size_t>(draw(0, size_.workers - 1))); }
    Point aPoint() { return chance(50) ? Point::Start : Point::End; }

    void pairs() {
        for (int i = 0; i < 2; ++i) {
            if (has(kStays, 40) && size_.workers > 0) {
                s_.problem.stays.push_back({anActivity(), anActivity(), numbered("stay", i)});
            }
            if (has(kImplications, 50)) {
                s_.problem.implications.push_back({anActivity(), anActivity(), numbered("implication", i)});
            }
        }
    }

    Curve curve() {
        Curve curve;
        Tick from = draw(-1, size_.horizon / 2);
        do {
            curve.pieces.push_back({from, draw(-4, 10), draw(-2, 3)});
            from += draw(1, size_.horizon / 2 + 1);
        } while (chance(55));
        return curve;
    }

    void costs() {
        Costs& costs = s_.problem.costs;
        for (int i = 0; i < 2; ++i) {
            if (has(kTimeCosts, 60)) {
                costs.times.push_back({anActivity(), aPoint(), curve()});
            }
            if (has(kExtentCosts, 50)) {
                extent();
            }
            if (has(kLoadCosts, 50)) {
                loadCost();
            }
            if (has(kPeopleCosts, 60) && size_.workers > 0) {
                costs.work.push_back({aWorker(), curve()});
            }
            if (has(kPeopleCosts, 60) && size_.workers > 0) {
                costs.handOvers.push_back({anActivity(), anActivity(), draw(0, 6)});
            }
            if (has(kDistanceCosts, 60)) {
                distance();
            }
        }
    }

    void extent() {
        ExtentCost cost;
        cost.of = static_cast<ExtentCost::Of>(draw(0, 2));
        if (size_.workers > 0 && chance(30)) {
            cost.worker = aWorker();
        } else if (size_.resources > 0 && chance(40)) {
            cost.resource = aResource();
        }
        cost.curve = curve();
        s_.problem.costs.extents.push_back(std::move(cost));
    }

    void loadCost() {
        if (size_.resources == 0) {
            return;
        }
        const ResourceIndex resource = aResource();
        const std::optional<Cumulative>& cumulative = s_.problem.resources[at(resource)].cumulative;
        if (cumulative) {
            s_.problem.costs.loads.push_back({resource, span(), draw(0, cumulative->capacity / 2), draw(0, 3)});
        }
    }

    void distance() {
        Before before;
        before.activity = anActivity();
        const int modes = static_cast<int>(s_[before.activity].modes.size());
        before.mode = draw(s_[before.activity].isOptional ? kAbsent : 0, modes - 1);
        before.start = draw(0, size_.horizon);
        if (size_.workers > 0 && chance(60)) {
            before.workers.push_back(aWorker());
        }
        before.perTick = draw(0, 3);
        before.otherMode = draw(0, 6);
        before.perPerson = draw(0, 5);
        s_.problem.costs.before.push_back(std::move(before));
    }

    Size size_;
    std::mt19937_64 random_;
    Statement s_;
};

} // namespace

Problem randomProblem(std::uint64_t seed, const Size& size) { return Maker{seed, size}.make(); }

} // namespace piewright::schedule
