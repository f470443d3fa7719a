// Reservoirs on the learning kernel: two stocks each, one that must not run dry and one that must not overflow.
#include "schedule/compiled.h"
#include "schedule/reservoir_level.h"

#include <algorithm>
#include <utility>

namespace piewright::schedule {

using learn::kTrue;

void Compiled::addReservoirs() {
    for (std::size_t r = 0; r < problem_.resources.size(); ++r) {
        if (!problem_.resources[r].reservoir) continue;
        const Reservoir& reservoir = *problem_.resources[r].reservoir;
        std::vector<Flowing> in; // what flows in; out: with its sign turned
        for (std::size_t a = 0; a < doings.size(); ++a) {
            for (const Way& way : doings[a].ways) {
                if (way.present == ~kTrue) continue;
                std::int64_t atStart = 0;
                std::int64_t atEnd = 0;
                for (const Flow& flow : modeOf(a, way.mode).flows) {
                    if (at(flow.resource) == r) (flow.point == Point::Start ? atStart : atEnd) += flow.amount;
                }
                if (way.duration == 0) atStart += std::exchange(atEnd, 0);
                if (atStart != 0) in.push_back({{way.start, 0}, atStart, way.present});
                if (atEnd != 0) in.push_back({way.end, atEnd, way.present});
            }
        }
        const learn::Literal active = guard(problem_.resources[r].name);
        std::vector<Flowing> out = in;
        for (Flowing& flow : out) flow.amount = -flow.amount;
        const auto falls = [](const Flowing& flow) { return flow.amount < 0; };
        if (std::any_of(in.begin(), in.end(), falls)) {
            ReservoirLevel::post(solver, std::move(in), reservoir.initial, reservoir.least, active);
        }
        if (std::any_of(out.begin(), out.end(), falls)) {
            ReservoirLevel::post(solver, std::move(out), -std::int64_t{reservoir.initial}, -std::int64_t{reservoir.most},
                        active);
        }
    }
}

} // namespace piewright::schedule
