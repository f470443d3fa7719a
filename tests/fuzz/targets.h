// One function per fuzz target, so that a fuzzer and a plain test run the same code. Each ends the process when a
// promise is broken.
#pragma once

#include <string>

namespace piewright::fuzz {

/// Any bytes as a till's file: dialect, rows, columns, history, report.
void importOf(const std::string& bytes);

/// Any bytes as a mapping file.
void mappingOf(const std::string& bytes);

/// Any bytes as the files of a book, each under a line `=== NAME`: read, and printed and read again where it is a book.
void bookOf(const std::string& bytes);

} // namespace piewright::fuzz
