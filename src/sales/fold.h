// Text as people mean it: case, accents' case and spaces aside.
#pragma once

#include <string>
#include <string_view>

namespace piewright::sales {

/// Without spaces and no-break spaces at the ends.
[[nodiscard]] std::string_view trimmed(std::string_view text);

/// Trimmed, small letters (ASCII and Latin-1, UTF-8), runs of spaces as one.
[[nodiscard]] std::string fold(std::string_view text);

} // namespace piewright::sales
