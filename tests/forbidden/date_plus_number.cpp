// A date and a number don't add: days, weeks?
#include "units/civil.h"

namespace piewright {
#ifdef ALLOWED
using Other = Days;
#else
using Other = int;
#endif

auto sum(Date a, Other b) { return a + b; }
} // namespace piewright
