// "Did you mean …": the nearest known name to one that is not known.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace piewright {

/// Number of single-letter insertions, deletions, changes and neighbour swaps that turn `a` into `b`
/// (optimal string alignment distance). Bytes, not letters. O(a·b).
[[nodiscard]] std::size_t editDistance(std::string_view a, std::string_view b);

/// The known name nearest to `seen`, ignoring case, if it is near enough to be a slip of the finger
/// (distance at most a third of the longer length, at least 1); the first of equals in the order given.
[[nodiscard]] std::optional<std::string> nearestName(std::string_view seen, std::span<const std::string> known);

/// `did you mean "plain-flour"?`, or nothing.
[[nodiscard]] std::string didYouMean(std::string_view seen, std::span<const std::string> known);

} // namespace piewright
