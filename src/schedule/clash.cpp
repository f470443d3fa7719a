#include "schedule/clash.h"

#include "schedule/limits.h"
#include "schedule/network.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <numeric>
#include <utility>

namespace piewright::schedule {

namespace {

constexpr std::size_t kLongLoop = 64; ///< rules; each of a shorter one is tried without

class Explainer {
  public:
    Explainer(const Problem& problem, Decision& decision, const Options& options)
        : problem_(problem), decision_(decision), options_(options), limits_(namedLimits(problem)) {}

    /// Of a loop in time by way of a release or a due time, only what it takes: time begins at 0 without any release.
    /// A long one is told as it was found: it visits no moment twice, and each rule of it is needed for the loop.
    Clash inTime(std::vector<std::string> loop) {
        if (loop.size() > kLongLoop) return {std::move(loop), true};
        std::vector<NamedLimit> others; // what the loop does not speak of
        const auto without = [&](const std::vector<std::string>& kept) {
            others.clear();
            std::copy_if(limits_.begin(), limits_.end(), std::back_inserter(others), [&](const NamedLimit& limit) {
                return std::find(kept.begin(), kept.end(), limit.words) == kept.end();
            });
            return schedule::without(problem_, others);
        };
        for (std::size_t i = loop.size(); i-- > 0;) {
            std::vector<std::string> fewer = loop;
            fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
            ++decision_.work;
            if (contradiction(without(fewer))) {
                loop = std::move(fewer);
            }
        }
        return {std::move(loop), true};
    }

    Clash infeasible() {
        // One proof may cost a few times what the first one did, but never so much that few others can be tried.
        const std::uint64_t first = decision_.work;
        std::vector<std::size_t> kept(limits_.size());
        std::iota(kept.begin(), kept.end(), std::size_t{0});
        for (std::size_t chunk = std::max<std::size_t>(1, kept.size() / 2);; chunk /= 2) {
            for (std::size_t from = 0; from < kept.size() && !isSpent();) {
                std::vector<std::size_t> fewer(kept.begin(), kept.begin() + static_cast<std::ptrdiff_t>(from));
                if (from + chunk < kept.size()) {
                    fewer.insert(fewer.end(), kept.begin() + static_cast<std::ptrdiff_t>(from + chunk), kept.end());
                }
                if (tryKeeping(fewer, std::min(20000 + 4 * first, 1000 + left() / 8)) == Status::Infeasible) {
                    kept = std::move(fewer);
                } else {
                    from += chunk;
                }
            }
            if (chunk == 1) {
                break;
            }
        }
        return {wordsOf(kept), true};
    }

    Clash unknown() {
        const std::vector<std::size_t> suspects = suspectsInOrder();
        const std::uint64_t each = left() / 16;
        std::vector<std::size_t> helpful;
        for (std::size_t i = 0; i < suspects.size() && i < 10 && helpful.size() < 3; ++i) {
            if (isSpent()) {
                break;
            }
            if (tryWithout({suspects[i]}, each) == Status::Proven) {
                helpful.push_back(suspects[i]);
            }
        }
        if (!helpful.empty()) {
            return {wordsOf(helpful), false};
        }
        // No one alone: more and more of them together, then back to as few as will do.
        std::vector<std::size_t> set;
        for (std::size_t count = 2; count <= suspects.size() && !isSpent(); count *= 2) {
            set.assign(suspects.begin(), suspects.begin() + static_cast<std::ptrdiff_t>(count));
            if (tryWithout(set, each) != Status::Proven) {
                continue;
            }
            for (std::size_t i = set.size(); i-- > 0 && !isSpent();) {
                std::vector<std::size_t> fewer = set;
                fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
                if (tryWithout(fewer, each) == Status::Proven) {
                    set = std::move(fewer);
                }
            }
            return {wordsOf(set), false};
        }
        set.assign(suspects.begin(),
                   suspects.begin() + static_cast<std::ptrdiff_t>(std::min<std::size_t>(3, suspects.size())));
        return {wordsOf(set), false};
    }

  private:
    [[nodiscard]] std::uint64_t left() const { return options_.work - std::min(options_.work, decision_.work); }
    [[nodiscard]] bool isSpent() const { return left() == 0; }

    Status tryWithout(const std::vector<std::size_t>& givenUp, std::uint64_t work) {
        std::vector<NamedLimit> gone;
        gone.reserve(givenUp.size());
        for (const std::size_t i : givenUp) {
            gone.push_back(limits_[i]);
        }
        const Problem rest = without(problem_, gone);
        const Model model(rest);
        Options share;
        share.seed = options_.seed;
        share.work = std::min(work, left());
        share.cancelled = options_.cancelled;
        Standing standing;
        standing.bound = 0; // any schedule will do
        const Decision decision = decide(model, share, standing);
        decision_.work += std::max<std::uint64_t>(1, decision.work);
        return decision.status;
    }

