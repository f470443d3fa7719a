// Money: an amount and the currency it is in. Never a floating-point number.
#pragma once

#include <array>
#include <cassert>
#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace piewright {

/// A currency by its ISO 4217 letters. Which letters exist is not checked beyond their form.
class Currency {
  public:
    constexpr Currency() = default;
    /// Three capital letters, or nothing.
    static constexpr std::optional<Currency> of(std::string_view code) {
        if (code.size() != 3) return std::nullopt;
        Currency c;
        for (std::size_t i = 0; i < 3; ++i) {
            if (code[i] < 'A' || code[i] > 'Z') return std::nullopt;
            c.code_[i] = code[i];
        }
        return c;
    }
    [[nodiscard]] std::string code() const { return {code_.data(), code_.size()}; }
    constexpr auto operator<=>(const Currency&) const = default;

  private:
    std::array<char, 3> code_{'X', 'X', 'X'}; // ISO 4217: no currency
};

/// An amount in ten-thousandths of the currency's main unit. Sums of two currencies are a bug: the book's reader
/// holds every price to the house's currency.
class Money {
  public:
    constexpr Money() = default;
    constexpr Money(std::int64_t tenThousandths, Currency currency) : count_(tenThousandths), currency_(currency) {}

    [[nodiscard]] constexpr std::int64_t tenThousandths() const { return count_; }
    [[nodiscard]] constexpr Currency currency() const { return currency_; }
    [[nodiscard]] double inUnits() const { return static_cast<double>(count_) / 1e4; }

    friend constexpr Money operator+(Money a, Money b) { return {a.count_ + b.count_, common(a, b)}; }
    friend constexpr Money operator-(Money a, Money b) { return {a.count_ - b.count_, common(a, b)}; }
    friend constexpr Money operator*(Money a, std::int64_t n) { return {a.count_ * n, a.currency_}; }
    constexpr Money& operator+=(Money other) { return *this = *this + other; }
    friend constexpr bool operator==(Money, Money) = default;
    friend constexpr std::strong_ordering operator<=>(Money a, Money b) { return common(a, b), a.count_ <=> b.count_; }
    /// Times a plain factor, to the nearest ten-thousandth, halves away from zero.
    friend Money scaled(Money a, double factor);

  private:
    // Zero of no currency is the neutral element, so that a sum may start from Money{}.
    static constexpr Currency common(Money a, Money b) {
        if (a.currency_ == Currency{}) return b.currency_;
        assert(b.currency_ == Currency{} || a.currency_ == b.currency_);
        return a.currency_;
    }
    std::int64_t count_ = 0;
    Currency currency_;
};

/// `5.20 GBP`: two decimals (the minor unit of most currencies), halves up; for people.
[[nodiscard]] std::string toText(Money money);

} // namespace piewright
