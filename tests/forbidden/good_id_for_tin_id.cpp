// A good's name does not pass for a tin's.
#include "units/id.h"

namespace piewright {
#ifdef ALLOWED
using Other = TinId;
#else
using Other = GoodId;
#endif

TinId tin(const Other& id) { return id; }
} // namespace piewright
