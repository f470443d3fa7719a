// A problem in the shape of a bakehouse day; invented, all of it. Ticks are minutes from 03:30.
#pragma once

#include "schedule/problem.h"

namespace piewright::schedule {

/// `bakes` batches of eight activities each (mix, divide, pin, fill, lid, load, bake, unload) tied by least and most
/// lags, ready in waves over the day; pans of mash, each put on, boiling unattended and drained; a break for each of
/// the `hands`. Three decks to an oven, two ovens.
[[nodiscard]] Problem bakehouseDay(int bakes, int pans, int hands);

} // namespace piewright::schedule
