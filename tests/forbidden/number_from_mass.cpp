// A weight is no plain number: `raw` says which unit is meant.
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = std::int64_t;
#else
using Other = Mass;
#endif

std::int64_t count(Other n) { return n; }
} // namespace piewright
