// What each verb does once its arguments are read. Each prints to `out` for people or, with `json`, for programs; what
// is refused goes to `err` (or to `out` as JSON), and the exit code says whose fault it is.
#pragma once

#include "finding/result.h"
#include "sales/import.h"

#include <filesystem>
#include <iosfwd>
#include <optional>
#include <string>

namespace piewright::cli {

struct Streams {
    std::ostream& out;
    std::ostream& err;
    bool json = false;
};

struct SalesOptions {
    std::filesystem::path file;    ///< empty: sales.csv in the house's folder
    std::filesystem::path mapping; ///< empty: till.toml in the house's folder, if there
    sales::Columns columns;
};

struct CheckOptions {
    std::filesystem::path house;
};

struct WeighOptions {
    std::filesystem::path house;
    std::string what; ///< a good or a formula
    std::optional<int> pieces;
    std::string make; ///< a weight, for a formula
};

struct SalesReportOptions {
    std::filesystem::path house;
    SalesOptions sales;
};

struct PlanOptions {
    std::filesystem::path house;
    SalesOptions sales;
    std::string date; ///< empty: the next open date after the last sale
    std::uint64_t seed = 1;
    std::uint64_t work = 2'000'000;
    std::filesystem::path planFile; ///< where the plan is written as JSON, if anywhere
    std::filesystem::path pdf;      ///< where its sheets are written, if anywhere
};

struct SheetOptions {
    std::filesystem::path plan;
    std::filesystem::path pdf; ///< empty: text to the terminal
    std::string only;          ///< `day`, `cards`, `ovens`, or empty for all
};

int check(const CheckOptions& options, const Streams& streams);
int weigh(const WeighOptions& options, const Streams& streams);
int salesReport(const SalesReportOptions& options, const Streams& streams);
int plan(const PlanOptions& options, const Streams& streams);
int sheet(const SheetOptions& options, const Streams& streams);

/// Tells what is wrong and returns the exit code for it.
int refuse(const Problems& problems, const Streams& streams);

/// A file's whole text; at most `most` bytes. Faults: World when it can't be read, Input when it is larger.
Result<std::string> readWhole(const std::filesystem::path& file, std::size_t most);

} // namespace piewright::cli
