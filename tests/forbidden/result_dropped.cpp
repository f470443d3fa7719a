// A result can't be passed over: it may say what went wrong.
#include "finding/result.h"

namespace piewright {
#ifdef ALLOWED
using Other = int;
#else
using Other = Result<int>;
#endif

Other made();
void make() { made(); }
} // namespace piewright
