#include "sales/pieces.h"

#include "sales/fold.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>

namespace piewright::sales {

namespace {

bool digit(char c) { return c >= '0' && c <= '9'; }

/// The place of the decimal mark, or npos. Not a check that the thousands stand right.
std::size_t decimalMark(std::string_view text, bool decimalComma) {
    const std::size_t last = text.find_last_of(".,");
    if (last == std::string_view::npos) return last;
    const char mark = text[last];
    const bool otherToo = text.find(mark == ',' ? '.' : ',') != std::string_view::npos;
    if (text.find(mark) != last) return std::string_view::npos; // 1.234.567: all thousands
    if (otherToo || text.size() - last - 1 != 3) return last;
    return (mark == ',') == decimalComma ? last : std::string_view::npos;
}

} // namespace

Pieces parsePieces(std::string_view text, bool decimalComma) {
    text = trimmed(text);
    // The commonest by far: a few digits.
    if (!text.empty() && text.size() <= 5 && std::all_of(text.begin(), text.end(), digit)) {
        int count = 0;
        for (const char c : text) count = count * 10 + (c - '0');
        return {Pieces::Kind::Whole, count};
    }
    bool negative = false;
    if (text.size() > 2 && text.front() == '(' && text.back() == ')') {
        negative = true;
        text = trimmed(text.substr(1, text.size() - 2));
    } else if (text.starts_with("\xE2\x88\x92")) { // U+2212, the minus of typesetters
        negative = true;
        text.remove_prefix(3);
    } else if (!text.empty() && (text.front() == '-' || text.front() == '+')) {
        negative = text.front() == '-';
        text.remove_prefix(1);
    } else if (!text.empty() && text.back() == '-') {
        negative = true;
        text.remove_suffix(1);
    }
    text = trimmed(text);
    const std::size_t mark = decimalMark(text, decimalComma);
    const std::string_view whole = text.substr(0, mark);
    const std::string_view part = mark == std::string_view::npos ? std::string_view{} : text.substr(mark + 1);
    if (!std::all_of(part.begin(), part.end(), digit) || (whole.empty() && part.empty())) return {};

    // Thousands: groups of three behind the first, parted by one kind of mark.
    std::int64_t count = 0;
    std::size_t group = 0;
    std::string_view thousands;
    bool grouped = false;
    for (std::size_t i = 0; i < whole.size(); ++i) {
        if (digit(whole[i])) {
            count = std::min<std::int64_t>(count * 10 + (whole[i] - '0'), std::int64_t{1} << 40);
            ++group;
            continue;
        }
        std::string_view here = whole.substr(i, 1);
        if (whole.substr(i, 2) == "\xC2\xA0") here = whole.substr(i, 2);     // no-break space
        if (whole.substr(i, 3) == "\xE2\x80\xAF") here = whole.substr(i, 3); // narrow no-break space
        if (whole.substr(i, 3) == "\xE2\x80\x99") here = whole.substr(i, 3); // typographic apostrophe
        if (here.size() == 1 && std::string_view(" '.,").find(here[0]) == std::string_view::npos) return {};
        if (group == 0 || group > 3 || (grouped && (group != 3 || here != thousands))) return {};
        grouped = true;
        thousands = here;
        group = 0;
        i += here.size() - 1;
    }
    if (grouped && group != 3) return {};
    if (std::any_of(part.begin(), part.end(), [](char c) { return c != '0'; })) return {Pieces::Kind::Part, 0};
    if (count > kMostInARow) return {Pieces::Kind::Absurd, 0};
    return {Pieces::Kind::Whole, static_cast<int>(negative ? -count : count)};
}

} // namespace piewright::sales
