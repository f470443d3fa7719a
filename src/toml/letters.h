// Letters beyond ASCII, kept from a library that does not bear them where they may not stand.
#pragma once

#include <string>
#include <string_view>

namespace piewright::toml {

/// A text whose letters from U+0080 to U+FFFF are moved to U+F0080 to U+FFFFF (private use, plane 15), one for one, so
/// that columns stay. toml++ 3.3 asks of every letter outside quotes whether it is a space, and its answer is undefined
/// for U+00A1 to U+0499 and U+FA86 to U+FEFE; beyond U+FEFF it is a plain no, and the letter is refused like any other.
struct Veiled {
    std::string text; ///< without a byte order mark
    int badLine = 0;  ///< where the text is not UTF-8 or is of plane 15 itself; 0: it is fine
    int badColumn = 0;
};
[[nodiscard]] Veiled veil(std::string_view text);

/// The letters moved back.
[[nodiscard]] std::string plain(std::string_view veiled);

} // namespace piewright::toml
