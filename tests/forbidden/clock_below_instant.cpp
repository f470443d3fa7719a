// A time on the wall clock and an instant don't compare without a zone.
#include "units/civil.h"

namespace piewright {
#ifdef ALLOWED
using Other = ClockTime;
#else
using Other = Instant;
#endif

bool before(ClockTime a, Other b) { return a < b; }
} // namespace piewright
