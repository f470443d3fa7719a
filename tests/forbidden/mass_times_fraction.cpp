// A weight times a fraction is `scaled`, which says how it rounds.
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = std::int64_t;
#else
using Other = double;
#endif

auto product(Mass a, Other b) { return a * b; }
} // namespace piewright
