// Text for a terminal: how many columns it takes, and tables that keep to so many.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace piewright::print {

enum class Side { Left, Right };

/// Columns of a terminal: wide letters take two, combining marks none (Unicode annex 11, as GLib has it).
[[nodiscard]] std::size_t columnsOf(const std::string& text);

/// Filled with spaces to `width` columns; longer text is left as it is.
[[nodiscard]] std::string padded(const std::string& text, std::size_t width, Side side = Side::Left);

/// Lines of at most `width` columns (at least 2), broken at spaces, or inside a word that is longer than a line.
/// At least one line, which may be empty.
[[nodiscard]] std::vector<std::string> wrapped(const std::string& text, std::size_t width);

/// A table in columns two spaces apart. Columns that `wrap` give way when the table is too wide; when even that is not
/// enough each row is told as `head: text` lines.
class TextTable {
  public:
    struct Column {
        std::string head;
        Side side = Side::Left;
        bool wraps = false;
    };
    explicit TextTable(std::vector<Column> columns) : columns_(std::move(columns)) {}
    /// One cell for each column.
    void add(const std::vector<std::string>& cells);
    /// The same, a cell being lines one below the other.
    void addLines(std::vector<std::vector<std::string>> cells);
    /// Every line ends with a line break and is at most `width` columns.
    [[nodiscard]] std::string print(std::size_t width) const;

  private:
    [[nodiscard]] std::vector<std::size_t> widths(std::size_t width) const;
    [[nodiscard]] std::string stacked(std::size_t width) const;
    std::vector<Column> columns_;
    std::vector<std::vector<std::vector<std::string>>> rows_; // row, cell, line
};

} // namespace piewright::print
