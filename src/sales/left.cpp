#include "sales/left.h"

#include <algorithm>

namespace piewright::sales {

namespace {

constexpr std::size_t kMostReasons = 100;
constexpr std::string_view kFurther = "further reasons, not told apart";

/// Without control characters, which would spoil a terminal, and whole letters only.
std::string cut(std::string_view text, std::size_t most) {
    const bool shorter = text.size() > most;
    if (shorter) {
        std::size_t end = most;
        while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
        text = text.substr(0, end);
    }
    std::string result(text);
    for (char& c : result)
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) c = ' ';
    return shorter ? result + "…" : result;
}

} // namespace

std::string exampleOf(const csv::Row& row) {
    std::string text;
    for (std::size_t i = 0; i < row.fields.size() && text.size() < 200; ++i) {
        if (i > 0) text += " | ";
        text += row.fields[i].substr(0, 200);
    }
    return cut(text, 100);
}

std::string shown(std::string_view field) { return '"' + cut(field, 40) + '"'; }

void LeftRows::add(const std::string& why, const csv::Row& row) {
    auto found = place_.find(why);
    if (found == place_.end() && place_.size() >= kMostReasons) found = place_.find(std::string(kFurther));
    if (found == place_.end()) {
        add({why, 1, row.line, exampleOf(row)});
        return;
    }
    ++reasons_[found->second].rows;
}

void LeftRows::add(const LeftOut& out) {
    const bool room = place_.contains(out.why) || place_.size() < kMostReasons;
    const std::string why = room ? out.why : std::string(kFurther);
    const auto [place, fresh] = place_.emplace(why, reasons_.size());
    if (fresh) {
        reasons_.push_back(out);
        reasons_.back().why = why;
        return;
    }
    LeftOut& known = reasons_[place->second];
    known.rows += out.rows;
    if (out.firstLine < known.firstLine) {
        known.firstLine = out.firstLine;
        known.example = out.example;
    }
}

std::vector<LeftOut> LeftRows::byRows() const {
    std::vector<LeftOut> sorted = reasons_;
    std::sort(sorted.begin(), sorted.end(), [](const LeftOut& a, const LeftOut& b) {
        if (a.rows != b.rows) return a.rows > b.rows;
        if (a.firstLine != b.firstLine) return a.firstLine < b.firstLine;
        return a.why < b.why;
    });
    return sorted;
}

} // namespace piewright::sales
