// Names of two kinds of thing don't compare.
#include "units/id.h"

namespace piewright {
#ifdef ALLOWED
using Other = GoodId;
#else
using Other = TinId;
#endif

bool same(const GoodId& a, const Other& b) { return a == b; }
} // namespace piewright
