// `grams` counts whole grams; finer weights are `milligrams`.
#include "units/quantity.h"

namespace piewright {
#ifdef ALLOWED
using Other = std::int64_t;
#else
using Other = double;
#endif

Mass weight(Other n) { return grams(n); }
} // namespace piewright
