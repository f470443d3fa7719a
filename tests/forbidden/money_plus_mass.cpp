// Money and weight don't add.
#include "units/money.h"
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = Money;
#else
using Other = Mass;
#endif

auto sum(Money a, Other b) { return a + b; }
} // namespace piewright
