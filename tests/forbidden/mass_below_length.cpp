// A weight and a length don't compare.
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = Mass;
#else
using Other = Length;
#endif

bool below(Mass a, Other b) { return a < b; }
} // namespace piewright
