// Writes the book's TOML, one file at a time.
#pragma once

#include "book/value.h"

#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

namespace piewright::book {

/// The keys of one table, in the order given, as lines or as an inline table.
class Entries {
  public:
    void putRaw(std::string_view key, std::string toml) { entries_.emplace_back(key, std::move(toml)); }

    template <class T> void put(std::string_view key, const T& value) { putRaw(key, writeValue(value)); }
    template <class T> void put(std::string_view key, const std::optional<T>& value) {
        if (value) put(key, *value);
    }
    /// Unless it is what a reader takes for a missing key.
    template <class T> void putUnless(std::string_view key, const T& value, const std::type_identity_t<T>& usual) {
        if (!(value == usual)) put(key, value);
    }
    /// Unless empty.
    void putText(std::string_view key, const std::string& text) {
        if (!text.empty()) put(key, text);
    }
    template <class T> void putList(std::string_view key, const std::vector<T>& values) {
        if (values.empty()) return;
        std::vector<std::string> items;
        items.reserve(values.size());
        for (const T& value : values) items.push_back(writeValue(value));
        putRaw(key, listOf(items));
    }
    /// Texts, one a line.
    void putLines(std::string_view key, const std::vector<std::string>& texts);
    /// Inline tables, one a line.
    void putTables(std::string_view key, const std::vector<Entries>& tables);

    [[nodiscard]] bool empty() const { return entries_.empty(); }
    [[nodiscard]] std::string lines() const;       ///< `key = value`, each on its line
    [[nodiscard]] std::string inlineTable() const; ///< `{ key = value, … }`
    [[nodiscard]] static std::string listOf(const std::vector<std::string>& items);

  private:
    std::vector<std::pair<std::string, std::string>> entries_;
};

/// A file as a sequence of tables.
class Writer {
  public:
    void table(const std::string& header, const Entries& entries);     ///< `[header]`
    void listTable(const std::string& header, const Entries& entries); ///< `[[header]]`
    [[nodiscard]] std::string take() { return std::move(text_); }

  private:
    void start(const std::string& header);
    std::string text_;
};

} // namespace piewright::book
