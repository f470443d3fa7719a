// Part of the whole does not pass for part of the flour.
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = BakersPercent;
#else
using Other = Share;
#endif

BakersPercent line(Other p) { return p; }
} // namespace piewright
