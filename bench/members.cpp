// Single searches of the engine, or several taking turns, on instance files; one JSON line for each. For whoever works
// on a search: bench-schedule says how good they are together.
#include "instances/read.h"
#include "schedule/check.h"
#include "schedule/improver.h"
#include "schedule/lists.h"
#include "schedule/neighbourhoods.h"
#include "schedule/refuter.h"
#include "schedule/solve.h"

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include <atomic>
#include <cstdio>
#include <cstdlib>
#include <ctime>

namespace {

using namespace piewright;
using schedule::Member;

double cpuSeconds() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

std::unique_ptr<Member> memberOf(const std::string& name, const schedule::Problem& problem, std::uint64_t seed) {
    if (name == "lists") return schedule::listSearch(problem, seed);
    if (name == "near") return std::make_unique<schedule::Neighbourhoods>(problem, seed);
    if (name == "down") return std::make_unique<schedule::Improver>(problem);
    return std::make_unique<schedule::Refuter>(problem);
}

} // namespace

int main(int argc, char** argv) {
    CLI::App app{"Runs single searches on instance files, by turns."};
    std::vector<std::string> files;
    std::vector<std::string> names{"down", "near", "up"};
    double seconds = 10.0;
    double first = 0.0;
    std::uint64_t seed = 1;
    std::uint64_t steps = 50'000;
    app.add_option("FILE", files, "instances")->required();
    app.add_option("--members", names, "lists, down, near, up")
        ->delimiter(',')
        ->check(CLI::IsMember({"lists", "down", "near", "up"}));
    app.add_option("--seconds", seconds, "of the processor, for each instance");
    app.add_option("--lists", first, "seconds of lists before all others");
    app.add_option("--seed", seed, "of what is random");
    app.add_option("--turn", steps, "steps of the first turn; later ones are longer");
    CLI11_PARSE(app, argc, argv);
    for (const std::string& file : files) {
        const auto instance = bench::readInstance(file);
        if (!instance.ok()) {
            std::fprintf(stderr, "%s\n", toText(instance.problems().findings).c_str());
            return 2;
        }
        schedule::Problem problem = instance->problem;
        problem.costs = schedule::makespan();
        const double start = cpuSeconds();
        const auto elapsed = [&] { return cpuSeconds() - start; };
        schedule::Standing standing;
        std::vector<std::pair<double, schedule::Cost>> trace;
        schedule::Turn turn;
        turn.found = [&](const schedule::Schedule& schedule, schedule::Cost value) {
            trace.emplace_back(elapsed(), value);
            for (const schedule::Violation& violation : schedule::check(problem, schedule)) {
                std::fprintf(stderr, "broken schedule: %s\n", violation.what.c_str());
                std::abort();
            }
        };
        std::uint64_t done = 0;
        if (const auto lists = first > 0.0 ? schedule::listSearch(problem, seed) : nullptr) {
            turn.work = 10'000;
            while (elapsed() < first) {
                const std::uint64_t taken = lists->run(turn, standing);
                if (taken == 0) break;
                done += taken;
            }
        }
        std::vector<std::unique_ptr<Member>> members;
        for (const std::string& name : names) {
            if (auto member = memberOf(name, problem, seed)) members.push_back(std::move(member));
        }
        std::vector<std::pair<double, std::uint64_t>> spent(members.size());
        bool isOver = members.empty();
        for (turn.work = steps; !isOver && !standing.isSettled() && elapsed() < seconds; turn.work += turn.work / 8) {
            isOver = true;
            for (std::size_t m = 0; m < members.size() && !standing.isSettled() && elapsed() < seconds; ++m) {
                const double before = elapsed();
                turn.work = std::min<std::uint64_t>(turn.work, 500'000);
                const std::uint64_t taken = members[m]->run(turn, standing);
                spent[m].first += elapsed() - before;
                spent[m].second += taken;
                done += taken;
                isOver = isOver && taken == 0;
            }
        }
        nlohmann::ordered_json line;
        line["instance"] = file;
        line["status"] = standing.isHopeless    ? "Infeasible"
                         : standing.isSettled() ? "Proven"
                         : standing.schedule    ? "Feasible"
                                                : "OutOfTime";
        line["value"] = standing.schedule ? nlohmann::ordered_json(standing.value) : nlohmann::ordered_json();
        line["bound"] = standing.bound >= 0 ? nlohmann::ordered_json(standing.bound) : nlohmann::ordered_json();
        line["first_s"] = trace.empty() ? nlohmann::ordered_json() : nlohmann::ordered_json(trace.front().first);
        line["total_s"] = elapsed();
        line["work"] = done;
        line["conflicts"] = 0;
        line["spent"] = spent;
        line["trace"] = trace;
        std::printf("%s\n", line.dump().c_str());
        std::fflush(stdout);
    }
    return 0;
}
