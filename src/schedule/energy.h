// Cheap proofs that there is too much to do: between two times, what must be done by then against what can be.
#pragma once

#include "schedule/model.h"
#include "schedule/network.h"

namespace piewright::schedule {

/// Whether some resource, person or set of skills has more work that must lie between two times than there is room for
/// between them (energetic reasoning: Erschler, Lopez, Thuriot 1991; intervals as in Baptiste, Le Pape, Nuijten 1999,
/// Annals of Operations Research 92). True proves that there is no schedule; false proves nothing. O(n^3) for each
/// resource with n activities; with many, only some of the intervals are looked at.
[[nodiscard]] bool isOverloaded(const Model& model);

} // namespace piewright::schedule
