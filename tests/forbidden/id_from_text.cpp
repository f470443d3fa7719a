// A text is no name of a thing until someone says of which kind.
#include "units/id.h"

namespace piewright {
#ifdef ALLOWED
using Other = GoodId;
#else
using Other = std::string;
#endif

GoodId good(const Other& name) { return name; }
} // namespace piewright
