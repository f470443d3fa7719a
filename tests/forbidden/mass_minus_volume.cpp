// A volume can't be taken from a weight.
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = Mass;
#else
using Other = Volume;
#endif

auto rest(Mass a, Other b) { return a - b; }
} // namespace piewright
