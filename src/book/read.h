// The book's files in and out. One TOML file for each kind of thing; docs/formats/book.md has every key.
#pragma once

#include "book/book.h"
#include "finding/result.h"

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace piewright::book {

/// File name (`goods.toml`) to its text.
using Texts = std::map<std::string, std::string>;

struct ReadBook {
    Book book;
    std::vector<Finding> warnings;
};

/// Reads every `*.toml` of a folder. Faults: World when the folder or a file can't be read, Input for anything wrong in
/// them. At most 4 MiB a file and 64 files.
Result<ReadBook> readFolder(const std::filesystem::path& folder);

/// The same from texts. Every problem of every file is reported at once.
Result<ReadBook> readTexts(const Texts& texts);

/// The book as texts that read back to an equal book; printing that again gives the same texts.
[[nodiscard]] Texts printTexts(const Book& book);

} // namespace piewright::book
