// The book's files as they were given: which were there, which could be read, and where each key stands.
#pragma once

#include "book/read.h"
#include "book/report.h"
#include "toml/node.h"

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace piewright::book {

using toml::Node;

/// Bounds on what is read at all.
inline constexpr std::size_t kMostFileBytes = std::size_t{4} << 20U;
inline constexpr std::size_t kMostFiles = 64;

class Sources {
  public:
    /// Parses every file of the book; reports what is not TOML, missing, or no file of a book.
    Sources(const Texts& texts, Report& report);

    /// The file's top table; nothing when it is missing or not TOML.
    [[nodiscard]] const Node* root(std::string_view file) const;
    /// Whether all that the file should hold is known: false when it is not TOML, or missing from a book that needs it.
    /// Then what is not found in it may well be in there, and its absence has been reported already.
    [[nodiscard]] bool known(std::string_view file) const { return !unknown_.contains(file); }

    /// Where a dotted path such as `good.beef-pie.deposits[1].weight` stands, or the deepest part of it that stands.
    [[nodiscard]] Place place(std::string_view file, const std::string& path) const;

  private:
    std::map<std::string, Node, std::less<>> roots_;
    std::set<std::string, std::less<>> unknown_;
};

} // namespace piewright::book
