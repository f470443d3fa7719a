// The complete side of the engine: a problem compiled to the learning kernel, asked "is there a schedule that costs no
// more than this?". Proves optima and contradictions; slower than the builder at finding a first schedule.
#pragma once

#include "schedule/problem.h"

#include <atomic>
#include <cstdint>
#include <functional>
#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace piewright::schedule {

enum class Verdict { Satisfied, Refuted, Unknown };

struct ProverLimits {
    std::uint64_t work = std::numeric_limits<std::uint64_t>::max();      ///< kernel steps, on top of those done before
    std::uint64_t conflicts = std::numeric_limits<std::uint64_t>::max(); ///< dead ends, likewise
    const std::atomic<bool>* cancelled = nullptr;                        ///< obeyed within a few milliseconds
};

struct ProverOptions {
    /// Named limits (lags, releases, due times, the horizon, resources, people) can be let go one by one, so that a
    /// clash can be told; costs speed, and no cost of the problem is looked at: every schedule has the value 0.
    bool guardLimits = false;
    bool orderLiterals = true;
    bool edgeFinding = true;
    /// Once it is true the statement ends early; then the prover is good for nothing and is to be dropped.
    const std::atomic<bool>* cancelled = nullptr;
};

/// Latest end in a schedule: the makespan. 0 when nothing is placed.
[[nodiscard]] Tick latestEnd(const Schedule& schedule);

struct Kept;

class Prover {
  public:
    /// `problem` must have no faultsIn and must outlive the prover. O(n^3) for n activities up to 600; memory grows
    /// with the pairs that can never overlap.
    explicit Prover(const Problem& problem, const ProverOptions& options = {});
    ~Prover();
    Prover(const Prover&) = delete;
    Prover& operator=(const Prover&) = delete;
    Prover(Prover&&) = delete;
    Prover& operator=(Prover&&) = delete;

    /// Is there a schedule that costs `most` at the most? Satisfied: best() is one. What was learnt is kept for the
    /// next question. Never wrong; Unknown when the limits ran out. kMostCost: any schedule.
    [[nodiscard]] Verdict decide(Cost most, const ProverLimits& limits);

    /// The same near a schedule that keeps every limit: of those that share with it what is kept. Satisfied: last() is
    /// one.
    [[nodiscard]] Verdict decideNear(const Schedule& schedule, const Kept& kept, Cost most, const ProverLimits& limits);
    /// The schedule found last, whether better than any before or not.
    [[nodiscard]] const std::optional<Schedule>& last() const;

    using Improved = std::function<void(const Schedule& schedule, Cost value)>;
    /// Makes the cost as low as it can within the limits: Satisfied means that best() is proved to be the best, Refuted
    /// that there is no schedule. Asks for large steps first and smaller ones where they fail.
    [[nodiscard]] Verdict improve(const ProverLimits& limits, const Improved& improved = {});
    /// Raises bound() from below, step doubling while refutations are cheap. Satisfied: best() is proved to be best.
    [[nodiscard]] Verdict refute(const ProverLimits& limits, const Improved& improved = {});

    /// A schedule from elsewhere: the search tries its times first, and it becomes best() if it is better. It must keep
    /// every limit when `isValid`; a broken one only guides.
    void hint(const Schedule& schedule, bool isValid);

    /// From elsewhere: no schedule costs less than `bound`.
    void know(Cost bound);

    [[nodiscard]] const std::optional<Schedule>& best() const;
    /// Of best(); 0 where there is none.
    [[nodiscard]] Cost value() const;
    /// No schedule costs less than this.
    [[nodiscard]] Cost bound() const;
    /// Proved that there is no schedule at all.
    [[nodiscard]] bool isHopeless() const;
    /// With isHopeless: reasons, in the user's words, that cannot be kept together; without `guardLimits` only for a
    /// loop of rules on time alone.
    [[nodiscard]] const std::vector<std::string>& clash() const;
    /// With `guardLimits`: can these named limits be kept together, with all that has no name? Refuted: clash() says
    /// which of them cannot. To be asked before improve(), which from then on wants something better than best().
    [[nodiscard]] Verdict decideUnder(const std::vector<std::string>& limits, const ProverLimits& work);
    /// With `guardLimits`: all named limits.
    [[nodiscard]] std::vector<std::string> namedLimits() const;
    [[nodiscard]] std::uint64_t work() const;
    [[nodiscard]] std::uint64_t conflicts() const;

  private:
    struct Engine;
    std::unique_ptr<Engine> engine_;
};

} // namespace piewright::schedule
