#include "sales/fold.h"

namespace piewright::sales {

namespace {

constexpr std::string_view kNoBreak = "\xC2\xA0";

bool space(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }

} // namespace

std::string_view trimmed(std::string_view text) {
    for (;;) {
        if (!text.empty() && space(text.front())) {
            text.remove_prefix(1);
        } else if (!text.empty() && space(text.back())) {
            text.remove_suffix(1);
        } else if (text.starts_with(kNoBreak)) {
            text.remove_prefix(2);
        } else if (text.ends_with(kNoBreak)) {
            text.remove_suffix(2);
        } else {
            return text;
        }
    }
}

std::string fold(std::string_view text) {
    text = trimmed(text);
    std::string folded;
    folded.reserve(text.size());
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        const bool noBreak = text.substr(i, 2) == kNoBreak;
        if (noBreak) ++i;
        if (space(c) || noBreak) {
            if (folded.back() != ' ') folded += ' ';
        } else if (c >= 'A' && c <= 'Z') {
            folded += static_cast<char>(c - 'A' + 'a');
        } else {
            folded += c;
            // À to Þ but the multiplication sign: U+00C0 to U+00DE, small letters 32 further on
            if (c == '\xC3' && i + 1 < text.size()) {
                const auto next = static_cast<unsigned char>(text[++i]);
                folded += static_cast<char>(next >= 0x80 && next <= 0x9E && next != 0x97 ? next + 0x20 : next);
            }
        }
    }
    return folded;
}

} // namespace piewright::sales
