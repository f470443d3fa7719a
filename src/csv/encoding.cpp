#include "csv/encoding.h"

#include <array>
#include <cstddef>
#include <cstdint>

namespace piewright::csv {

namespace {

// 0x80 to 0x9F; the rest is as in Latin-1. Source: WHATWG Encoding Standard, index windows-1252.
constexpr std::array<std::uint16_t, 32> kWindows{0x20AC, 0x81,   0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021,
                                                 0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0x8D,   0x017D, 0x8F,
                                                 0x90,   0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
                                                 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x9D,   0x017E, 0x0178};

} // namespace

bool isUtf8(std::string_view bytes, bool cutOff) {
    for (std::size_t i = 0; i < bytes.size();) {
        const auto first = static_cast<unsigned char>(bytes[i]);
        if (first < 0x80) {
            ++i;
            continue;
        }
        // Allowed second bytes by first byte: RFC 3629, section 4.
        std::size_t more = 0;
        unsigned char low = 0x80;
        unsigned char high = 0xBF;
        if (first >= 0xC2 && first <= 0xDF) {
            more = 1;
        } else if (first >= 0xE0 && first <= 0xEF) {
            more = 2;
            if (first == 0xE0) low = 0xA0;
            if (first == 0xED) high = 0x9F;
        } else if (first >= 0xF0 && first <= 0xF4) {
            more = 3;
            if (first == 0xF0) low = 0x90;
            if (first == 0xF4) high = 0x8F;
        } else {
            return false;
        }
        for (std::size_t j = 1; j <= more; ++j) {
            if (i + j == bytes.size()) return cutOff;
            const auto next = static_cast<unsigned char>(bytes[i + j]);
            if (next < low || next > high) return false;
            low = 0x80;
            high = 0xBF;
        }
        i += more + 1;
    }
    return true;
}

void addFromWindows1252(std::string_view bytes, std::string& to) {
    for (const char byte : bytes) {
        const auto b = static_cast<unsigned char>(byte);
        const unsigned point = b >= 0x80 && b < 0xA0 ? kWindows.at(b - 0x80U) : b;
        if (point < 0x80) {
            to += byte;
        } else if (point < 0x800) {
            to += static_cast<char>(0xC0U | (point >> 6U));
            to += static_cast<char>(0x80U | (point & 0x3FU));
        } else {
            to += static_cast<char>(0xE0U | (point >> 12U));
            to += static_cast<char>(0x80U | ((point >> 6U) & 0x3FU));
            to += static_cast<char>(0x80U | (point & 0x3FU));
        }
    }
}

} // namespace piewright::csv
