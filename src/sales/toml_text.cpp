#include "sales/toml_text.h"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <string>
#include <utility>

namespace piewright::sales {

namespace {

constexpr std::size_t kMostPointsOnALine = 200;

bool bareOrQuote(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-' ||
           c == '"' || c == '\'';
}

class Walk {
  public:
    explicit Walk(std::string_view text) : text_(text) {}

    std::optional<Finding> first() {
        if (text_.starts_with("\xEF\xBB\xBF")) at_ = 3;
        while (at_ < text_.size() && !found_) step();
        return found_;
    }

  private:
    [[nodiscard]] bool here(std::string_view what) const { return text_.substr(at_, what.size()) == what; }

    void refuse(std::string saw, std::string want) {
        const std::size_t start = text_.substr(0, at_).rfind('\n');
        const std::size_t column = start == std::string_view::npos ? at_ + 1 : at_ - start;
        constexpr std::size_t kMost = std::numeric_limits<int>::max();
        found_ = Finding{{{}, static_cast<int>(std::min(line_, kMost)), static_cast<int>(std::min(column, kMost)), {}},
                         std::move(saw),
                         std::move(want),
                         {},
                         Severity::Error};
    }

    void newLine() {
        ++line_;
        points_ = 0;
        lineBegins_ = true;
        afterEquals_ = false;
    }

    /// Inside a bare word the library takes a quote for a letter of it, and what follows for outside.
    [[nodiscard]] bool stringMayBegin() const {
        std::size_t before = at_;
        if (before == 0 || std::string_view(" \t\r\n=,\xBF").find(text_[before - 1]) != std::string_view::npos)
            return true;
        if (text_[before - 1] == '.') return !afterEquals_; // a."b" is a key
        while (before > 0 && std::string_view("[{ \t").find(text_[before - 1]) != std::string_view::npos) --before;
        return before < at_ &&
               (before == 0 || std::string_view("\r\n=,\xBF").find(text_[before - 1]) != std::string_view::npos);
    }

    /// One letter outside, or a whole comment or string.
    void step() {
        const char c = text_[at_];
        if (c == '\n') {
            newLine();
            ++at_;
        } else if (c == '#') {
            at_ = std::min(text_.find('\n', at_), text_.size());
        } else if (c == '"' || c == '\'') {
            lineBegins_ = false;
            if (stringMayBegin())
                string(c);
            else
                refuse("a quote inside a word", "the whole word in quotes");
        } else if (static_cast<unsigned char>(c) >= 0x80) {
            refuse("a letter beyond a to z outside quotes", "the word in quotes");
        } else if ((c < 0x20 && c != '\t' && c != '\r') || c == 0x7F) {
            refuse("a control character", "a text file");
        } else if (c == '[' && lineBegins_) {
            lineBegins_ = false;
            tableName();
        } else {
            if (c != ' ' && c != '\t') lineBegins_ = false;
            if (c == '=') afterEquals_ = true;
            if (c == '.' && ++points_ > kMostPointsOnALine)
                refuse("more than 200 points on one line", "lines such as \"Beef & Onion Pie\" = \"beef-pie\"");
            ++at_;
        }
    }

    void tableName() {
        for (int bracket = 0; bracket < 2 && at_ < text_.size() && text_[at_] == '['; ++bracket) {
            ++at_;
            while (at_ < text_.size() && (text_[at_] == ' ' || text_[at_] == '\t')) ++at_;
        }
        if (at_ == text_.size() || bareOrQuote(text_[at_]) || text_[at_] == ']') return;
        if (static_cast<unsigned char>(text_[at_]) < 0x80)
            refuse("a table's name that begins with neither letter, digit nor quote", "a name such as [items]");
    }

    void string(char quote) {
        const std::string three(3, quote);
        const bool many = here(three);
        at_ += many ? 3 : 1;
        while (at_ < text_.size()) {
            const char c = text_[at_];
            if (c == '\\' && quote == '"') {
                const std::size_t next = text_.find_first_not_of(" \t\r\n", at_ + 1);
                if (next != std::string_view::npos && static_cast<unsigned char>(text_[next]) >= 0x80) {
                    refuse("a letter beyond a to z behind a backslash", "the letter without the backslash");
                    return;
                }
                at_ += 2;
                // The line after an escaped line end counts as one.
                if (at_ - 1 < text_.size() && text_[at_ - 1] == '\n') newLine();
                continue;
            }
            if (c == '\n') {
                newLine();
                // Unclosed: what follows is outside again, and the library says what is wrong.
                if (!many) {
                    ++at_;
                    return;
                }
            }
            if (many && here(three)) {
                at_ += 3;
                // Up to two quotes may stand before the closing three.
                for (int i = 0; i < 2 && at_ < text_.size() && text_[at_] == quote; ++i) ++at_;
                lineBegins_ = false;
                return;
            }
            if (!many && c == quote) {
                ++at_;
                return;
            }
            ++at_;
        }
        at_ = text_.size();
    }

    std::string_view text_;
    std::size_t at_ = 0;
    std::size_t line_ = 1;
    std::size_t points_ = 0;
    bool lineBegins_ = true;
    bool afterEquals_ = false;
    std::optional<Finding> found_;
};

} // namespace

std::optional<Finding> unfitForToml(std::string_view text) { return Walk(text).first(); }

} // namespace piewright::sales
