// How near a computed value must be to the expected one.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace piewright::outside {

struct Tolerance {
    enum class Kind {
        Absolute, ///< `abs:x`
        Relative, ///< `rel:x`, of the expected value
        Range,    ///< `range:a..b`, both ends inside; the expected value is for people
        Exact,    ///< `exact`: the same number, or the same text
        Info      ///< `info`: not judged
    };
    Kind kind = Kind::Info;
    double size = 0; ///< absolute, relative; not negative
    double least = 0;
    double most = 0;
};

/// Nothing for what is none of these.
[[nodiscard]] std::optional<Tolerance> toleranceIn(std::string_view text);

/// Whether the expected value is one that the tolerance can judge by: a number for absolute and relative.
[[nodiscard]] bool judgeable(const Tolerance& tolerance, const std::string& expected);

[[nodiscard]] bool within(const Tolerance& tolerance, const std::string& expected, double computed);
[[nodiscard]] bool within(const Tolerance& tolerance, const std::string& expected, const std::string& computed);

} // namespace piewright::outside
