// What other people's programs say about a PDF: poppler's pdftotext, pdfinfo and pdffonts (package poppler-utils).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace piewright::testing {

/// Output of a program given the file, or nothing when the program is not installed.
[[nodiscard]] std::optional<std::string> pdfToText(std::string_view pdf);
[[nodiscard]] std::optional<std::string> pdfInfo(std::string_view pdf);
[[nodiscard]] std::optional<std::string> pdfFonts(std::string_view pdf);

struct Word {
    int page = 0;
    double pageWidth = 0, pageHeight = 0;
    double left = 0, top = 0, right = 0, bottom = 0;
    std::string text;
};
/// Every word with its box, in points from the page's top left corner.
[[nodiscard]] std::optional<std::vector<Word>> pdfWords(std::string_view pdf);

} // namespace piewright::testing
