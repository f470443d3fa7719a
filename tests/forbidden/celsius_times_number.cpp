// A temperature does not multiply; a difference does.
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = Kelvin;
#else
using Other = Celsius;
#endif

auto twice(Other a) { return a * 2; }
} // namespace piewright
