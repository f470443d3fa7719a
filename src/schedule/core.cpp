#include "schedule/core.h"

#include <algorithm>

namespace piewright::schedule {

Clash findClash(const Problem& problem, const ProverLimits& limits) {
    ProverOptions options;
    options.guardLimits = true;
    Prover prover(problem, options);
    if (prover.namedLimits().empty() && !prover.clash().empty()) return {prover.clash(), true};
    ProverLimits share = limits;
    if (prover.decideUnder(prover.namedLimits(), share) != Verdict::Refuted) return {};
    std::vector<std::string> core = prover.clash();
    // One by one; each success may spare others too.
    for (std::size_t i = 0; i < core.size();) {
        if (prover.work() >= limits.work) break;
        share.work = (limits.work - prover.work()) / (core.size() - i);
        std::vector<std::string> without = core;
        without.erase(without.begin() + static_cast<std::ptrdiff_t>(i));
        if (prover.decideUnder(without, share) == Verdict::Refuted) {
            // Those before `i` were found to be needed with all that is left now.
            core = prover.clash();
            i = std::min(i, core.size());
        } else {
            ++i;
        }
    }
    return {core, true};
}

} // namespace piewright::schedule
