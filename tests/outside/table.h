// A CSV file as lines under named columns.
#pragma once

#include "finding/result.h"

#include <filesystem>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace piewright::outside {

struct TableLine {
    int line = 0; ///< in the file, from 1
    std::vector<std::string> fields;
};

class Table {
  public:
    Table(std::string file, std::vector<std::string> columns) : file_(std::move(file)), columns_(std::move(columns)) {}

    [[nodiscard]] const std::string& file() const { return file_; }
    [[nodiscard]] const std::vector<TableLine>& lines() const { return lines_; }
    void add(TableLine line) { lines_.push_back(std::move(line)); }

    /// The field under a column; empty when there is no such column.
    [[nodiscard]] const std::string& at(const TableLine& line, std::string_view column) const;
    [[nodiscard]] const std::vector<std::string>& columns() const { return columns_; }

  private:
    std::string file_;
    std::vector<std::string> columns_;
    std::vector<TableLine> lines_;
};

/// Reads a comma-separated UTF-8 file whose first line names its columns, of at most 16 MiB. Every line must be as wide
/// as the first. Problems: World when the file can't be read, Input with every fault of it (the first 50).
Result<Table> readTable(const std::filesystem::path& path, std::initializer_list<std::string_view> needed);

} // namespace piewright::outside
