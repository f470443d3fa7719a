#include "print/columns.h"

#include "print/words.h"

#include <algorithm>
#include <glib.h>

namespace piewright::print {

namespace {

constexpr std::size_t kGap = 2;
constexpr std::size_t kNarrowest = 10; // a wrapping column gives way no further

std::size_t columnsOf(gunichar letter) {
    if (g_unichar_iszerowidth(letter)) return 0;
    return g_unichar_iswide(letter) ? 2 : 1;
}

void trimRight(std::string& text) {
    while (!text.empty() && text.back() == ' ') text.pop_back();
}

std::string row(const std::vector<std::vector<std::string>>& cells, const std::vector<TextTable::Column>& columns,
                const std::vector<std::size_t>& widths) {
    std::vector<std::vector<std::string>> lines;
    std::size_t height = 1;
    for (std::size_t c = 0; c < cells.size(); ++c) {
        lines.emplace_back();
        for (const std::string& line : cells[c])
            for (std::string& part : wrapped(line, widths[c])) lines.back().push_back(std::move(part));
        height = std::max(height, lines.back().size());
    }
    std::string text;
    for (std::size_t l = 0; l < height; ++l) {
        std::string line;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            if (c > 0) line.append(kGap, ' ');
            line += padded(l < lines[c].size() ? lines[c][l] : "", widths[c], columns[c].side);
        }
        trimRight(line);
        text += line + '\n';
    }
    return text;
}

} // namespace

std::size_t columnsOf(const std::string& text) {
    std::size_t columns = 0;
    for (const char* at = text.c_str(); *at != '\0'; at = g_utf8_next_char(at))
        columns += columnsOf(g_utf8_get_char(at));
    return columns;
}

std::string padded(const std::string& text, std::size_t width, Side side) {
    const std::size_t taken = columnsOf(text);
    if (taken >= width) return text;
    const std::string space(width - taken, ' ');
    return side == Side::Left ? text + space : space + text;
}

std::vector<std::string> wrapped(const std::string& text, std::size_t width) {
    width = std::max<std::size_t>(width, 2);
    std::vector<std::string> lines;
    std::string line;
    std::size_t taken = 0;
    const auto close = [&] {
        trimRight(line);
        lines.push_back(std::move(line));
        line.clear();
        taken = 0;
    };
    const char* at = text.c_str();
    while (*at != '\0') {
        while (*at == ' ') ++at;
        if (*at == '\0') break;
        const char* end = at;
        std::size_t word = 0;
        while (*end != '\0' && *end != ' ') {
            word += columnsOf(g_utf8_get_char(end));
            end = g_utf8_next_char(end);
        }
        if (taken > 0 && taken + 1 + word > width) close();
        if (taken > 0) line += ' ', ++taken;
        for (; at != end; at = g_utf8_next_char(at)) {
            const std::size_t letter = columnsOf(g_utf8_get_char(at));
            if (taken + letter > width) close();
            const char* next = g_utf8_next_char(at);
            line.append(at, next);
            taken += letter;
        }
    }
    if (!line.empty() || lines.empty()) close();
    return lines;
}

void TextTable::add(const std::vector<std::string>& cells) {
    std::vector<std::vector<std::string>> lines;
    lines.reserve(cells.size());
    for (const std::string& cell : cells) lines.push_back({cell});
    addLines(std::move(lines));
}

void TextTable::addLines(std::vector<std::vector<std::string>> cells) {
    for (std::vector<std::string>& lines : cells)
        for (std::string& line : lines) line = clean(line);
    cells.resize(columns_.size());
    rows_.push_back(std::move(cells));
}

std::vector<std::size_t> TextTable::widths(std::size_t width) const {
    std::vector<std::size_t> widths;
    std::size_t total = kGap * (columns_.size() - 1);
    for (std::size_t c = 0; c < columns_.size(); ++c) {
        std::size_t most = columnsOf(columns_[c].head);
        for (const auto& cells : rows_)
            for (const std::string& line : cells[c]) most = std::max(most, columnsOf(line));
        widths.push_back(most);
        total += most;
    }
    while (total > width) {
        std::size_t widest = columns_.size();
        for (std::size_t c = 0; c < columns_.size(); ++c)
            if (columns_[c].wraps && widths[c] > kNarrowest &&
                (widest == columns_.size() || widths[c] > widths[widest]))
                widest = c;
        if (widest == columns_.size()) return {};
        --widths[widest];
        --total;
    }
    return widths;
}

std::string TextTable::stacked(std::size_t width) const {
    std::string text;
    for (const auto& cells : rows_) {
        for (std::size_t c = 0; c < cells.size(); ++c) {
            std::string head = columns_[c].head.empty() ? "" : columns_[c].head + ": ";
            for (const std::string& line : cells[c]) {
                if (line.empty()) continue;
                for (const std::string& part : wrapped(head + line, width)) text += part + '\n';
                head.clear();
            }
        }
        text += '\n';
    }
    return text;
}

std::string TextTable::print(std::size_t width) const {
    const std::vector<std::size_t> fitted = widths(width);
    if (fitted.empty()) return stacked(width);
    std::vector<std::vector<std::string>> heads;
    heads.reserve(columns_.size());
    for (const Column& column : columns_) heads.push_back({column.head});
    std::string text;
    const bool headless =
        std::all_of(heads.begin(), heads.end(), [](const auto& head) { return head.front().empty(); });
    if (!headless) text += row(heads, columns_, fitted);
    for (const auto& cells : rows_) text += row(cells, columns_, fitted);
    return text;
}

} // namespace piewright::print
