// One reader per format; nothing when the text does not hold a whole instance.
#pragma once

#include "instances/read.h"

#include <charconv>
#include <optional>
#include <string_view>

namespace piewright::bench {

[[nodiscard]] std::optional<Instance> readProjectSm(std::string_view text);
[[nodiscard]] std::optional<Instance> readProjectMaxSch(std::string_view text);
[[nodiscard]] std::optional<Instance> readMultiSkillDzn(std::string_view text);
[[nodiscard]] std::optional<Instance> readFlexibleShop(std::string_view text);

/// Whole numbers one after the other, whatever stands between them.
class Numbers {
  public:
    explicit Numbers(std::string_view text) : text_(text) {}

    /// 0, and failed() from then on, when there is none left or it is out of proportion.
    int next() {
        const auto begins = [this] {
            return isDigit(text_.front()) || (text_.front() == '-' && text_.size() > 1 && isDigit(text_[1]));
        };
        while (!text_.empty() && !begins()) {
            text_.remove_prefix(1);
        }
        int value = 0;
        const auto [end, error] = std::from_chars(text_.data(), text_.data() + text_.size(), value);
        if (error != std::errc{} || value > 1'000'000 || value < -1'000'000) {
            failed_ = true;
            text_ = {};
            return 0;
        }
        text_.remove_prefix(static_cast<std::size_t>(end - text_.data()));
        return value;
    }
    /// A count between 0 and `most`.
    std::size_t count(int most = 10'000) {
        const int value = next();
        if (value < 0 || value > most) failed_ = true;
        return failed_ ? 0 : static_cast<std::size_t>(value);
    }
    [[nodiscard]] bool failed() const { return failed_; }

  private:
    static bool isDigit(char c) { return '0' <= c && c <= '9'; }
    std::string_view text_;
    bool failed_ = false;
};

template <class Index> Index nth(std::size_t i) { return static_cast<Index>(i); }

} // namespace piewright::bench
