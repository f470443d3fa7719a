// The shops the tests read, and ways to break them.
#pragma once

#include "book/read.h"

#include <string>

namespace piewright::book {

/// The demo house and the corner shop, as texts.
Texts ropewalk();
Texts cornerShop();
/// Every *.toml of a folder below the project's.
Texts textsOf(const std::string& folder);

/// The texts with `from` replaced by `to` in a file, where `from` must stand exactly once.
Texts with(Texts texts, const std::string& file, const std::string& from, const std::string& to);
/// The texts with `more` after the file's end.
Texts withMore(Texts texts, const std::string& file, const std::string& more);

/// All findings of reading, one a line.
std::string findings(const Texts& texts);
std::string findings(const Result<ReadBook>& read);
/// The same, without the warnings.
std::string errors(const Texts& texts);
/// The book of texts that must read without an error.
Book bookOf(const Texts& texts);

} // namespace piewright::book
