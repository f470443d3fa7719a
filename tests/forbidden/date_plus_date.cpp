// Two dates don't add.
#include "units/civil.h"

namespace piewright {
#ifdef ALLOWED
using Other = Days;
#else
using Other = Date;
#endif

auto sum(Date a, Other b) { return a + b; }
} // namespace piewright
