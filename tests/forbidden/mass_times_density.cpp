// A density turns a volume into a weight, not a weight into anything.
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = Volume;
#else
using Other = Mass;
#endif

auto product(Other a, Density b) { return a * b; }
} // namespace piewright
