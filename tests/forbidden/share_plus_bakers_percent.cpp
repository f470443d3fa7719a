// Parts of the whole and parts of the flour don't add.
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = Share;
#else
using Other = BakersPercent;
#endif

auto sum(Share a, Other b) { return a + b; }
} // namespace piewright
