#include "book/writer.h"

namespace piewright::book {

std::string Entries::listOf(const std::vector<std::string>& items) {
    std::string text = "[";
    for (const std::string& item : items) {
        if (text.size() > 1) text += ", ";
        text += item;
    }
    return text + ']';
}

void Entries::putLines(std::string_view key, const std::vector<std::string>& texts) {
    if (texts.empty()) return;
    std::string text = "[\n";
    for (const std::string& each : texts) text.append("  ").append(literal(each)).append(",\n");
    putRaw(key, text + ']');
}

void Entries::putTables(std::string_view key, const std::vector<Entries>& tables) {
    if (tables.empty()) return;
    std::string text = "[\n";
    for (const Entries& table : tables) text.append("  ").append(table.inlineTable()).append(",\n");
    putRaw(key, text + ']');
}

std::string Entries::lines() const {
    std::string text;
    for (const auto& [key, value] : entries_) text.append(key).append(" = ").append(value).append("\n");
    return text;
}

std::string Entries::inlineTable() const {
    std::string text = "{";
    for (const auto& [key, value] : entries_)
        text.append(text.size() > 1 ? ", " : " ").append(key).append(" = ").append(value);
    return text + " }";
}

void Writer::start(const std::string& header) {
    if (!text_.empty()) text_ += '\n';
    text_ += header + '\n';
}

void Writer::table(const std::string& header, const Entries& entries) {
    start('[' + header + ']');
    text_ += entries.lines();
}

void Writer::listTable(const std::string& header, const Entries& entries) {
    start("[[" + header + "]]");
    text_ += entries.lines();
}

} // namespace piewright::book
