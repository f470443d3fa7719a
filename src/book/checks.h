// What must hold between the parts of a book. A list of small checks, each looking at the whole book.
#pragma once

#include "book/book.h"
#include "book/report.h"
#include "book/sources.h"

#include <span>
#include <string>
#include <string_view>

namespace piewright::book {

/// What a check looks at and reports to.
struct Checking {
    const Book& book;
    const Sources& sources;
    Report& report;

    void error(std::string_view file, const std::string& path, std::string saw, std::string want,
               std::string hint = {}) const {
        report.error(sources.place(file, path), std::move(saw), std::move(want), std::move(hint));
    }
    void warning(std::string_view file, const std::string& path, std::string saw, std::string want,
                 std::string hint = {}) const {
        report.warning(sources.place(file, path), std::move(saw), std::move(want), std::move(hint));
    }
    /// Everything that stands at the path could be read, so that what is missing there is missing.
    [[nodiscard]] bool sound(const std::string& path) const { return report.sound(path); }
};

using Check = void (*)(const Checking&);

/// Every name that one part of the book uses stands in the part it belongs to. What a file that could not be read might
/// hold is not reported.
void checkReferences(const Checking& checking);

/// Every check, in the order they are made: references first, since the others walk along them.
[[nodiscard]] std::span<const Check> allChecks();

} // namespace piewright::book
