// A ratio is of two amounts of one kind.
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = Mass;
#else
using Other = Length;
#endif

double part(Mass a, Other b) { return ratio(a, b); }
} // namespace piewright
