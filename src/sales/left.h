// Rows left out, gathered by reason in bounded memory.
#pragma once

#include "csv/reader.h"
#include "sales/import.h"

#include <cstddef>
#include <map>
#include <string>
#include <vector>

namespace piewright::sales {

/// The reasons in the order met; at most 100 apart, what is beyond shares one.
class LeftRows {
  public:
    void add(const std::string& why, const csv::Row& row);
    /// Rows that were counted first and turn out to be left.
    void add(const LeftOut& out);

    /// Most rows first, then by first line.
    [[nodiscard]] std::vector<LeftOut> byRows() const;

  private:
    std::vector<LeftOut> reasons_;
    std::map<std::string, std::size_t> place_;
};

/// The row's fields for people, cut to 100 bytes at a letter's end.
[[nodiscard]] std::string exampleOf(const csv::Row& row);
/// A field for people in quotes, cut to 40 bytes at a letter's end.
[[nodiscard]] std::string shown(std::string_view field);

} // namespace piewright::sales
