// A difference does not pass for a temperature.
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = Celsius;
#else
using Other = Kelvin;
#endif

Celsius target(Other t) { return t; }
} // namespace piewright
