// Runs searches side by side in rounds of counted steps, so that two threads give the answer of one.
#pragma once

#include "schedule/member.h"
#include "schedule/solve.h"

#include <memory>
#include <mutex>
#include <vector>

namespace piewright::schedule {

/// Members that take turns. The first improves, the second proves, as a rule; whatever they find is put together after
/// each round.
using Lane = std::vector<std::unique_ptr<Member>>;

class Portfolio {
  public:
    /// `first` and `second` may be empty. An improvement is told once its schedule is better than all told before.
    Portfolio(Lane first, Lane second, const Options& options);
    /// Lets the members go on two threads, where there are two: what they have learnt takes a while to free.
    ~Portfolio();
    Portfolio(const Portfolio&) = delete;
    Portfolio& operator=(const Portfolio&) = delete;
    Portfolio(Portfolio&&) = delete;
    Portfolio& operator=(Portfolio&&) = delete;

    /// Rounds, each a part of what was worked so far, until the problem is settled, the next would go beyond
    /// `work` steps (of both lanes together), no member has anything more to try, or it is cancelled. Returns the steps
    /// taken.
    std::uint64_t run(Standing& standing, std::uint64_t work);

  private:
    struct Track {
        Lane members;
        std::size_t turn = 0;
        std::size_t idle = 0; ///< members in a row that had nothing to try
        Standing standing;
        std::uint64_t steps = 0;
    };

    [[nodiscard]] bool isCancelled() const;
    void runTrack(Track& track, std::uint64_t work);
    void tell(const Schedule& schedule, Cost value);
    /// Adds what `track` knows more.
    static void take(Standing& standing, const Track& track);

    Track tracks_[2];
    Options options_;
    std::mutex telling_;
    Cost told_ = std::numeric_limits<Cost>::max();
};

} // namespace piewright::schedule
