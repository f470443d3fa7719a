#include "outside/tolerance.h"

#include "outside/inputs.h"

#include <algorithm>
#include <cmath>

namespace piewright::outside {

namespace {

// Binary fractions of decimal numbers: 0.1 + 0.2 is exactly 0.3 to a person.
constexpr double kBinary = 1e-12;

std::optional<Tolerance> sized(Tolerance::Kind kind, std::string_view text) {
    const auto size = numberIn(text);
    if (!size || *size < 0) return std::nullopt;
    return Tolerance{kind, *size, 0, 0};
}

std::optional<Tolerance> range(std::string_view text) {
    const std::size_t dots = text.find("..");
    if (dots == std::string_view::npos) return std::nullopt;
    const auto least = numberIn(text.substr(0, dots));
    const auto most = numberIn(text.substr(dots + 2));
    if (!least || !most || *least > *most) return std::nullopt;
    return Tolerance{Tolerance::Kind::Range, 0, *least, *most};
}

} // namespace

std::optional<Tolerance> toleranceIn(std::string_view text) {
    using enum Tolerance::Kind;
    if (text == "exact") return Tolerance{Exact, 0, 0, 0};
    if (text == "info") return Tolerance{Info, 0, 0, 0};
    if (text.starts_with("abs:")) return sized(Absolute, text.substr(4));
    if (text.starts_with("rel:")) return sized(Relative, text.substr(4));
    if (text.starts_with("range:")) return range(text.substr(6));
    return std::nullopt;
}

bool judgeable(const Tolerance& tolerance, const std::string& expected) {
    using enum Tolerance::Kind;
    if (tolerance.kind == Absolute || tolerance.kind == Relative) return numberIn(expected).has_value();
    return tolerance.kind != Exact || !expected.empty();
}

bool within(const Tolerance& tolerance, const std::string& expected, double computed) {
    using enum Tolerance::Kind;
    if (!std::isfinite(computed)) return false;
    if (tolerance.kind == Range) return computed >= tolerance.least && computed <= tolerance.most;
    const auto wanted = numberIn(expected);
    if (!wanted) return false;
    const double slack = kBinary * std::max(1.0, std::abs(*wanted));
    const double off = std::abs(computed - *wanted) - slack;
    switch (tolerance.kind) {
    case Absolute:
        return off <= tolerance.size;
    case Relative:
        return off <= tolerance.size * std::abs(*wanted);
    case Exact:
        return off <= 0;
    case Range:
    case Info:
        break;
    }
    return false;
}

bool within(const Tolerance& tolerance, const std::string& expected, const std::string& computed) {
    return tolerance.kind == Tolerance::Kind::Exact && expected == computed;
}

} // namespace piewright::outside
