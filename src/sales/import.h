// Any till's CSV into sales history, with a report of what was taken, what was left, and why.
#pragma once

#include "csv/reader.h"
#include "demand/history.h"
#include "finding/result.h"
#include "units/civil.h"
#include "units/id.h"

#include <filesystem>
#include <istream>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace piewright::sales {

/// Which column holds what; each is recognised from its name and content when not given. Names as in the header line,
/// or `#3` for the third column of a file without one.
struct Columns {
    std::optional<std::string> when; ///< date, or date and time
    std::optional<std::string> time; ///< when it stands apart from the date
    std::optional<std::string> item;
    std::optional<std::string> quantity; ///< none in the file: each line is one piece
    std::optional<std::string> soldOut;  ///< 0/1, yes/no, or the time of selling out
    std::optional<bool> dayFirst;        ///< how to read 03/04/2026; settled by the whole file when not given
    std::optional<Zone> zone;            ///< the shop's: times written with Z or an offset are brought to it
};

/// The till's words for our goods: one TOML table `[items]` of "till name" = "good", or "" for what is no good of ours.
struct Mapping {
    std::map<std::string, GoodId> goods;
    std::set<std::string> ignored;
};
/// Checks the goods' names against `known`; every problem with line and column.
Result<Mapping> readMapping(const std::string& file, const std::string& text, const std::set<GoodId>& known);

/// Rows left out for one reason. At most 100 reasons are kept apart; what is beyond shares one.
struct LeftOut {
    std::string why; ///< `no such date`, `item not mapped: "Large tea"`, …
    std::size_t rows = 0;
    std::size_t firstLine = 0;
    std::string example;
};

struct Report {
    csv::Dialect dialect;
    std::string dateForm; ///< `day/month/year`, …: as recognised
    std::string whenColumn, timeColumn, itemColumn, quantityColumn, soldOutColumn;
    std::size_t rows = 0;
    std::size_t taken = 0;
    std::size_t returns = 0;     ///< taken, negative
    std::size_t dailyTotals = 0; ///< taken, without a time of day
    std::vector<LeftOut> left;   ///< most rows first
    std::size_t flooredDays = 0; ///< good-days whose returns exceeded sales, counted as nothing sold
    std::size_t shutDays = 0;    ///< dates on which the file shows nothing sold of any of several items: taken as shut
    std::vector<std::string> notes; ///< what was assumed, for people
    std::optional<Date> first, last;
};

struct Imported {
    demand::History history;
    Report report;
};

/// Streams the file: memory grows with goods and dates, not with lines. Items that equal a good's id or name (case
/// aside) need no mapping. A day/month order that the whole file leaves open is refused with a hint. A returned piece
/// is taken off the same day's earlier sales (then later ones), so that no quarter-hour is negative and the
/// quarter-hours sum to the day's total. A good's day has quarter-hours only if every row of it has a time. Faults:
/// Input when no column can be recognised or nothing could be taken; World when it can't be read.
Result<Imported> importFile(const std::filesystem::path& file, const Columns& columns, const Mapping& mapping,
                            const std::map<GoodId, std::string>& goods);
Result<Imported> importStream(std::istream& in, const std::string& file, const Columns& columns, const Mapping& mapping,
                              const std::map<GoodId, std::string>& goods);

/// The report for people.
[[nodiscard]] std::string toText(const Report& report);

} // namespace piewright::sales
