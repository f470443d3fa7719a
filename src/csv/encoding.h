// Bytes to UTF-8.
#pragma once

#include <string>
#include <string_view>

namespace piewright::csv {

/// Whether the bytes are UTF-8 (no overlong forms, no surrogates). `cutOff`: a sequence cut short by the end is
/// forgiven.
[[nodiscard]] bool isUtf8(std::string_view bytes, bool cutOff = false);

/// Windows-1252 to UTF-8, added to `to`; its five unused bytes become the control characters of Latin-1.
/// At most three bytes for each.
void addFromWindows1252(std::string_view bytes, std::string& to);

} // namespace piewright::csv
