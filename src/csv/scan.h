// Splits a block of text into rows: the one place that knows quotes and line ends.
#pragma once

#include "csv/reader.h"

#include <array>
#include <string>

namespace piewright::csv {

enum class Scanned {
    Row,     ///< one row, in `row()`
    More,    ///< the block ends inside a row
    End,     ///< the block ends between rows
    Problem, ///< `problem()` says what
};

/// Reads rows off a block in place (doubled quotes are closed up inside it). The block is `[from, to)`, and `to` itself
/// is writable: a sentinel goes there. Give the same bytes again, followed by more, after `More`.
class Scan {
  public:
    Scan(char delimiter, bool latin1);

    /// The next row of the block; `from` moves past it. `last`: nothing follows the block.
    Scanned next(char*& from, char* to, bool last);

    [[nodiscard]] const Row& row() const { return row_; }
    [[nodiscard]] std::size_t line() const { return line_; } ///< where the next row starts, or the one cut off
    [[nodiscard]] const Finding& problem() const { return problem_; }

  private:
    struct Field {
        char* from;
        char* to;
        bool doubled; ///< holds doubled quotes
        bool high;    ///< holds bytes above 127
    };

    Scanned quoted(char*& at, char* to, bool last);
    Scanned unquoted(char*& at, char* to, bool last);
    Scanned refuse(std::size_t line, std::string saw, std::string want);
    void finish();

    char delimiter_;
    bool latin1_;
    std::array<bool, 256> ends_{}; // bytes that end an unquoted field
    std::size_t line_ = 1;         // where the next row starts
    std::size_t lineNow_ = 1;      // while a row is being read
    bool afterCr_ = false;         // an LF that follows belongs to the row before
    std::vector<Field> fields_;
    std::string converted_;
    Row row_;
    Finding problem_;
};

} // namespace piewright::csv