    Status tryKeeping(const std::vector<std::size_t>& kept, std::uint64_t work) {
        std::vector<std::size_t> rest;
        for (std::size_t i = 0; i < limits_.size(); ++i) {
            if (!std::binary_search(kept.begin(), kept.end(), i)) {
                rest.push_back(i);
            }
        }
        return tryWithout(rest, work);
    }

    /// By how often an activity that found no place has to do with them.
    [[nodiscard]] std::vector<std::size_t> suspectsInOrder() const {
        std::vector<std::uint64_t> score(limits_.size(), 0);
        for (std::size_t i = 0; i < limits_.size(); ++i) {
            for (const std::size_t which : limits_[i].which) {
                score[i] += scoreOf(limits_[i].kind, which);
            }
        }
        std::vector<std::size_t> order;
        for (std::size_t i = 0; i < limits_.size(); ++i) {
            if (score[i] > 0) {
                order.push_back(i);
            }
        }
        std::stable_sort(order.begin(), order.end(), [&](std::size_t x, std::size_t y) { return score[x] > score[y]; });
        return order;
    }

    [[nodiscard]] std::uint64_t scoreOf(NamedLimit::Kind kind, std::size_t which) const {
        using Kind = NamedLimit::Kind;
        const auto sum = [&](auto concerns) {
            std::uint64_t total = 0;
            for (std::size_t a = 0; a < problem_.activities.size(); ++a) {
                const std::vector<Mode>& modes = problem_.activities[a].modes;
                if (a < decision_.failures.size() && std::any_of(modes.begin(), modes.end(), concerns)) {
                    total += decision_.failures[a];
                }
            }
            return total;
        };
        const auto failures = [&](std::size_t a) { return a < decision_.failures.size() ? decision_.failures[a] : 0; };
        switch (kind) {
        case Kind::Lag:
            return (failures(at(problem_.lags[which].from)) + failures(at(problem_.lags[which].to))) / 2;
        case Kind::Stay:
            return (failures(at(problem_.stays[which].from)) + failures(at(problem_.stays[which].to))) / 2;
        case Kind::Implication:
            return failures(at(problem_.implications[which].also));
        case Kind::Least:
        case Kind::Most:
            return sum([&](const Mode& mode) {
                return std::any_of(mode.flows.begin(), mode.flows.end(),
                                   [&](const Flow& flow) { return at(flow.resource) == which; });
            });
        case Kind::Release:
        case Kind::Due:
            return failures(which);
        case Kind::Horizon: // always a way out, though seldom the one people want
            return 1 + sum([](const Mode&) { return true; }) / problem_.activities.size();
        case Kind::Capacity:
        case Kind::Setup:
        case Kind::Away:
        case Kind::Reserved:
            return sum([&](const Mode& mode) {
                return std::any_of(mode.uses.begin(), mode.uses.end(),
                                   [&](const Use& use) { return at(use.resource) == which; });
            });
        case Kind::Skill:
            return sum([&](const Mode& mode) {
                return std::any_of(mode.needs.begin(), mode.needs.end(),
                                   [&](const SkillNeed& need) { return at(need.skill) == which; });
            });
        case Kind::Team:
        case Kind::Presence:
            return sum([&](const Mode& mode) {
                return std::find(mode.team.begin(), mode.team.end(), static_cast<WorkerIndex>(which)) !=
                       mode.team.end();
            });
        }
        return 0;
    }

    /// What the house has first, then what it asks of it.
    [[nodiscard]] std::vector<std::string> wordsOf(std::vector<std::size_t> which) const {
        using Kind = NamedLimit::Kind;
        constexpr std::array kOrder{Kind::Capacity, Kind::Setup,       Kind::Away,    Kind::Reserved, Kind::Least,
                                    Kind::Most,     Kind::Skill,       Kind::Team,    Kind::Presence, Kind::Lag,
                                    Kind::Stay,     Kind::Implication, Kind::Release, Kind::Due,      Kind::Horizon};
        const auto rank = [&](std::size_t i) { return std::find(kOrder.begin(), kOrder.end(), limits_[i].kind); };
        std::stable_sort(which.begin(), which.end(), [&](std::size_t x, std::size_t y) { return rank(x) < rank(y); });
        std::vector<std::string> words;
        words.reserve(which.size());
        for (const std::size_t i : which) {
            words.push_back(limits_[i].words);
        }
        return words;
    }

    const Problem& problem_;
    Decision& decision_;
    Options options_;
    std::vector<NamedLimit> limits_;
};

} // namespace

Clash explain(const Problem& problem, Decision& decision, const Options& options) {
    Explainer explainer(problem, decision, options);
    Clash clash = decision.loop                           ? explainer.inTime(*decision.loop)
                  : decision.status == Status::Infeasible ? explainer.infeasible()
                                                          : explainer.unknown();
    if (clash.limits.empty()) { // only what needs no telling is left: tell it all the same
        clash.limits = {"what there is to do takes longer than the time there is, " + std::to_string(problem.horizon)};
    }
    return clash;
}

} // namespace piewright::schedule
