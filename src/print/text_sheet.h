// The sheets as text, one function each. Lines are at most `width` columns.
#pragma once

#include "day/plan.h"
#include "print/columns.h"
#include "print/words.h"

#include <string>
#include <vector>

namespace piewright::print {

/// Lines of text gathered to one width.
class TextSheet {
  public:
    /// At least twenty columns, whatever is asked.
    explicit TextSheet(int width);
    void heading(const std::string& text); ///< an empty line, the words, a rule below them
    void line(const std::string& text, const std::string& indent = "", const std::string& hanging = "");
    void blank(); ///< one empty line, never two
    void table(const TextTable& table);
    [[nodiscard]] std::string take() && { return std::move(text_); }

  private:
    std::size_t width_;
    std::string text_;
};

void writePieces(TextSheet& sheet, const std::vector<day::PiecesLine>& pieces);
void writeNeeded(TextSheet& sheet, const std::vector<day::Needed>& needed);
void writeCards(TextSheet& sheet, const std::vector<day::WeighCard>& cards);
void writeDay(TextSheet& sheet, const day::Plan& plan, const Times& times);
void writeOvens(TextSheet& sheet, const day::Plan& plan, const Times& times);

} // namespace piewright::print
