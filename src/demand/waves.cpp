#include "demand/amounts.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <limits>

namespace piewright::demand {

namespace {

/// When pieces are wanted, on a grid of ready times from the first opening to the last closing.
struct Wanted {
    std::vector<int> at;   ///< minute of the day of each grid point; the last is closing
    std::vector<int> upTo; ///< pieces that must be ready for what is wanted before that minute; the last is all
};

Wanted wantedOf(int pieces, const Profile& profile, const WaveTerms& terms, int step) {
    const int opening = static_cast<int>(terms.open.front().from.sinceMidnight().count());
    const int closing = static_cast<int>(terms.open.back().to.sinceMidnight().count());
    const QuarterWeights parts = openParts(terms.open);
    // Minutes outside the hours or past midnight hold nothing; where the profile says nothing all open minutes are
    // alike.
    std::vector<double> minute(static_cast<std::size_t>(std::max(0, closing)), 0);
    double sum = 0;
    for (const bool byProfile : {true, false}) {
        for (const ClockSpan& span : terms.open) {
            const auto to = std::min<std::int64_t>(span.to.sinceMidnight().count(), closing);
            for (auto m = std::max<std::int64_t>(0, span.from.sinceMidnight().count()); m < to; ++m) {
                const auto quarter = static_cast<std::size_t>(m / 15);
                const double share = !byProfile ? 1
                                     : quarter < profile.size() && parts[quarter] > 0
                                         ? profile[quarter] / parts[quarter]
                                         : 0;
                sum += minute[static_cast<std::size_t>(m)] = share;
            }
        }
        if (sum > 0) break;
    }

    Wanted wanted;
    const int first = opening - ((opening % step) + step) % step;
    double before = 0;
    int counted = std::max(0, first);
    for (int at = first; at < closing; at += step) {
        for (; counted < std::min(at, closing); ++counted) before += minute[static_cast<std::size_t>(counted)];
        wanted.at.push_back(at);
        // Rounded up: what is likely wanted before the next wave must be there in whole pieces.
        wanted.upTo.push_back(std::min(pieces, static_cast<int>(std::ceil(pieces * (before / sum) - 1e-9))));
    }
    wanted.at.push_back(closing);
    wanted.upTo.push_back(pieces);
    return wanted;
}

/// Longest reach first: each wave serves to the last grid point it can, which gives the fewest waves of that hold.
std::vector<Wave> reachingFarthest(const Wanted& wanted, int hold, int most) {
    std::vector<Wave> waves;
    const std::size_t last = wanted.at.size() - 1;
    for (std::size_t i = 0; i < last;) {
        std::size_t next = i + 1;
        while (next < last && wanted.at[next + 1] - wanted.at[i] <= hold &&
               wanted.upTo[next + 1] - wanted.upTo[i] <= most)
            ++next;
        // More than one wave can be is wanted before the next grid point: several at once.
        for (int pieces = wanted.upTo[next] - wanted.upTo[i]; pieces > 0; pieces -= most)
            waves.push_back({ClockTime(Minutes(wanted.at[i])), {}, std::min(pieces, most)});
        i = next;
        // Nothing is wanted for a while: ready no sooner than needed.
        while (i + 1 < last && wanted.upTo[i + 1] == wanted.upTo[i]) ++i;
    }
    return waves;
}

/// A wave sells until the next is ready, its hold is over or the shop shuts, even if only for a while.
void setUntil(std::vector<Wave>& waves, const WaveTerms& terms, int hold) {
    ClockTime next = terms.open.back().to;
    for (std::size_t i = waves.size(); i-- > 0;) {
        if (i + 1 < waves.size() && waves[i + 1].ready > waves[i].ready) next = waves[i + 1].ready;
        ClockTime until = std::min(next, waves[i].ready + Minutes(hold));
        for (auto span = terms.open.rbegin(); span != terms.open.rend(); ++span) {
            if (span->from >= until) continue;
            if (span->to > waves[i].ready) until = std::min(until, span->to);
            break;
        }
        waves[i].until = until;
    }
}

} // namespace

std::vector<Wave> waves(int pieces, const Profile& profile, const WaveTerms& terms) {
    assert(pieces >= 0 && !terms.open.empty() && terms.hold.count() > 0);
    assert(!terms.mostPieces || *terms.mostPieces > 0);
    if (pieces == 0) return {};
    constexpr std::int64_t kTwoDays = 2'880;
    auto hold = static_cast<int>(std::min<std::int64_t>(terms.hold.count(), kTwoDays));
    if (terms.everyAtMost) hold = static_cast<int>(std::clamp<std::int64_t>(terms.everyAtMost->count(), 1, hold));
    const int step = std::clamp(static_cast<int>(std::min<std::int64_t>(terms.step.count(), kTwoDays)), 1, hold);
    const int most = terms.mostPieces.value_or(std::numeric_limits<int>::max());
    const Wanted wanted = wantedOf(pieces, profile, terms, step);

    std::vector<Wave> best = reachingFarthest(wanted, hold, most);
    // As few waves with a shorter hold are the fresher ones: the shortest that needs no more.
    int shortest = step;
    int longest = hold;
    while (shortest < longest) {
        const int middle = shortest + (longest - shortest) / 2;
        std::vector<Wave> tried = reachingFarthest(wanted, middle, most);
        if (tried.size() <= best.size()) {
            best = std::move(tried);
            longest = middle;
        } else {
            shortest = middle + 1;
        }
    }
    setUntil(best, terms, hold);
    return best;
}

} // namespace piewright::demand
