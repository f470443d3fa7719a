// Sheets on paper: the day sheet, a weigh card for each mix, the oven sheet.
#pragma once

#include "day/plan.h"
#include "finding/result.h"

#include <filesystem>
#include <string>

namespace piewright::print {

struct Sheets {
    bool day = true;
    bool cards = true;
    bool ovens = true;
};

/// For a terminal or a text file, at most `width` columns.
[[nodiscard]] std::string asText(const day::Plan& plan, const Sheets& which = {}, int width = 100);

/// PDF bytes on the plan's paper. The same plan gives the same bytes. Problem: fonts or the PDF library fail (World),
/// letters that no font has (Input, with the text).
Result<std::string> asPdf(const day::Plan& plan, const Sheets& which = {});

/// Writes bytes to a file, whole or not at all (a new file beside it, then renamed).
Result<std::filesystem::path> writeWhole(const std::filesystem::path& file, std::string_view bytes);

} // namespace piewright::print
