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

    void resource(int r) {
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
            mode.uses.push_back({nth<ResourceIndex>(r), resource.machine ? 1 : draw(0, resource.cumulative->capacity),
                                 nth<FamilyIndex>(static_cast<std::size_t>(draw(0, 1)))});
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

    Size size_;
    std::mt19937_64 random_;
    Statement s_;
};

} // namespace

Problem randomProblem(std::uint64_t seed, const Size& size) { return Maker{seed, size}.make(); }

} // namespace piewright::schedule
