// Reads delimited text (RFC 4180 and its cousins) as a stream, in bounded memory.
#pragma once

#include "finding/result.h"

#include <functional>
#include <istream>
#include <string>
#include <string_view>
#include <vector>

namespace piewright::csv {

/// How a file writes its rows.
struct Dialect {
    char delimiter = ',';
    bool decimalComma = false;
    bool latin1 = false; ///< else UTF-8, with or without a byte order mark
    bool header = true;
};

/// Guesses the dialect from the first part of a file (at most 64 KiB are looked at).
/// Problem: empty, binary, or no delimiter that gives rows of the same width.
Result<Dialect> detect(std::string_view beginning);

/// One row as it stands in the file. Views live until the next row.
struct Row {
    std::size_t line = 0; ///< first line of the row in the file, from 1
    std::vector<std::string_view> fields; ///< unquoted, UTF-8
};

/// Gives each row to `take`, which returns false to stop. Quoted fields may hold delimiters, doubled quotes and line
/// ends; CR LF, LF and CR end a row; empty lines are passed over. A field is at most 64 KiB, a row at most 4,096 fields.
/// Problem: an unclosed quote (with the line it opened on), too long, NUL bytes, a read error (Fault::World).
/// Returns the number of rows given.
Result<std::size_t> read(std::istream& in, const Dialect& dialect, const std::function<bool(const Row&)>& take);

} // namespace piewright::csv
