// Pieces by good, date and quarter-hour while a file streams by. A date is kept as written until the whole file has
// shown how its dates are to be read.
#pragma once

#include "demand/history.h"
#include "sales/import.h"
#include "sales/left.h"
#include "sales/when.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace piewright::sales {

/// One row's worth: so many pieces of a good.
struct Sale {
    std::size_t date = 0; ///< of Tally::dateOf
    int good = 0;         ///< place among the goods
    int pieces = 0;
    int minute = -1; ///< of the day; -1: not known
    bool soldOut = false;
    int soldOutMinute = -1; ///< -1: not known
};

class Tally {
  public:
    static constexpr std::size_t kNoDate = std::numeric_limits<std::size_t>::max();

    explicit Tally(std::size_t goods) : goods_(goods) {}

    /// The place of a date by its text, or kNoDate. The same text costs one look-up.
    [[nodiscard]] std::size_t dateOf(std::string_view text);
    /// The place of a known date (after a time zone moved it).
    [[nodiscard]] std::size_t dateOf(Date date);
    /// The date of a place, if no order of day and month is open there.
    [[nodiscard]] std::optional<Date> certain(std::size_t date) const;

    /// False when the file has more good-days than can be kept.
    [[nodiscard]] bool add(const Sale& sale, const csv::Row& row);
    /// A row that names an open date though nothing of ours was sold in it.
    void open(std::size_t date) { dates_[date].sold = true; }

    /// Reads the dates by the given order, or by what the file shows; fills history and the report's counts. Problem:
    /// the order of day and month stays open.
    Result<demand::History> history(const std::vector<GoodId>& goods, std::optional<bool> dayFirst, LeftRows& left,
                                    Report& report);

  private:
    struct DatePlace {
        DateText text;
        bool sold = false; // anything at all: the shop was open
        std::size_t rows = 0, returns = 0, untimed = 0, firstLine = 0;
        std::string example;
    };
    struct Cell {
        std::int64_t total = 0;
        std::array<std::int32_t, demand::kQuarters> quarters{};
        bool untimed = false;
        bool soldOut = false;
        int soldOutMinute = -1;
    };
    struct Hash {
        using is_transparent = void;
        std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>{}(text); }
    };
    using Places = std::unordered_map<std::string, std::size_t, Hash, std::equal_to<>>; // never iterated

    void into(std::map<Date, Cell>& days, Date date, const Cell& cell) const;

    std::size_t goods_;
    Places places_;
    std::string lastText_;
    std::size_t last_ = kNoDate;
    std::map<Date, std::size_t> byDate_;
    std::vector<DatePlace> dates_;
    std::vector<std::uint32_t> cellOf_; // date x good; 0: none yet, else one more than its place
    std::vector<Cell> cells_;
    bool timesSeen_ = false; // any time but midnight: a file of dates exported with 00:00 has no times
};

} // namespace piewright::sales
