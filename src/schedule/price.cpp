#include "schedule/price.h"

#include "schedule/easing.h"
#include "schedule/limits.h"

#include <algorithm>
#include <utility>

namespace piewright::schedule {

std::vector<Price> pricesOf(const Problem& problem, const Answer& answer, const Options& options, Tick step) {
    std::vector<Price> prices;
    if (!answer.schedule) return prices;
    const std::vector<NamedLimit> limits = namedLimits(problem);
    std::uint64_t left = options.work;
    for (std::size_t l = 0; l < limits.size() && left > 0; ++l) {
        if (options.cancelled != nullptr && options.cancelled->load(std::memory_order_relaxed)) break;
        const std::optional<Problem> easier = eased(problem, limits[l], step);
        if (!easier) continue;
        Options share;
        share.seed = options.seed;
        share.work = left / (limits.size() - l);
        share.threads = options.threads;
        share.begin = &*answer.schedule;
        share.cancelled = options.cancelled;
        const Answer better = solve(*easier, share);
        left -= std::min(left, std::max<std::uint64_t>(1, better.work));
        if (!better.schedule || better.value >= answer.value) continue;
        prices.push_back({limits[l].words, answer.value - better.value,
                          answer.status == Status::Proven && better.status == Status::Proven});
    }
    std::stable_sort(prices.begin(), prices.end(), [](const Price& x, const Price& y) { return x.saved > y.saved; });
    return prices;
}

} // namespace piewright::schedule
