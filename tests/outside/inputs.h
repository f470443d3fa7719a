// What a case gives: `key=value;key=value`.
#pragma once

#include <array>
#include <initializer_list>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace piewright::outside {

/// The whole text as a plain number, finite and at most 1e12 in size (so that whole small units never overflow).
[[nodiscard]] std::optional<double> numberIn(std::string_view text);
/// `18|22|8`; nothing unless every part is a number.
[[nodiscard]] std::optional<std::vector<double>> numbersIn(std::string_view text);

class Inputs {
  public:
    /// Nothing when a part has no `=`, an empty key or a key seen before.
    static std::optional<Inputs> parse(std::string_view text);

    [[nodiscard]] bool has(std::string_view key) const { return values_.contains(key); }
    /// The value; empty when there is none.
    [[nodiscard]] std::string text(std::string_view key) const;
    [[nodiscard]] std::optional<double> number(std::string_view key) const;
    /// Whether there is nothing beside these keys: a handler must not pass over what it doesn't know.
    [[nodiscard]] bool only(std::initializer_list<std::string_view> keys) const;
    [[nodiscard]] const auto& all() const { return values_; }

    /// The numbers under these keys, in this order; nothing unless exactly these are there and all are numbers.
    template <std::size_t N>
    [[nodiscard]] std::optional<std::array<double, N>> exactly(const std::string_view (&keys)[N]) const {
        if (values_.size() != N) return std::nullopt;
        std::array<double, N> numbers{};
        for (std::size_t i = 0; i < N; ++i) {
            const auto value = number(keys[i]);
            if (!value) return std::nullopt;
            numbers[i] = *value;
        }
        return numbers;
    }

  private:
    std::map<std::string, std::string, std::less<>> values_;
};

} // namespace piewright::outside
