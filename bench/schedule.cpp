// How good are the schedules, and how soon? Runs the engine on instance files and prints one JSON line for each.
#include "instances/read.h"
#include "schedule/check.h"
#include "schedule/cost.h"
#include "schedule/solve.h"

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include <atomic>
#include <chrono>
#include <condition_variable>
#include <cstdio>
#include <ctime>
#include <mutex>
#include <thread>

namespace {

using namespace piewright;

struct Settings {
    double seconds = 10.0;
    int threads = 2;
    std::uint64_t seed = 1;
    std::uint64_t work = std::numeric_limits<std::uint64_t>::max();
    bool cpu = false;
};

double cpuSeconds() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

double clockSeconds() {
    return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

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
    schedule::Answer answer;
    double total = 0; ///< seconds
    double late = 0;  ///< after the time was up
    std::vector<std::pair<double, schedule::Cost>> trace;
};

Found run(const schedule::Problem& problem, const Settings& settings) {
    Found found;
    const auto now = [&] { return settings.cpu ? cpuSeconds() : clockSeconds(); };
    const double start = now();
    const auto elapsed = [&] { return now() - start; };
    std::atomic<bool> cancelled{false};
    schedule::Options options;
    options.seed = settings.seed;
    options.work = settings.work;
    options.threads = settings.threads;
    options.cancelled = &cancelled;
    options.improved = [&](const schedule::Improvement& one) { found.trace.emplace_back(elapsed(), one.value); };
    {
        const Alarm alarm(cancelled, settings.seconds, settings.cpu);
        found.answer = schedule::solve(problem, options);
    }
    found.total = elapsed();
    found.late = std::max(0.0, found.total - settings.seconds);
    if (!found.answer.schedule) return found;
    const auto violations = schedule::check(problem, *found.answer.schedule);
    if (!violations.empty() || schedule::costOf(problem, *found.answer.schedule) != found.answer.value) {
        std::fprintf(stderr, "broken schedule: %s\n",
                     violations.empty() ? "another value than told" : violations.front().what.c_str());
        std::abort();
    }
    return found;
}

const char* nameOf(schedule::Status status) {
    switch (status) {
    case schedule::Status::Proven:
        return "Proven";
    case schedule::Status::Feasible:
        return "Feasible";
    case schedule::Status::Infeasible:
        return "Infeasible";
    case schedule::Status::OutOfTime:
        break;
    }
    return "OutOfTime";
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
    app.add_option("--threads", settings.threads, "1 or 2; the same answer by --work alone");
    app.add_option("--seed", settings.seed, "of the first schedule");
    app.add_option("--work", settings.work, "most steps for each instance; the same answer every time");
    CLI11_PARSE(app, argc, argv);
    bool isRead = true;
    for (const std::string& file : files) {
        auto instance = bench::readInstance(file);
        if (!instance.ok()) {
            std::fprintf(stderr, "%s\n", toText(instance.problems().findings).c_str());
            isRead = false;
            continue;
        }
        instance->problem.costs = schedule::makespan();
        const Found found = run(instance->problem, settings);
        const schedule::Answer& answer = found.answer;
        nlohmann::ordered_json line;
        line["instance"] = file;
        line["status"] = nameOf(answer.status);
        line["value"] = answer.schedule ? nlohmann::ordered_json(answer.value) : nlohmann::ordered_json();
        line["bound"] = answer.bound > 0 ? nlohmann::ordered_json(answer.bound) : nlohmann::ordered_json();
        line["first_s"] =
            found.trace.empty() ? nlohmann::ordered_json() : nlohmann::ordered_json(found.trace.front().first);
        line["total_s"] = found.total;
        line["late_s"] = found.late;
        line["work"] = answer.work;
        if (answer.status == schedule::Status::Infeasible) line["clash"] = answer.clash.limits;
        line["trace"] = found.trace;
        std::printf("%s\n", line.dump().c_str());
        std::fflush(stdout);
    }
    return isRead ? 0 : 2;
}
