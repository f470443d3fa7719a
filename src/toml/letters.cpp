#include "toml/letters.h"

#include <cstddef>
#include <cstdint>
#include <optional>

namespace piewright::toml {

namespace {

constexpr std::uint32_t kVeil = 0xF0000;
constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

struct Letter {
    std::uint32_t code = 0;
    std::size_t bytes = 1;
};

// The letter at the text's beginning (RFC 3629: no overlong form, no surrogate, at most U+10FFFF).
std::optional<Letter> letterAt(std::string_view text) {
    constexpr std::uint32_t kLeast[] = {0, 0, 0x80, 0x800, 0x10000};
    const auto first = static_cast<unsigned char>(text.front());
    if (first < 0x80) return Letter{first, 1};
    const std::size_t bytes = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
    if (first < 0xC2 || first > 0xF4 || text.size() < bytes) return std::nullopt;
    std::uint32_t code = first & (0xFFU >> (bytes + 1));
    for (std::size_t i = 1; i < bytes; ++i) {
        const auto next = static_cast<unsigned char>(text[i]);
        if ((next & 0xC0U) != 0x80) return std::nullopt;
        code = (code << 6U) | (next & 0x3FU);
    }
    if (code < kLeast[bytes] || code > 0x10FFFF || (code >= 0xD800 && code < 0xE000)) return std::nullopt;
    return Letter{code, bytes};
}

char byteOf(std::uint32_t bits) { return static_cast<char>(static_cast<unsigned char>(bits)); }

void append(std::string& text, std::uint32_t code) {
    if (code < 0x80) {
        text += byteOf(code);
    } else if (code < 0x800) {
        text += byteOf(0xC0U | (code >> 6U));
        text += byteOf(0x80U | (code & 0x3FU));
    } else if (code < 0x10000) {
        text += byteOf(0xE0U | (code >> 12U));
        text += byteOf(0x80U | ((code >> 6U) & 0x3FU));
        text += byteOf(0x80U | (code & 0x3FU));
    } else {
        text += byteOf(0xF0U | (code >> 18U));
        text += byteOf(0x80U | ((code >> 12U) & 0x3FU));
        text += byteOf(0x80U | ((code >> 6U) & 0x3FU));
        text += byteOf(0x80U | (code & 0x3FU));
    }
}

bool isVeiled(std::uint32_t code) { return code >= kVeil && code <= kVeil + 0xFFFF; }

} // namespace

Veiled veil(std::string_view text) {
    Veiled veiled;
    veiled.text.reserve(text.size());
    if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
    int line = 1;
    int column = 1;
    while (!text.empty()) {
        const auto letter = letterAt(text);
        if (!letter || isVeiled(letter->code)) {
            veiled.badLine = line;
            veiled.badColumn = column;
            return veiled;
        }
        append(veiled.text, letter->code >= 0x80 && letter->code <= 0xFFFF ? letter->code + kVeil : letter->code);
        text.remove_prefix(letter->bytes);
        ++column;
        if (letter->code == '\n') {
            ++line;
            column = 1;
        }
    }
    return veiled;
}

std::string plain(std::string_view veiled) {
    std::string text;
    text.reserve(veiled.size());
    while (!veiled.empty()) {
        const auto letter = letterAt(veiled);
        if (!letter) return text + std::string(veiled); // the library gives UTF-8 only
        append(text, isVeiled(letter->code) ? letter->code - kVeil : letter->code);
        veiled.remove_prefix(letter->bytes);
    }
    return text;
}

} // namespace piewright::toml
