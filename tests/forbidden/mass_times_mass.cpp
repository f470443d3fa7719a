// Two weights don't multiply.
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = std::int64_t;
#else
using Other = Mass;
#endif

auto product(Mass a, Other b) { return a * b; }
} // namespace piewright
