#include "schedule/portfolio.h"

#include <algorithm>
#include <thread>
#include <utility>

namespace piewright::schedule {

namespace {

/// A round is this part of the steps taken so far, within limits: short ones let the lanes learn from each other and
/// end soon, long ones spare their beginnings.
constexpr std::uint64_t kPart = 8;
constexpr std::uint64_t kShortest = 2'000;
constexpr std::uint64_t kLongest = 100'000;
/// The second lane takes this many steps for two of the first: a step of proof is shorter (measured), and a thread that
/// is done first waits.
constexpr std::uint64_t kSecond = 3;

} // namespace

Portfolio::Portfolio(Lane first, Lane second, const Options& options) : options_(options) {
    tracks_[0].members = std::move(first);
    tracks_[1].members = std::move(second);
}

Portfolio::~Portfolio() {
    if (options_.threads < 2) return;
    std::thread other([this] { tracks_[1].members.clear(); });
    tracks_[0].members.clear();
    other.join();
}

bool Portfolio::isCancelled() const {
    return options_.cancelled != nullptr && options_.cancelled->load(std::memory_order_relaxed);
}

void Portfolio::tell(const Schedule& schedule, Cost value) {
    const std::lock_guard lock(telling_);
    if (value >= told_) return;
    told_ = value;
    if (options_.improved) options_.improved({schedule, value});
}

void Portfolio::runTrack(Track& track, std::uint64_t work) {
    const Cost before = track.standing.value;
    Turn turn;
    turn.work = work;
    turn.cancelled = options_.cancelled;
    turn.found = [this](const Schedule& schedule, Cost value) { tell(schedule, value); };
    track.steps = track.members[track.turn]->run(turn, track.standing);
    track.idle = track.steps == 0 ? track.idle + 1 : 0;
    // Whoever has just found something better goes on.
    if (track.standing.value >= before) track.turn = (track.turn + 1) % track.members.size();
}

void Portfolio::take(Standing& standing, const Track& track) {
    standing.isHopeless = standing.isHopeless || track.standing.isHopeless;
    standing.bound = std::max(standing.bound, track.standing.bound);
    if (track.standing.schedule && track.standing.value < standing.value) {
        standing.schedule = track.standing.schedule;
        standing.value = track.standing.value;
    }
}

std::uint64_t Portfolio::run(Standing& standing, std::uint64_t work) {
    std::uint64_t done = 0;
    if (standing.schedule) tell(*standing.schedule, standing.value);
    while (!standing.isSettled() && done < work && !isCancelled()) {
        std::vector<Track*> running;
        for (Track& track : tracks_) {
            if (track.idle >= track.members.size()) continue;
            running.push_back(&track);
            track.standing = standing;
            track.steps = 0;
        }
        if (running.empty()) break;
        // Only the first round is cut short, so that more work goes on where less has ended, and is never worse.
        const std::uint64_t left = std::max<std::uint64_t>((work - done) / (running.size() + 1), 1);
        std::uint64_t slice = std::clamp(done / kPart, kShortest, kLongest);
        if (slice > left && done > 0) break;
        slice = std::min(slice, left);
        if (running.size() == 2 && options_.threads > 1) {
            std::thread other([&] { runTrack(*running[1], slice * kSecond / 2); });
            runTrack(*running[0], slice);
            other.join();
        } else {
            for (Track* const track : running) {
                runTrack(*track, track == &tracks_[1] ? slice * kSecond / 2 : slice);
                if (track->standing.isSettled()) break;
            }
        }
        // What the second found counts only where the first has not settled the matter: on one thread it was not asked.
        for (const Track* const track : running) {
            done += track->steps;
            take(standing, *track);
            if (track->standing.isSettled()) break;
        }
    }
    return done;
}

} // namespace piewright::schedule
