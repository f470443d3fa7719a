// Reads delimited text (RFC 4180 and its cousins) as a stream, in bounded memory.
#pragma once

#include "finding/result.h"

#include <cstddef>
#include <functional>
#include <istream>
#include <string>
#include <string_view>
#include <vector>

namespace piewright::csv {

constexpr std::size_t kLongestField = std::size_t{64} * 1024; ///< bytes
constexpr std::size_t kLongestRow = std::size_t{1024} * 1024; ///< bytes
constexpr std::size_t kMostFields = 4096;                     ///< in one row
constexpr std::size_t kLookedAt = std::size_t{64} * 1024;     ///< bytes by which a dialect is guessed

/// How a file writes its rows.
struct Dialect {
    char delimiter = ',';
    bool decimalComma = false;
    bool latin1 = false; ///< else UTF-8, with or without a byte order mark
    bool header = true;
    std::size_t preamble = 0; ///< rows before the header or first row that are no part of the table, such as a title
};

/// Guesses the dialect from the first part of a file (at most 64 KiB are looked at). A text that fills them is taken to
/// be cut off. `latin1` covers Windows-1252, which holds the same letters.
/// Problem: empty, binary (UTF-16 and spreadsheets are named), or no delimiter that gives rows of the same width.
Result<Dialect> detect(std::string_view beginning);

/// One row as it stands in the file. Views live until the next row.
struct Row {
    std::size_t line = 0;                 ///< first line of the row in the file, from 1
    std::vector<std::string_view> fields; ///< unquoted, UTF-8
};

/// Gives each row to `take`, preamble and header too; `take` returns false to stop. Quoted fields may hold delimiters,
/// doubled quotes and line ends; a quote inside an unquoted field is an ordinary letter; spaces after a closing quote
/// are passed over. CR LF, LF and CR end a row; empty lines are passed over. A field is at most 64 KiB, a row at most 1
/// MiB and 4,096 fields. In a UTF-8 file a field that is not valid UTF-8 is read as Windows-1252. Problem: an unclosed
/// quote (with the line it opened on), text after a closing quote, too long, NUL bytes, a read error (Fault::World).
/// Rows before it have been given. Returns the number of rows given. Memory: twice the longest row and a fixed block.
Result<std::size_t> read(std::istream& in, const Dialect& dialect, const std::function<bool(const Row&)>& take);

/// The same, as if `beginning` stood before what is left of `in`: for a stream whose beginning was looked at.
Result<std::size_t> read(std::string_view beginning, std::istream& in, const Dialect& dialect,
                         const std::function<bool(const Row&)>& take);

} // namespace piewright::csv
