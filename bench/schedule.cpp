// How good are the schedules, and how soon? Runs the engine on instance files and prints one JSON line for each.
#include "instances/read.h"
#include "schedule/check.h"
#include "schedule/improver.h"
#include "schedule/neighbourhoods.h"
#include "schedule/prover.h"
#include "schedule/refuter.h"
#include "schedule/solve.h"

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include <atomic>
#include <chrono>
#include <condition_variable>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <mutex>
#include <thread>

namespace {

using namespace piewright;

struct Settings {
    double seconds = 10.0;
    int threads = 1;
    std::uint64_t seed = 1;
    std::uint64_t work = std::numeric_limits<std::uint64_t>::max();
    std::string lean = "both";
    bool noOrders = false;
    bool noEdges = false;
    bool cpu = false;
};

double cpuSeconds() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

/// Sets `flag` when the time is up, unless it is let go before.
class Alarm {
  public:
    Alarm(std::atomic<bool>& flag, double seconds, bool isCpu)
        : thread_([this, &flag, seconds, isCpu] {
              const double start = cpuSeconds();
              const auto end = std::chrono::steady_clock::now() + std::chrono::duration<double>(seconds);
              std::unique_lock lock(mutex_);
              while (isCpu ? cpuSeconds() - start < seconds : std::chrono::steady_clock::now() < end) {
                  if (gone_.wait_for(lock, std::chrono::milliseconds(5), [this] { return isGone_; })) return;
              }
              flag = true;
          }) {}
    ~Alarm() {
        {
            const std::lock_guard lock(mutex_);
            isGone_ = true;
        }
        gone_.notify_all();
        thread_.join();
    }
    Alarm(const Alarm&) = delete;
    Alarm& operator=(const Alarm&) = delete;
    Alarm(Alarm&&) = delete;
    Alarm& operator=(Alarm&&) = delete;

