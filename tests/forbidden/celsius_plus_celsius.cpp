// Two temperatures don't add; a temperature and a difference do.
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = Kelvin;
#else
using Other = Celsius;
#endif

auto sum(Celsius a, Other b) { return a + b; }
} // namespace piewright
