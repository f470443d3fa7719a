// Which column of a till's file holds what.
#pragma once

#include "csv/reader.h"
#include "sales/import.h"
#include "sales/items.h"

#include <optional>
#include <string>
#include <vector>

namespace piewright::sales {

/// The rows of a file's beginning, copied.
struct Sample {
    std::vector<std::string> header; ///< empty when the file has none
    std::vector<std::vector<std::string>> rows;
};

struct Found {
    std::size_t when = 0;
    std::optional<std::size_t> time;
    std::size_t item = 0;
    std::optional<std::size_t> quantity;
    std::optional<std::size_t> soldOut;
};

/// The columns named; the others by the header's words (English, German, French, Spanish) held against what stands in
/// them, else by what stands in them alone: dates, times, words that are known goods, small whole numbers. Problems: a
/// name that isn't there, no column of dates or of items, more than one that may be the quantity.
Result<Found> findColumns(const Sample& sample, const Columns& named, bool decimalComma, Items& items);

/// The column's name in the header, or `#3`.
[[nodiscard]] std::string nameOf(const Sample& sample, std::size_t column);

/// 0/1, yes/no and the like; nothing when it is none of these.
[[nodiscard]] std::optional<bool> parseYesNo(std::string_view text);

} // namespace piewright::sales
