// A result is not its value until someone asked whether there is one.
#include "finding/result.h"

namespace piewright {
#ifdef ALLOWED
using Other = int;
#else
using Other = Result<int>;
#endif

int value(Other made) { return made; }
} // namespace piewright
