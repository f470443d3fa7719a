// An instant is a date only in a zone.
#include "units/civil.h"

namespace piewright {
#ifdef ALLOWED
using Other = std::chrono::local_days;
#else
using Other = Instant;
#endif

auto date(Other t) { return Date(t); }
} // namespace piewright
