#include "outside/topics.h"
#include "pastry/tin.h"

#include <cmath>

namespace piewright::outside {

Answer relaxation(const Case& asked, const Foods& /*foods*/) {
    if (!asked.quantity.starts_with("springback left after a rest") || asked.unit != "fraction")
        return NotCovered{"not the springback left after a rest, as a fraction"};
    const auto in = asked.inputs.exactly({"s0", "tau_min", "rest_min"});
    if (!in) return NotCovered{"wants s0, tau_min and rest_min"};
    const auto [atOnce, relaxation, rest] = *in;
    if (atOnce < 0 || atOnce > 100 || relaxation < 0 || relaxation > 1e6 || rest < 0 || rest > 1e6)
        return NotCovered{"out of range"};
    const auto seconds = [](double minutes) { return Seconds(std::llround(minutes * 60)); };
    return asFraction(pastry::springbackAfter(Share::nearest(atOnce * 1e6), seconds(relaxation), seconds(rest)));
}

} // namespace piewright::outside
