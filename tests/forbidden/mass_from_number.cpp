// A plain number is no weight: of what unit?
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = Mass;
#else
using Other = std::int64_t;
#endif

Mass weight(Other n) { return n; }
} // namespace piewright
