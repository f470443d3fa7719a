// Whether a number is in a range: never for what is no number.
#pragma once

namespace piewright::thermal {

/// From least to most, both ends inside.
[[nodiscard]] constexpr bool within(double value, double least, double most) { return value >= least && value <= most; }

/// Above `below`, up to most.
[[nodiscard]] constexpr bool above(double value, double below, double most) { return value > below && value <= most; }

} // namespace piewright::thermal
