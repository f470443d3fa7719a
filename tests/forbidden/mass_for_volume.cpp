// A weight does not pass for a volume.
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = Volume;
#else
using Other = Mass;
#endif

Volume room(Other v) { return v; }
} // namespace piewright
