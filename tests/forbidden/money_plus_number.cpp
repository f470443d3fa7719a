// Money and a number don't add: of what unit and currency?
#include "units/money.h"

namespace piewright {
#ifdef ALLOWED
using Other = Money;
#else
using Other = std::int64_t;
#endif

auto sum(Money a, Other b) { return a + b; }
} // namespace piewright