  private:
    std::mutex mutex_;
    std::condition_variable gone_;
    bool isGone_ = false;
    std::thread thread_;
};

struct Found {
    std::optional<schedule::Tick> value, bound;
    std::string status;
    std::uint64_t work = 0;
    std::uint64_t conflicts = 0;
    std::vector<std::pair<double, schedule::Tick>> trace;
};

/// The one place that knows how the engine is run.
Found runMembers(const schedule::Problem& problem, const Settings& settings, const std::atomic<bool>& cancelled,
                 const std::function<double()>& elapsed) {
    Found found;
    schedule::Standing standing;
    schedule::Turn turn;
    turn.cancelled = &cancelled;
    turn.found = [&](const schedule::Schedule& schedule, schedule::Cost value) {
        const auto violations = schedule::check(problem, schedule);
        if (!violations.empty()) {
            std::fprintf(stderr, "broken schedule: %s\n", violations.front().what.c_str());
            std::abort();
        }
        found.value = static_cast<schedule::Tick>(value);
        found.trace.emplace_back(elapsed(), *found.value);
    };
    std::vector<std::unique_ptr<schedule::Member>> members;
    if (settings.lean == "all") members.push_back(std::make_unique<schedule::Improver>(problem));
    members.push_back(std::make_unique<schedule::Neighbourhoods>(problem, settings.seed));
    if (settings.lean == "all") members.push_back(std::make_unique<schedule::Refuter>(problem));
    const schedule::Answer first = schedule::solve(problem, {settings.seed, 20'000});
    if (first.schedule) {
        standing.schedule = first.schedule;
        standing.value = schedule::latestEnd(*first.schedule);
        turn.found(*first.schedule, standing.value);
    }
    turn.work = 100'000;
    while (!standing.isSettled() && !cancelled && found.work < settings.work) {
        std::uint64_t steps = 0;
        for (const auto& member : members) {
            if (!standing.isSettled() && !cancelled) steps += member->run(turn, standing);
        }
        if (steps == 0) break;
        found.work += steps;
        turn.work += turn.work / 8;
    }
    found.status = standing.isHopeless    ? "Infeasible"
                   : standing.isSettled() ? "Proven"
                   : found.value          ? "Feasible"
                                          : "OutOfTime";
    if (standing.bound > 0) found.bound = static_cast<schedule::Tick>(standing.bound);
    return found;
}

Found run(const schedule::Problem& problem, const Settings& settings, const std::atomic<bool>& cancelled,
          const std::function<double()>& elapsed) {
    if (settings.lean == "near" || settings.lean == "all") return runMembers(problem, settings, cancelled, elapsed);
    Found found;
    const auto keep = [&](const schedule::Schedule& schedule, schedule::Tick latest) {
        const auto violations = schedule::check(problem, schedule);
        if (!violations.empty()) {
            std::fprintf(stderr, "broken schedule: %s\n", violations.front().what.c_str());
            std::abort();
        }
        found.value = latest;
        found.trace.emplace_back(elapsed(), latest);
    };
    schedule::ProverOptions options;
    options.orderLiterals = !settings.noOrders;
    options.edgeFinding = !settings.noEdges;
    schedule::Prover prover(problem, options);
    if (!prover.isHopeless()) {
        const schedule::Answer first = schedule::solve(problem, {settings.seed, 20'000});
        if (first.schedule) {
            prover.hint(*first.schedule, true);
            keep(*first.schedule, schedule::latestEnd(*first.schedule));
        }
    }
    schedule::ProverLimits limits;
    limits.cancelled = &cancelled;
    schedule::Verdict verdict = schedule::Verdict::Unknown;
    if (settings.lean == "up") {
        limits.work = settings.work;
        verdict = prover.refute(limits, keep);
    } else if (settings.lean == "down") {
        limits.work = settings.work;
        verdict = prover.improve(limits, keep);
    } else {
        // Turns of work, from above and from below.
        std::uint64_t turn = 2'000'000;
        for (int i = 0; verdict == schedule::Verdict::Unknown && !cancelled && prover.work() < settings.work; ++i) {
            limits.work = std::min(turn, settings.work - prover.work());
            verdict = i % 3 == 2 ? prover.refute(limits, keep) : prover.improve(limits, keep);
            if (i % 3 == 2) turn += turn / 2;
        }
    }
    found.status = verdict == schedule::Verdict::Satisfied ? "Proven"
                   : verdict == schedule::Verdict::Refuted ? "Infeasible"
                   : found.value                           ? "Feasible"
                                                           : "OutOfTime";
    if (!prover.isHopeless()) found.bound = prover.bound();
    found.work = prover.work();
    found.conflicts = prover.conflicts();
    return found;
}

} // namespace

int main(int argc, char** argv) {
    CLI::App app{"Runs the scheduling engine on instance files."};
    Settings settings;
    std::vector<std::string> files;
    app.add_option("FILE", files, "instances: .sm, .sch, .dzn or flexible job shop, told by their content")->required();
    app.add_option("--seconds", settings.seconds, "for each instance, by the clock");
    app.add_flag("--cpu", settings.cpu,
                 "seconds of the processor, not of the clock: for a machine that others use too");
    app.add_option("--threads", settings.threads, "at present one is used");
    app.add_option("--seed", settings.seed, "of the first schedule");
    app.add_option("--work", settings.work, "most steps for each instance; the same answer every time");
    app.add_option("--lean", settings.lean, "down, up or both")
        ->check(CLI::IsMember({"down", "up", "both", "near", "all"}));
    app.add_flag("--no-orders", settings.noOrders, "without order literals");
    app.add_flag("--no-edges", settings.noEdges, "without edge finding");
    CLI11_PARSE(app, argc, argv);
    bool isRead = true;
    for (const std::string& file : files) {
        const double start = cpuSeconds();
        const auto instance = bench::readInstance(file);
        if (!instance.ok()) {
            std::fprintf(stderr, "%s\n", toText(instance.problems().findings).c_str());
            isRead = false;
            continue;
        }
        std::atomic<bool> cancelled{false};
        const Alarm alarm(cancelled, settings.seconds, settings.cpu);
        const Found found = run(instance->problem, settings, cancelled, [&] { return cpuSeconds() - start; });
        nlohmann::ordered_json line;
        line["instance"] = file;
        line["status"] = found.status;
        line["value"] = found.value ? nlohmann::ordered_json(*found.value) : nlohmann::ordered_json();
        line["bound"] = found.bound ? nlohmann::ordered_json(*found.bound) : nlohmann::ordered_json();
        line["first_s"] =
            found.trace.empty() ? nlohmann::ordered_json() : nlohmann::ordered_json(found.trace.front().first);
        line["total_s"] = cpuSeconds() - start;
        line["work"] = found.work;
        line["conflicts"] = found.conflicts;
        line["trace"] = found.trace;
        std::printf("%s\n", line.dump().c_str());
        std::fflush(stdout);
    }
    return isRead ? 0 : 2;
}
