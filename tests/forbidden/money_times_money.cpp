// Two amounts of money don't multiply.
#include "units/money.h"

namespace piewright {
#ifdef ALLOWED
using Other = std::int64_t;
#else
using Other = Money;
#endif

auto product(Money a, Other b) { return a * b; }
} // namespace piewright
