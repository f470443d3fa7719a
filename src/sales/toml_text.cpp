#include "sales/toml_text.h"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <string>
#include <utility>
#include <vector>

namespace piewright::sales {

namespace {

constexpr std::size_t kMostPointsOnALine = 200; // dotted keys nest without a limit in the library
constexpr std::size_t kDeepest = 16;

bool bare(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
}
bool in(std::string_view letters, char c) { return letters.find(c) != std::string_view::npos; }
bool beyondAscii(char c) { return static_cast<unsigned char>(c) >= 0x80; }

class Walk {
  public:
    explicit Walk(std::string_view text) : text_(text) {}

    std::optional<Finding> first() {
        if (text_.starts_with("\xEF\xBB\xBF")) at_ = 3;
        while (at_ < text_.size() && !found_) step();
        return found_;
    }

  private:
    enum class Expect { Key, Value, End };

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

    void refuseHere() {
        const char c = text_[at_];
        if (beyondAscii(c))
            refuse("a letter beyond a to z outside quotes", "the word in quotes");
        else if ((c < 0x20 && c != '\t' && c != '\n') || c == 0x7F)
            refuse("a control character", "a text file");
        else if (c == '\n')
            refuse("the line ends too soon", "a key, = and a value");
        else
            refuse(std::string("'") + c + "' in a place where it may not stand", "a key, = and a value");
    }

    void newLine() {
        if (open_.empty()) {
            if (inHead_ || expect_ == Expect::Value || keyBegun_) return refuseHere();
            expect_ = Expect::Key;
        } else if (open_.back() == '{') {
            return refuseHere();
        }
        ++line_;
        ++at_;
        points_ = 0;
        lineBegins_ = true;
    }

    /// One letter outside, or a whole comment, string or bare value.
    void step() {
        const char c = text_[at_];
        if (c == '\n') return newLine();
        if (in(" \t", c) || text_.substr(at_, 2) == "\r\n") {
            ++at_;
            return;
        }
        if (c == '#') {
            if (keyBegun_ || inHead_ || (expect_ == Expect::Value && open_.empty())) return refuseHere();
            at_ = std::min(text_.find('\n', at_), text_.size());
            return;
        }
        const bool begins = std::exchange(lineBegins_, false);
        switch (expect_) {
        case Expect::Key:
            return key(c, begins);
        case Expect::Value:
            return value(c);
        case Expect::End:
            return end(c);
        }
    }

    void key(char c, bool lineBegins) {
        if (c == '[' && lineBegins && open_.empty()) return head();
        if (in("\"'", c)) {
            keyBegun_ = true;
            return string(c);
        }
        if (c == '=' && keyBegun_ && !inHead_) {
            keyBegun_ = false;
            expect_ = Expect::Value;
        } else if (c == ']' && keyBegun_ && inHead_) {
            keyBegun_ = inHead_ = false;
            expect_ = Expect::End;
            if (text_.substr(at_, 2) == "]]") ++at_;
        } else if (c == '}' && !keyBegun_ && !open_.empty() && open_.back() == '{') {
            open_.pop_back();
            expect_ = Expect::End;
        } else if (bare(c)) {
            keyBegun_ = true;
        } else if (c == '.' && keyBegun_) {
            if (++points_ > kMostPointsOnALine) return refuse("more than 200 points on one line", "keys less deep");
        } else {
            return refuseHere();
        }
        ++at_;
    }

    /// `[name]` and `[[name]]`: the name follows at once.
    void head() {
        at_ += text_.substr(at_, 2) == "[[" ? 2U : 1U;
        inHead_ = true;
        while (at_ < text_.size() && in(" \t", text_[at_])) ++at_;
        if (at_ < text_.size() && !bare(text_[at_]) && !in("\"'", text_[at_])) refuseHere();
    }

    void value(char c) {
        if (in("\"'", c)) {
            expect_ = Expect::End;
            return string(c);
        }
        if (in("[{", c)) {
            open_.push_back(c);
            if (open_.size() > kDeepest) return refuse("lists or tables nested too deep", "at most 16 deep");
            if (c == '{') expect_ = Expect::Key;
            ++at_;
            return;
        }
        if (c == ']' && !open_.empty() && open_.back() == '[') return end(c);
        bareValue();
    }

    void end(char c) {
        if (c == ',' && !open_.empty()) {
            expect_ = open_.back() == '[' ? Expect::Value : Expect::Key;
        } else if (!open_.empty() && c == (open_.back() == '[' ? ']' : '}')) {
            open_.pop_back();
            expect_ = Expect::End;
        } else if (c >= '0' && c <= '9') {
            return bareValue(); // the time behind a date and a space
        } else {
            return refuseHere();
        }
        ++at_;
    }

    /// Number, date, time, true or false: up to what ends it, with nothing in it that would begin something else.
    void bareValue() {
        const std::size_t start = at_;
        while (at_ < text_.size() && (bare(text_[at_]) || in("+.:", text_[at_]))) ++at_;
        expect_ = Expect::End;
        if (at_ == start || (at_ < text_.size() && !in(" \t\r\n,]}#", text_[at_]))) refuseHere();
    }

    void string(char quote) {
        const std::string three(3, quote);
        const bool many = text_.substr(at_, 3) == three;
        at_ += many ? three.size() : 1;
        while (at_ < text_.size()) {
            const char c = text_[at_];
            if (many && text_.substr(at_, 3) == three) {
                at_ += 3;
                // Up to two quotes may stand before the closing three.
                for (int i = 0; i < 2 && at_ < text_.size() && text_[at_] == quote; ++i) ++at_;
                return;
            }
            if (!many && c == quote) {
                ++at_;
                return;
            }
            if (c == '\n') {
                if (!many) return refuse("a quote is not closed on its line", "a closing quote");
                ++line_;
            }
            if (c == '\\' && quote == '"' && !escape()) return;
            ++at_;
        }
        refuse("a quote is not closed", "a closing quote");
    }

    /// Moves to the escaped letter.
    bool escape() {
        const std::size_t next = text_.find_first_not_of(" \t\r\n", at_ + 1);
        if (next != std::string_view::npos && beyondAscii(text_[next])) {
            refuse("a letter beyond a to z behind a backslash", "the letter without the backslash");
            return false;
        }
        ++at_;
        if (at_ < text_.size() && text_[at_] == '\n') ++line_;
        return true;
    }

    std::string_view text_;
    std::size_t at_ = 0;
    std::size_t line_ = 1;
    std::size_t points_ = 0;
    Expect expect_ = Expect::Key;
    std::vector<char> open_; // brackets and braces of values
    bool lineBegins_ = true;
    bool keyBegun_ = false;
    bool inHead_ = false;
    std::optional<Finding> found_;
};

} // namespace

std::optional<Finding> unfitForToml(std::string_view text) { return Walk(text).first(); }

} // namespace piewright::sales
